import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { filesBelow } from './content-hash.mjs';

/** What the first load should weigh at most, bytes after gzip -9 (design, section 7). */
export const firstLoadAim = 60_000;
/** Over this the build fails. */
export const firstLoadLimit = 90_000;

/**
 * @param {string} outDir a finished build
 * @returns {{ first: { file: string, bytes: number }[], later: { file: string, bytes: number }[] }}
 *   gzip sizes: the page with every script and style it names, and the parts that load later
 */
export function partSizes(outDir) {
  const page = readFileSync(join(outDir, 'index.html'), 'utf8');
  const parts = filesBelow(outDir)
    .filter((file) => /\.(html|js|css|wasm)$/.test(file) && file !== 'sw.js')
    .map((file) => ({
      file,
      bytes: gzipSync(readFileSync(join(outDir, file)), { level: 9 }).length,
    }));
  const isFirst = (/** @type {{ file: string }} */ part) =>
    part.file === 'index.html' || page.includes(`./${part.file}"`);
  return { first: parts.filter(isFirst), later: parts.filter((part) => !isFirst(part)) };
}

/**
 * Prints the sizes of a build.
 *
 * @param {string} outDir a finished build
 * @throws Error when the first load is over its limit
 */
export function reportSizes(outDir) {
  const { first, later } = partSizes(outDir);
  const line = (/** @type {{ file: string, bytes: number }} */ { file, bytes }) =>
    `  ${(bytes / 1000).toFixed(1).padStart(7)} kB  ${file}`;
  const total = first.reduce((sum, { bytes }) => sum + bytes, 0);
  console.log(['first load, gzip:', ...first.map(line)].join('\n'));
  if (later.length > 0) console.log(['later parts, gzip:', ...later.map(line)].join('\n'));
  const verdict = `first load ${(total / 1000).toFixed(1)} kB`;
  if (total > firstLoadLimit) throw new Error(`${verdict}: over the limit of 90 kB`);
  console.log(total > firstLoadAim ? `${verdict}: over the aim of 60 kB` : `${verdict} of 60`);
}
