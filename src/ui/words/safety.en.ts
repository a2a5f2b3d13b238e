import type { HandOver } from '../../app/run.ts';

/** Words of what keeps an outing from being lost: two windows, and a disk that refuses. */
export const safety = {
  /** Of an outing that another window has, or has had. */
  handOver: {
    none: 'This outing runs in another window. Here it can only be watched.',
    asking: 'The other window is asked. It finishes what it writes first.',
    taken: 'This window has the outing now. The other one only watches.',
    stolen: 'The other window did not answer, so the outing was taken from it. Use it no more.',
    kept: 'The other window keeps the outing: something there is not saved yet. Save it there first.',
    unread: 'The log cannot be read now, so the other window keeps the outing. Try again.',
    given: 'Another window has taken this outing over. Here it can only be watched.',
  } satisfies Record<HandOver, string>,
  takeOver: 'Take over here',
  apart: 'This browser cannot keep two windows apart. Keep only one window of the app open.',

  inMemory: (taps: number) =>
    taps === 1 ? '1 entry is in memory only.' : `${taps} entries are in memory only.`,
  asFile: 'Get the journal off as a file',
};
