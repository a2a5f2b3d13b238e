import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Served } from '../../../app/journal.ts';
import type { RunDesk } from '../../../app/run.ts';
import type { Tap } from '../../../outing/next.ts';
import type { RunState } from '../../../outing/state.ts';

/** What the screens of a run share: the outing in hand and how a tap is served. */
export interface Run {
  readonly desk: RunDesk;
  readonly state: RunState;
  /** Serves a tap and says so where it made no sense. */
  readonly tap: (tap: Tap) => Promise<Served>;
  readonly undo: () => Promise<Served>;
}

export const RunContext = createContext<Run | null>(null);

/** The run of the screen this stands in. @throws Error outside one. */
export function useRun(): Run {
  const run = useContext(RunContext);
  if (!run) throw new Error('no run around this part');
  return run;
}
