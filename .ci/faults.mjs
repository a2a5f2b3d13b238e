import { spawn } from 'node:child_process';
import { join } from 'node:path';

/*
 * `npm run faults -- 200` lets the browser die so often; `npm run faults -- 1 4711` plays the death of
 * seed 4711 again.
 */

const root = join(import.meta.dirname, '..');
const [deaths = '200', firstSeed = '1001'] = process.argv.slice(2);

const child = spawn(
  join(root, 'node_modules/.bin/vitest'),
  ['run', '--project', 'alone', 'test/faults/kills.journey.ts'],
  {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, EVENFALL_DEATHS: deaths, EVENFALL_FIRST_SEED: firstSeed },
    shell: process.platform === 'win32',
  },
);
child.once('error', (error) => {
  throw error;
});
child.once('exit', (code) => {
  process.exitCode = code ?? 1;
});
