import type { HandOver } from '../../app/run.ts';

/** Words of what keeps an outing from being lost: two windows, a disk that refuses, a log that must leave. */
export const safety = {
  /** Of an outing that another window has, or has had. */
  handOver: {
    none: 'This outing runs in another window. Here it can only be watched.',
    asking: 'The other window is asked. It finishes what it writes first.',
    taken:
      'This window has the outing now, with all that was recorded. The other one only watches.',
    stolen:
      'The other window did not answer, so the outing was taken from it. What it recorded is here. Use it no more.',
    kept: 'The other window keeps the outing: something there is not saved yet. Save it there, then take over here.',
    unread:
      'The log cannot be read here now, so the other window keeps the outing. Nothing is lost. Try again.',
    given:
      'Another window has taken this outing over, with all that was recorded. Here it can only be watched.',
    lost: 'Another window has taken this outing, because this one did not answer. Here it can only be watched.',
  } satisfies Record<HandOver, string>,
  takeOver: 'Take over here',
  apart:
    'This browser cannot keep two windows from writing one outing. Keep a single window of the app open.',

  inMemory: (taps: number) =>
    taps === 1 ? '1 entry is in memory only.' : `${taps} entries are in memory only.`,
  asFile: 'Get the journal off as a file',

  notLeft: (name: string) =>
    `${name} has ended and has not left this phone yet. A lost phone takes it along.`,
};
