import type { PicturesAnswer } from '../pictureReading.ts';
import { type ReadPicture, readPicture } from '../readPicture.ts';

/*
 * Reads what pictures say of themselves, beside the screen. It is given files once, tells what it has
 * in batches, and is ended from outside. Nothing is written, and nothing leaves the device.
 */

declare const self: DedicatedWorkerGlobalScope;

/** Often enough for a line that grows, seldom enough not to keep the screen busy. */
const TELL_EVERY_MS = 100;
/** A card reader answers slower than the reading takes: some files are asked for at once (our choice). */
const AT_ONCE = 4;

const tell = (answer: PicturesAnswer): void => self.postMessage(answer);

self.addEventListener('message', async ({ data: files }: MessageEvent<readonly File[]>) => {
  let batch: ReadPicture[] = [];
  let told = performance.now();
  const say = () => {
    tell({ kind: 'reading', pictures: batch });
    batch = [];
    told = performance.now();
  };
  let next = 0;
  const lane = async () => {
    for (let file = files[next]; file !== undefined; file = files[next]) {
      next += 1;
      batch.push(await readPicture(file));
      if (performance.now() - told >= TELL_EVERY_MS) say();
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
  if (batch.length > 0) say();
  tell({ kind: 'done' });
});
