import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

// Runs before anything is installed: nothing but Node's own modules here.

const root = join(import.meta.dirname, '..');
// Inside node_modules, so that deleting it deletes the stamp, and written last, so that an install
// that broke off half-way is done again.
const stamp = join(root, 'node_modules', '.installed-lockfile');
const lockfile = createHash('sha256')
  .update(readFileSync(join(root, 'package-lock.json')))
  .digest('hex');

if (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== lockfile) {
  console.log('Installing the packages that package-lock.json names.');
  // With NODE_ENV=production npm would leave out what builds and tests the app.
  const { status } = spawnSync('npm', ['ci', '--include=dev', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (status !== 0) process.exit(status ?? 1);
  writeFileSync(stamp, lockfile);
}
