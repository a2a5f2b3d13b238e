import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { runnerImport } from 'vite';

/*
 * Runs every test/bench/*.bench.ts, or those whose names hold a word of the command line, and prints
 * one table. Figures of one machine say little on another, so each bench measures two things in one
 * run and the table gives their ratio, with the quartiles of both beside the medians. Where a bench
 * has a table of its own, that is printed as it is. With --brief each only shows that it runs.
 */

/** @typedef {import('../test/bench/ratio.ts').Ratio} Ratio */

const root = join(import.meta.dirname, '..');
const folder = join(root, 'test/bench');
const { positionals: wanted, values } = parseArgs({
  allowPositionals: true,
  options: { brief: { type: 'boolean', default: false } },
});
const files = readdirSync(folder)
  .filter((file) => file.endsWith('.bench.ts'))
  .filter((file) => wanted.length === 0 || wanted.some((word) => file.includes(word)))
  .sort();
if (files.length === 0) throw new Error(`${folder} holds no such bench`);

/**
 * @template T
 * @param {string} file below the root
 * @returns {Promise<T>}
 */
const load = async (file) =>
  /** @type {{ module: T }} */ (await runnerImport(join(root, file), { root, configFile: false }))
    .module;

/**
 * @param {readonly number[]} samples
 * @param {number} share 0.5 for the median
 */
function quantile(samples, share) {
  const sorted = [...samples].sort((a, b) => a - b);
  const place = (sorted.length - 1) * share;
  const below = sorted[Math.floor(place)] ?? Number.NaN;
  const above = sorted[Math.ceil(place)] ?? Number.NaN;
  return below + (above - below) * (place - Math.floor(place));
}

/** @param {number} value */
const figure = (value) =>
  Math.abs(value) >= 1000 ? String(Math.round(value)) : value.toPrecision(3);

/** @param {readonly number[]} samples */
function summary(samples) {
  const median = figure(quantile(samples, 0.5));
  if (samples.length === 1) return median;
  return `${median} (${figure(quantile(samples, 0.25))} to ${figure(quantile(samples, 0.75))})`;
}

/** @param {Ratio} ratio */
function line({ name, unit, aim, ...figures }) {
  const measured = [figures.measured].flat();
  const against = [figures.against].flat();
  const ratio = quantile(measured, 0.5) / quantile(against, 0.5);
  const verdict = aim === undefined ? '' : ratio <= aim ? 'met' : 'MISSED';
  return [
    ratio.toFixed(2).padStart(7),
    (aim === undefined ? '' : aim.toFixed(2)).padStart(5),
    verdict.padEnd(6),
    summary(measured).padStart(26),
    summary(against).padStart(26),
    unit.padEnd(6),
    `${String(measured.length).padStart(3)}  ${name}`,
  ].join('  ');
}

/** @param {import('../test/bench/table.ts').Table} table */
function printed({ name, heads, lines }) {
  const widths = heads.map((head, column) =>
    Math.max(head.length, ...lines.map((cells) => String(cells[column]).length)),
  );
  const row = (/** @type {readonly (string | number)[]} */ cells) =>
    cells.map((cell, column) => String(cell).padStart(widths[column] ?? 0)).join('  ');
  return ['', name, row(heads), ...lines.map(row), ''].join('\n');
}

/** @type {{ buildApp: () => Promise<string> }} */
const { buildApp } = await load('test/journeys/driver/build.ts');
const app = await buildApp();
try {
  console.log(
    [
      '  ratio    aim        ',
      'measured'.padStart(26),
      'against'.padStart(26),
      'unit      n  what, against what',
    ].join('  '),
  );
  for (const file of files) {
    /** @type {{ bench: import('../test/bench/ratio.ts').Bench }} */
    const { bench } = await load(`test/bench/${file}`);
    for (const figures of await bench(app, values.brief)) {
      console.log('heads' in figures ? printed(figures) : line(figures));
    }
  }
} finally {
  rmSync(app, { recursive: true });
}
