import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { runnerImport } from 'vite';

/*
 * Runs every test/bench/*.bench.ts and prints one table. Figures of one machine say little on
 * another, so each bench measures two things in one run and gives their ratio.
 */

/**
 * @typedef {object} Ratio
 * @property {string} name what is compared with what
 * @property {number} measured in the unit
 * @property {number} against in the same unit
 * @property {string} unit
 */

const root = join(import.meta.dirname, '..');
const folder = join(root, 'test/bench');
const files = readdirSync(folder).filter((file) => file.endsWith('.bench.ts'));
if (files.length === 0) throw new Error(`${folder} holds no bench`);

/** @type {Ratio[]} */
const ratios = [];
for (const file of files.sort()) {
  /** @type {{ module: { bench: () => Promise<readonly Ratio[]> } }} */
  const { module } = await runnerImport(join(folder, file), { root, configFile: false });
  ratios.push(...(await module.bench()));
}

const figure = (/** @type {number} */ value) => value.toPrecision(4).padStart(10);
console.log('     ratio   measured    against  unit  what');
for (const { name, measured, against, unit } of ratios) {
  const ratio = (measured / against).toFixed(3).padStart(10);
  console.log(`${ratio} ${figure(measured)} ${figure(against)}  ${unit.padEnd(4)}  ${name}`);
}
