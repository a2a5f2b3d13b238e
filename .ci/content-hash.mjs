import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

/**
 * @param {string} folder
 * @returns {string[]} every file below the folder, as sorted relative paths with forward slashes
 */
export function filesBelow(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/**
 * @param {string | Uint8Array} content
 * @returns {string} the first 16 hex digits of its SHA-256
 */
export function shortHash(content) {
  return createHash('sha256').update(content).digest('hex').slice(0, 16);
}

/**
 * A name for this very source, without git: a build from an unpacked archive has none.
 *
 * @param {string} root the project's folder
 * @returns {string} seven hex digits, the same for the same source on any machine
 */
export function sourceHash(root) {
  const shipped = ['src', 'public'].flatMap((folder) =>
    filesBelow(join(root, folder)).map((file) => `${folder}/${file}`),
  );
  const lines = [...shipped, 'index.html', 'manifest.webmanifest', 'package-lock.json']
    .filter((file) => !/\.test\.tsx?$|tsconfig[^/]*\.json$/.test(file))
    .map((file) => `${file} ${shortHash(readFileSync(join(root, file)))}`);
  return shortHash(lines.join('\n')).slice(0, 7);
}
