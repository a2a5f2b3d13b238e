import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../../..');

/**
 * Makes a production build in a new folder under the system's temporary one.
 *
 * @param version what the build calls itself; another version makes another build
 * @returns the folder
 */
export async function buildApp(version?: string): Promise<string> {
  const outDir = await mkdtemp(join(tmpdir(), 'evenfall-build-'));
  const options = {
    root,
    logLevel: 'warn',
    build: { outDir, emptyOutDir: true },
    ...(version === undefined ? {} : { define: { APP_VERSION: JSON.stringify(version) } }),
  };
  const script = `import('vite').then(({ build }) => build(${JSON.stringify(options)}))`;
  // A process of its own: the test runner's NODE_ENV would make it a development build.
  const { NODE_ENV: _, ...env } = process.env;
  const code = await new Promise<number | null>((ended, fail) => {
    const child = spawn(process.execPath, ['-e', script], {
      cwd: root,
      env,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    child.once('error', fail);
    child.once('exit', ended);
  });
  if (code !== 0) {
    await rm(outDir, { recursive: true });
    throw new Error(`the build ended with code ${code}`);
  }
  return outDir;
}
