import { readdirSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { AdapterSet } from './adapter.ts';
import { fault } from './compare.ts';
import { type Entry, readSheet } from './entry.ts';

/*
 * Runs every line of every check sheet in this folder: NAME.checks.json by NAME.adapters.ts.
 * EVENFALL_CHECKS names another sheet of the same form to run instead.
 */

const SHEET = '.checks.json';

const sets = new Map(
  Object.entries(import.meta.glob<AdapterSet>('./*.adapters.ts', { eager: true })).map(
    ([path, set]) => [basename(path, '.adapters.ts'), set],
  ),
);

const asked = process.env['EVENFALL_CHECKS'];
const sheets =
  asked === undefined
    ? readdirSync(import.meta.dirname)
        .filter((name) => name.endsWith(SHEET))
        .map((name) => join(import.meta.dirname, name))
    : [resolve(asked)];

/** The adapters named like the sheet, or else those that know most of its lines. */
function setFor(sheet: string, entries: readonly Entry[]): AdapterSet | undefined {
  const known = ({ adapters, withoutUse }: AdapterSet): number =>
    entries.filter(({ quantity }) => quantity in adapters || quantity in withoutUse).length;
  const byKnown = [...sets.values()].sort((a, b) => known(b) - known(a));
  return sets.get(basename(sheet, SHEET)) ?? byKnown[0];
}

test('there are sheets to run', () => {
  expect(sheets).not.toHaveLength(0);
});

describe.each(sheets.map((path) => ({ name: basename(path), path })))('$name', ({ name, path }) => {
  const entries = readSheet(path);
  const set = setFor(path, entries);
  const unused = entries.filter(({ quantity }) => Object.hasOwn(set?.withoutUse ?? {}, quantity));
  const used = entries.filter((entry) => !unused.includes(entry));
  let ran = 0;

  test.each(used)('$id: $quantity', (entry) => {
    const adapter =
      set && Object.hasOwn(set.adapters, entry.quantity) ? set.adapters[entry.quantity] : undefined;
    if (adapter === undefined) throw new Error(`unknown quantity ${entry.quantity}`);
    const got = adapter.run(entry);
    const unit = typeof adapter.unit === 'string' ? adapter.unit : adapter.unit(entry);
    ran += 1;
    expect(fault(entry.expected, got, unit, entry.tolerance), entry.source).toBeNull();
  });

  test('every line has been run or is listed as without use', () => {
    process.stdout.write(
      `${name}: ${entries.length} checks, ${ran} run, ${unused.length} without use in the app\n`,
    );
    for (const quantity of new Set(unused.map((entry) => entry.quantity))) {
      process.stdout.write(`  ${quantity}: ${set?.withoutUse[quantity]}\n`);
    }
    expect(ran + unused.length).toBe(entries.length);
    expect(ran).toBeGreaterThan(0);
  });

  test('no quantity is both run and listed as without use', () => {
    const both = Object.keys(set?.withoutUse ?? {}).filter((quantity) =>
      Object.hasOwn(set?.adapters ?? {}, quantity),
    );
    expect(both).toEqual([]);
  });
});
