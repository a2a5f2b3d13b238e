import { type BesidesMade, besidesMade } from '../log/besides.ts';
import { countedFrames, type SetLedger } from '../log/ledger.ts';
import type { OutingLog } from './log.ts';

/** What set a pair apart besides brightness; null if no pass is complete. Comes with the ledger's screens. */
export function besidesOf({ frames, journal }: OutingLog, ledger: SetLedger): BesidesMade | null {
  const { plan, gear } = journal.state.value;
  return besidesMade(ledger, plan, gear, countedFrames(frames.value));
}
