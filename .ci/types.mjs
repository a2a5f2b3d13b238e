import { existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import ts from 'typescript';
import { filesBelow } from './content-hash.mjs';

/*
 * Checks the types of every folder by its own tsconfig, as `tsc -p` does for one. Folders with
 * equal options share a program, and all programs share the parsed files: a compiler per folder
 * took five times as long.
 */

const root = join(import.meta.dirname, '..');

/** @returns {string[]} every tsconfig that checks files of ours */
function configs() {
  const folders = readdirSync(join(root, 'src'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => `src/${entry.name}`)
    .filter((folder) => filesBelow(join(root, folder)).some((file) => /\.tsx?$/.test(file)));
  const workers = 'src/app/workers/tsconfig.json';
  return [
    ...folders.map((folder) => `${folder}/tsconfig.json`),
    ...(existsSync(join(root, workers)) ? [workers] : []),
    'src/tsconfig.json',
    'src/tsconfig.sw.json',
    'test/tsconfig.json',
    '.ci/tsconfig.json',
  ].map((config) => join(root, config));
}

/** @type {ts.FormatDiagnosticsHost} */
const format = {
  getCanonicalFileName: (file) => file,
  getCurrentDirectory: () => root,
  getNewLine: () => '\n',
};

/** @type {Map<string, { options: ts.CompilerOptions, files: Set<string>, named: string[] }>} */
const groups = new Map();
/** @type {ts.Diagnostic[]} */
const found = [];
for (const config of configs()) {
  const { config: json, error } = ts.readConfigFile(config, ts.sys.readFile);
  if (error !== undefined) found.push(error);
  const parsed = ts.parseJsonConfigFileContent(json, ts.sys, dirname(config));
  found.push(...parsed.errors);
  const { configFilePath: _, ...options } = parsed.options;
  const key = JSON.stringify(options);
  const group = groups.get(key) ?? { options, files: new Set(), named: [] };
  for (const file of parsed.fileNames) group.files.add(file);
  group.named.push(config.slice(root.length + 1));
  groups.set(key, group);
}

/** @type {Map<string, ts.SourceFile>} */
const parsedFiles = new Map();
for (const { options, files, named } of groups.values()) {
  const began = performance.now();
  const host = ts.createCompilerHost(options);
  const parse = host.getSourceFile;
  host.getSourceFile = (name, version, ...rest) => {
    // How a file is parsed depends on its options for JSX as well as on its text.
    const key = `${options.jsx} ${name}`;
    const known = parsedFiles.get(key) ?? parse(name, version, ...rest);
    if (known !== undefined) parsedFiles.set(key, known);
    return known;
  };
  const program = ts.createProgram([...files], options, host);
  found.push(...ts.getPreEmitDiagnostics(program));
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  console.log(`${seconds.padStart(6)} s  ${files.size} files  ${named.join(' ')}`);
}

const unique = ts.sortAndDeduplicateDiagnostics(found);
if (unique.length > 0) {
  console.error(ts.formatDiagnosticsWithColorAndContext(unique, format));
  console.error(`${unique.length} errors in types`);
  process.exitCode = 1;
}
