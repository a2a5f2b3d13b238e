import { type Seconds, seconds } from '../../../src/science/units.ts';
import type { Chance } from './chance.ts';

/*
 * The warmth of a sensor in stops of dark current over its rested state, by two stores: the chip,
 * which follows in seconds, and the shell, which follows in tens of minutes. Nothing in it is what
 * the app takes for an unmeasured body.
 */

/** How one body warms. Plateaus in stops of dark current. */
export interface Warming {
  readonly chip: { readonly tau: Seconds; readonly exposing: number; readonly idle: number };
  readonly shell: { readonly tau: Seconds; readonly exposing: number; readonly idle: number };
}

/** A body drawn by chance. */
export function warmingOf(chance: Chance): Warming {
  const doubling = chance.between(4.5, 8);
  const [exposing, idle] = [chance.between(5, 16), chance.between(1, 5)];
  const ofChip = chance.between(0.15, 0.4);
  const store = (share: number, tau: number) => ({
    tau: seconds(tau),
    exposing: (share * exposing) / doubling,
    idle: (share * idle) / doubling,
  });
  return {
    chip: store(ofChip, chance.between(15, 90)),
    shell: store(1 - ofChip, chance.between(500, 1500)),
  };
}

/** A stretch in which a sensor works, in seconds from when the body was switched on. */
export interface Working {
  readonly fromS: number;
  readonly toS: number;
}

/** The warmth in the middle of each stretch of work, the first store of each body at rest at 0 s. */
export function warmthsOf({ chip, shell }: Warming, work: readonly Working[]): readonly number[] {
  const stores = [chip, shell];
  const warm = stores.map(() => 0);
  let now = 0;
  const pass = (to: number, how: 'exposing' | 'idle'): void => {
    for (const [i, store] of stores.entries()) {
      const left = Math.exp(-(to - now) / store.tau);
      warm[i] = store[how] + ((warm[i] ?? 0) - store[how]) * left;
    }
    now = to;
  };
  return work.map(({ fromS, toS }) => {
    pass(fromS, 'idle');
    pass((fromS + toS) / 2, 'exposing');
    const middle = warm.reduce((sum, each) => sum + each, 0);
    pass(toS, 'exposing');
    return middle;
  });
}
