import { join } from 'node:path';
import { build } from 'vite';

let bundled: Promise<string> | null = null;

/** The finder as one script to run in a page, bundled once. */
export function finderScript(): Promise<string> {
  bundled ??= bundle();
  return bundled;
}

async function bundle(): Promise<string> {
  const result = await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      write: false,
      minify: false,
      lib: {
        entry: join(import.meta.dirname, 'page/finder.page.ts'),
        formats: ['iife'],
        name: 'finderPage',
      },
    },
  });
  const [output] = Array.isArray(result) ? result : [result];
  const chunk = output && 'output' in output ? output.output[0] : undefined;
  if (chunk?.type !== 'chunk') throw new Error('the finder was not bundled');
  return chunk.code;
}
