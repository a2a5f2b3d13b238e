import { join } from 'node:path';
import { build } from 'vite';
import { buildServiceWorker } from '../../../.ci/service-worker.mjs';

// Builds the bare page as the app is built, with the app's own worker over the page's files.

const [outDir] = process.argv.slice(2);
if (outDir === undefined) throw new Error('where to? Give a folder');

await build({
  root: import.meta.dirname,
  configFile: false,
  logLevel: 'warn',
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: { outDir, emptyOutDir: true, assetsInlineLimit: 0 },
});
await buildServiceWorker(join(import.meta.dirname, '../../..'), outDir);
