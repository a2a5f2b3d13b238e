import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findChromium } from './chromium.mjs';
import { ENGINES } from './engines.mjs';

const root = join(import.meta.dirname, '..');
const bin = join(root, 'node_modules/.bin');
const reports = mkdtempSync(join(tmpdir(), 'evenfall-reports-'));

/** @type {{ name: string, seconds: number, good: boolean }[]} */
const stages = [];
let passed = 0;
let failed = 0;

/**
 * @param {string} command
 * @param {readonly string[]} args
 * @param {NodeJS.ProcessEnv} [extra]
 * @returns {Promise<boolean>} whether it ended well
 */
function run(command, args, extra = {}) {
  return new Promise((ended) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, ...extra },
      shell: process.platform === 'win32',
    });
    child.once('error', (error) => {
      console.error(error.message);
      ended(false);
    });
    child.once('exit', (code) => ended(code === 0));
  });
}

/**
 * @param {string} name
 * @param {() => Promise<boolean>} work
 * @returns {Promise<boolean>}
 */
async function stage(name, work) {
  console.log(`\n== ${name}`);
  const began = performance.now();
  const good = await work();
  stages.push({ name, seconds: (performance.now() - began) / 1000, good });
  return good;
}

/**
 * Installs packages of Debian where this process may.
 *
 * @param {readonly string[]} packages
 */
async function install(packages) {
  const may = process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0;
  if (!may) return;
  // Another apt at work makes it fail at once unless told to wait.
  const apt = ['-o', 'DPkg::Lock::Timeout=300'];
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  await run('apt-get', [...apt, 'update'], env);
  await run('apt-get', [...apt, 'install', '-y', '--no-install-recommends', ...packages], env);
}

/** Brings Chromium where this process may, and says how to get it where not. */
async function bringChromium() {
  if (findChromium() === undefined) await install(['chromium']);
  if (findChromium() !== undefined) return true;
  console.error(
    'The browser tests need Chromium, and none was found: install it (Debian and Ubuntu: sudo apt-get install chromium) or set CHROME_PATH to the program.',
  );
  return false;
}

/** Brings the other engines of phones, which only Debian's packages give us with a driver. */
async function bringOtherEngines() {
  if (process.platform !== 'linux') {
    console.log('Only Chromium is tested here: Firefox and WebKit come from packages of Debian.');
    return true;
  }
  const missing = () => ENGINES.filter(({ programs }) => !programs.every((at) => existsSync(at)));
  const packages = missing().flatMap((engine) => engine.packages);
  if (packages.length > 0) await install(packages);
  for (const { name, packages: its } of missing()) {
    console.error(`The tests need ${name}: sudo apt-get install ${its.join(' ')}`);
  }
  return missing().length === 0;
}

/**
 * Runs one project of tests and adds its counts.
 *
 * @param {string} project
 * @param {NodeJS.ProcessEnv} [env]
 */
async function runTests(project, env) {
  const outputFile = join(reports, `${project}.json`);
  const ended = await run(
    join(bin, 'vitest'),
    [
      'run',
      '--project',
      project,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${outputFile}`,
    ],
    env,
  );
  if (!existsSync(outputFile)) return false;
  const report = JSON.parse(readFileSync(outputFile, 'utf8'));
  passed += report.numPassedTests;
  failed += report.numFailedTests;
  const left = report.numPendingTests + report.numTodoTests;
  if (left > 0) console.error(`${left} tests did not run: a skipped test proves nothing`);
  return ended && report.success && left === 0 && report.numPassedTests > 0;
}

// First, so that nobody waits minutes to learn that the browser is missing.
if (await stage('Chromium', bringChromium)) {
  await stage('Firefox and WebKit', bringOtherEngines);
  await stage('types', () => run(process.execPath, ['.ci/types.mjs']));
  await stage('lint', () => run(join(bin, 'biome'), ['check', '--error-on-warnings', '.']));
  await stage('unused code', () => run(join(bin, 'knip'), []));
  await stage('unit tests', () => runTests('unit'));
  if (await stage('build', () => run(join(bin, 'vite'), ['build', '--logLevel', 'warn']))) {
    await stage('browser tests', () => runTests('journeys', { EVENFALL_DIST: 'dist' }));
    await stage('browser tests by the clock', () => runTests('alone', { EVENFALL_DIST: 'dist' }));
  }
}
rmSync(reports, { recursive: true });

console.log('');
for (const { name, seconds, good } of stages) {
  console.log(`${good ? 'good  ' : 'FAILED'} ${seconds.toFixed(1).padStart(6)} s  ${name}`);
}
const good = stages.every((each) => each.good);
if (!good) console.log('Not all is good: see the stages above.');
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = good ? 0 : 1;
