import type { ReadPicture } from './readPicture.ts';

/** What the reading of pictures says while it works, and at its end. */
export type PicturesAnswer =
  /** What has been read since the last word, in no order. */
  | { readonly kind: 'reading'; readonly pictures: readonly ReadPicture[] }
  | { readonly kind: 'done' }
  /** The part that reads is not on the device, or broke. */
  | { readonly kind: 'failed' };

/** Starts to read and hears what was read. @returns ends it; nothing is heard after that. */
export type StartReading = (
  files: readonly File[],
  hear: (answer: PicturesAnswer) => void,
) => () => void;

/** Reads in a worker of its own: the screen never waits for it. */
export const readInWorker: StartReading = (files, hear) => {
  const worker = new Worker(new URL('./workers/pictures.worker.ts', import.meta.url), {
    type: 'module',
  });
  worker.addEventListener('message', ({ data }: MessageEvent<PicturesAnswer>) => {
    hear(data);
    if (data.kind === 'done') worker.terminate();
  });
  worker.addEventListener('error', () => hear({ kind: 'failed' }));
  worker.postMessage(files);
  return () => worker.terminate();
};
