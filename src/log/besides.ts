import { assemble, type Gear } from '../gear/rig.ts';
import { type Besides, besidesOf } from '../plan/besides.ts';
import type { Side } from '../plan/causes.ts';
import type { Plan } from '../plan/plan.ts';
import type { CountedFrame, SetLedger } from './ledger.ts';

/** What set a pair apart besides brightness, and in which pass. */
export interface BesidesMade {
  readonly pass: number;
  readonly besides: Besides;
}

/**
 * What set a pair of the ledger apart besides its brightness, as it was really set: of the first
 * frames that count in its first complete pass. No mean is taken over unlike units. Null if no pass
 * is complete.
 */
export function besidesMade(
  ledger: SetLedger,
  plan: Plan,
  gear: Gear,
  frames: readonly CountedFrame[],
): BesidesMade | null {
  const pass = ledger.passes[0]?.pass;
  const set = plan.sets.find(({ id }) => id === ledger.set);
  const side = (rig: SetLedger['other']): Side | null => {
    const assembled = assemble(gear, rig);
    const frame = frames.find(
      (one) => one.set === ledger.set && one.rig === rig && one.pass === pass,
    );
    return assembled && frame ? { assembled, settings: frame.settings, exact: frame.exact } : null;
  };
  const [reference, other] = [side(ledger.reference), side(ledger.other)];
  return pass !== undefined && set && reference && other
    ? { pass, besides: besidesOf(reference, other, set.framing, plan) }
    : null;
}
