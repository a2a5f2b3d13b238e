import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { sourceHash } from './.ci/content-hash.mjs';
import { buildServiceWorker } from './.ci/service-worker.mjs';
import { reportSizes } from './.ci/sizes.mjs';

const root = import.meta.dirname;
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  version: string;
};

/** Lets the page's one inline style through the content security policy by its hash, and the comments out. */
function inlineStyleHash(): Plugin {
  return {
    name: 'inline-style-hash',
    transformIndexHtml: {
      order: 'post',
      handler(html, context) {
        const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1];
        if (style === undefined) throw new Error('index.html has lost its inline style');
        const hash = createHash('sha256').update(style).digest('base64');
        const allowed = html
          .replace('INLINE_STYLE_HASH', `'sha256-${hash}'`)
          // What is told to a reader of the source weighs on every first load.
          .replace(/<!--.*?-->\s*/gs, '');
        // The development server injects styles and a socket that the shipped policy forbids.
        return context.server === undefined
          ? allowed
          : allowed.replace(/<meta\s+http-equiv="Content-Security-Policy"[\s\S]*?>/, '');
      },
    },
  };
}

/** After the page is written: the worker that carries it offline, then the weight of the parts. */
function offlineBuild(): Plugin {
  let outDir = '';
  let written = false;
  return {
    name: 'offline-build',
    apply: 'build',
    configResolved(config) {
      outDir = resolve(config.root, config.build.outDir);
    },
    writeBundle() {
      written = true;
    },
    async closeBundle() {
      // Called after a failed build as well, where there is nothing to carry.
      if (!written) return;
      await buildServiceWorker(root, outDir);
      reportSizes(outDir);
    },
  };
}

/** Walks that hold the real clock to the second or kill processes: they have the machine to themselves. */
const BY_THE_CLOCK = [
  'test/faults/*.journey.ts',
  'test/journeys/{cues,engines,faults,hidden}.journey.ts',
];

/** Walks in a real browser; a busy machine may keep any wait of theirs longer than a phone would. */
const walks = {
  globalSetup: ['test/journeys/driver/built-app.ts'],
  testTimeout: 180_000,
  hookTimeout: 180_000,
};

/** Folders whose modules are small enough to come with any place of the desk. */
const DESK = /[\\/]src[\\/](app|exchange|gear|plan|ui)[\\/]/;

export default defineConfig({
  root,
  // Relative, so that the files run from any path of any host.
  base: './',
  define: { APP_VERSION: JSON.stringify(`${version}+${sourceHash(root)}`) },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [inlineStyleHash(), offlineBuild()],
  build: {
    assetsInlineLimit: 0,
    // A kilobyte smaller in the first script than what the build tool's own minifier leaves.
    minify: 'terser',
    terserOptions: { module: true, ecma: 2020, compress: { passes: 2 } },
    // Where a part lies in the offline store, a list of what it needs saves no time and weighs.
    modulePreload: false,
    rolldownOptions: {
      output: {
        // All that the first screen needs in one file, and in another what the places of the desk
        // share: each further one is another question to the worker and to its cache, and another
        // name in the first script. The ephemeris and the zones stay by themselves.
        codeSplitting: {
          groups: [
            { name: 'first', tags: ['$initial'], priority: 2 },
            // What the German of the first script shares with that of the desk.
            { name: 'german', test: /[\\/]words[\\/](figures|storageWhy)\.de\.ts$/, priority: 2 },
            { name: 'desk', test: DESK, minShareCount: 2, priority: 1 },
          ],
        },
        // The manifest's relative addresses count from its own place: it must stay at the top.
        assetFileNames: (asset) =>
          asset.names.includes('manifest.webmanifest')
            ? '[name][extname]'
            : 'assets/[name]-[hash][extname]',
      },
    },
  },
  server: { host: 'localhost' },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          // A property on a busy machine; what is timed is timed by npm run bench.
          testTimeout: 30_000,
          include: [
            'src/**/*.test.{ts,tsx}',
            'test/{structure,published,contract,journals,simulated}/**/*.test.ts',
          ],
        },
      },
      {
        extends: true,
        test: {
          name: 'journeys',
          include: ['test/**/*.journey.ts'],
          exclude: BY_THE_CLOCK,
          ...walks,
          // Their time is held by the browser's clock control, so that two can share two cores.
          maxWorkers: 2,
        },
      },
      {
        extends: true,
        test: {
          name: 'alone',
          include: BY_THE_CLOCK,
          ...walks,
          fileParallelism: false,
        },
      },
    ],
  },
});
