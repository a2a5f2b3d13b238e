import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';

/*
 * `npm run mutants` changes the code of `outing/` and `log/` in thousands of small ways and tells how
 * many of them a test kills; `npm run mutants -- src/outing/timing.ts` those of the files named. Fails
 * below 85 % in all. It takes long, so it stands outside `npm test`.
 */

const THRESHOLD = 85;
const root = join(import.meta.dirname, '..');
process.chdir(root);

/** @param {string} folder */
const filesIn = (folder) =>
  readdirSync(join(root, folder))
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .map((file) => `${folder}/${file}`);

const named = process.argv.slice(2);
const mutate = named.length > 0 ? named : [...filesIn('src/outing'), ...filesIn('src/log')];

const mutants = await new Stryker({
  mutate,
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: '.ci/mutants.vitest.mjs', related: false },
  coverageAnalysis: 'perTest',
  // Mutants of data that is worked out once, at the load of a module, cost a run of every test each.
  ignoreStatic: true,
  concurrency: 2,
  reporters: ['progress-append-only'],
  allowEmpty: false,
}).runMutationTest();

/** @param {typeof mutants} of */
function score(of) {
  const killed = of.filter(({ status }) => status === 'Killed' || status === 'Timeout').length;
  const counted = of.filter(({ status }) => /^(Killed|Timeout|Survived|NoCoverage)$/.test(status));
  return { killed, all: counted.length, percent: (100 * killed) / counted.length };
}

for (const { fileName, location, status, mutatorName, replacement } of mutants) {
  if (status !== 'Survived' && status !== 'NoCoverage') continue;
  const { line, column } = location.start;
  console.log(`${fileName}:${line + 1}:${column + 1} ${status} ${mutatorName}: ${replacement}`);
}
for (const file of new Set(mutants.map(({ fileName }) => fileName))) {
  const { killed, all, percent } = score(mutants.filter(({ fileName }) => fileName === file));
  if (all > 0) console.log(`${percent.toFixed(1).padStart(6)} %  ${killed} of ${all}  ${file}`);
}
const { killed, all, percent } = score(mutants);
console.log(`${percent.toFixed(1).padStart(6)} %  ${killed} of ${all} in all`);
process.exitCode = percent >= THRESHOLD ? 0 : 1;
