import { join } from 'node:path';
import { runnerImport } from 'vite';
import { drawIcons } from './icons.mjs';

const root = join(import.meta.dirname, '..');

await drawIcons();
/** @type {{ module: { takePictures: (into: string) => Promise<readonly string[]> } }} */
const { module } = await runnerImport(join(root, 'test/look/pictures.ts'), {
  root,
  configFile: false,
});
for (const file of await module.takePictures(join(root, 'test/look/pictures'))) console.log(file);
