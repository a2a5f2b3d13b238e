import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';
import { filesBelow, shortHash } from './content-hash.mjs';

/**
 * Builds `sw.js` with the list of every file of the build in it. A file whose name holds a hash of
 * its content needs no revision; the others carry one. The integrity keeps files of two builds from
 * mixing while a host publishes.
 *
 * @param {string} root the project's folder
 * @param {string} outDir where the finished build stands
 */
export async function buildServiceWorker(root, outDir) {
  const list = filesBelow(outDir)
    .filter((url) => url !== 'sw.js')
    .map((url) => {
      const content = readFileSync(join(outDir, url));
      return {
        url,
        revision: url.startsWith('assets/') ? null : shortHash(content),
        integrity: `sha256-${createHash('sha256').update(content).digest('base64')}`,
      };
    });
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    define: {
      'self.__WB_MANIFEST': JSON.stringify(list),
      BUILD: JSON.stringify(shortHash(JSON.stringify(list))),
      // Library mode leaves this alone, and workbox would stay in its development mode.
      'process.env.NODE_ENV': '"production"',
    },
    build: {
      outDir,
      emptyOutDir: false,
      copyPublicDir: false,
      lib: { entry: 'src/sw.ts', formats: ['iife'], name: 'sw', fileName: () => 'sw.js' },
    },
  });
}
