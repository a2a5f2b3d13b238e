import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { buildApp } from '../journeys/driver/build.ts';
import { takePhone } from '../journeys/driver/chromium.ts';
import { startServer } from '../journeys/driver/server.ts';

/**
 * Takes the pictures that the README shows, on a production build.
 *
 * @param into the folder for the PNGs
 * @returns the files written
 */
export async function takePictures(into: string): Promise<readonly string[]> {
  await mkdir(into, { recursive: true });
  const folder = await buildApp();
  const server = await startServer(folder);
  const phone = await takePhone();
  const written: string[] = [];
  try {
    for (const scheme of ['dark', 'light'] as const) {
      await phone.window.prefer({ scheme });
      await phone.window.open(server.address);
      await phone.window.seeThe('heading', 'Evenfall');
      const file = join(into, `first-start-${scheme}.png`);
      await writeFile(file, await phone.window.picture());
      written.push(file);
    }
  } finally {
    await phone.throwAway();
    await server.stop();
    await rm(folder, { recursive: true });
  }
  return written;
}
