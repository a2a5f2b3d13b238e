import { matchFiles } from '../../src/exchange/matching/matchFiles.ts';
import type { CameraFile } from '../../src/outing/cameraFile.ts';
import { cardOf, type Kind } from '../evenings/card.ts';
import type { Bench } from './ratio.ts';

/*
 * Two rigs' frames matched with their files, against what anybody would have to do at least: sort the
 * same files by their time. No clock frame, so that the clock has to be found as well.
 */

const EVENING: Kind = {
  name: 'long',
  clock: 'hour',
  clockFrames: 'none',
  numbers: 'right',
  named: true,
  missing: 0.02,
  extra: 0.05,
  gainsSPerHour: 1,
  writesEnd: false,
  cards: 'one',
  otherEvening: true,
};
const SEED = 2;
const FRAMES = 2000;
const ROUNDS = 5;
/** Sorting some thousand files takes less than a clock's tick. */
const SORTS = 100;

function timed(act: () => void): number {
  const from = performance.now();
  act();
  return performance.now() - from;
}

const sortBare = (files: readonly CameraFile[]): readonly CameraFile[] =>
  files.toSorted((a, b) => (a.time?.shownMs ?? 0) - (b.time?.shownMs ?? 0));

export const bench: Bench = async (_, brief) => {
  const sets = brief ? 3 : 80;
  const { run, frames, files } = cardOf(EVENING, SEED, { sets, repeats: 25, exactly: true });
  const made = frames.slice(0, FRAMES);
  const matching: number[] = [];
  const sorting: number[] = [];
  for (let round = 0; round < (brief ? 1 : ROUNDS); round += 1) {
    matching.push(timed(() => matchFiles(run, made, files)));
    sorting.push(
      timed(() => {
        for (let n = 0; n < SORTS; n += 1) sortBare(files);
      }) / SORTS,
    );
  }
  return [
    {
      name: `matching ${made.length} frames with ${files.length} files, sorting the files by time`,
      unit: 'ms',
      measured: matching,
      against: sorting,
    },
  ];
};
