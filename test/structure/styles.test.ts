import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { filesBelow } from '../../.ci/content-hash.mjs';

const places = join(import.meta.dirname, '../../src/ui/places');

/** The classes that a style sheet gives a look of their own. */
function classesOf(css: string): readonly string[] {
  const rules = css.replace(/\/\*.*?\*\//gs, '').matchAll(/([^{}]+)\{/g);
  return [...rules].flatMap(([, selectors = '']) =>
    selectors.split(',').flatMap((selector) => /^\s*\.([\w-]+)/.exec(selector)?.[1] ?? []),
  );
}

test('no two places style one class: the sheet of a part that loads later would change the other', () => {
  const owners = new Map<string, Set<string>>();
  for (const file of filesBelow(places).filter((name) => name.endsWith('.css'))) {
    const [place = ''] = file.split('/');
    for (const name of classesOf(readFileSync(join(places, file), 'utf8'))) {
      owners.set(name, (owners.get(name) ?? new Set()).add(place));
    }
  }
  expect(owners.size).toBeGreaterThan(50);
  const shared = [...owners].filter(([, found]) => found.size > 1);
  expect(shared.map(([name]) => name)).toEqual([]);
});
