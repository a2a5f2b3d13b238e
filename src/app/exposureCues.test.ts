import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import { A, B, dialled, Evening, frame, held, planOf } from '../../test/evenings/evening.ts';
import type { Cue, Cues } from '../device/cues.ts';
import type { RunState } from '../outing/state.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import { type SpokenWords, tellExposures } from './exposureCues.ts';

const WORDS: SpokenWords = {
  open: 'open',
  end: 'end',
  close: 'close',
  closeIn: (seconds) => `close in ${seconds}`,
  ofRig: (letter, what) => `${letter}: ${what}`,
};

/** What is told of the frames that one tap starts, with its seconds after the opening. */
function toldOf(frames: readonly PlannedFrame[], order: 'forward' | 'side-by-side' = 'forward') {
  const evening = new Evening(frames, planOf(frames, { order })).setUp().untilExpose();
  const told: (readonly [number, Cue['kind'], string | null])[][] = [];
  const state = signal<RunState | null>(evening.state());
  const startMs = evening.now().monoMs;
  tellExposures({
    cues: {
      schedule: (_, cues) =>
        told.push(
          cues.map(({ kind, dueMs, spoken }) => [(dueMs - startMs) / 1000 - 2, kind, spoken]),
        ),
      cancel: () => undefined,
      onLate: () => () => undefined,
    } as Pick<Cues, 'schedule' | 'cancel' | 'onLate'> as Cues,
    state,
    look: () => evening.now(),
    words: () => WORDS,
    onLateEnd: () => undefined,
  });
  // The clock of an evening moves on a second with each tap; what is past by then is not told.
  evening.start();
  state.value = evening.state();
  return told;
}

test('a frame that the body ends: ten, the last five sparingly, the end', () => {
  expect(toldOf([frame('base', A, dialled('6.3', '64', '100'))])).toEqual([
    [
      [0, 'lead-in', 'open'],
      [54, 'near-end', '10'],
      [59, null, '5'],
      [61, null, '3'],
      [62, null, '2'],
      [63, null, '1'],
      [64, 'end', 'end'],
    ],
  ]);
});

test('a bulb: the hand is told ahead that it will have to close, and when', () => {
  expect(toldOf([frame('base', A, held('6.3', 120, '100'))])[0]?.slice(1)).toEqual([
    [110, 'near-end', 'close in 10'],
    [115, null, '5'],
    [117, null, '3'],
    [118, null, '2'],
    [119, null, '1'],
    [120, 'end', 'close'],
  ]);
});

test('a short frame is counted only as far as there is time for it', () => {
  expect(toldOf([frame('base', A, dialled('6.3', '4', '100'))])[0]?.slice(1)).toEqual([
    [2, null, '2'],
    [3, null, '1'],
    [4, 'end', 'end'],
  ]);
});

test('two rigs side by side: each word says whose it is', () => {
  const told = toldOf(
    [
      frame('base', A, dialled('6.3', '64', '100')),
      frame('base', B, dialled('8', '60', '100'), { visit: 2 }),
    ],
    'side-by-side',
  );
  expect(told.map((cues) => cues.at(-1))).toEqual([
    [64, 'end', 'A: end'],
    [60, 'end', 'B: end'],
  ]);
});
