import type { CostedOrder, PairLeft } from '../../../plan/orderCost.ts';
import type { Stops } from '../../../science/units.ts';
import type { OrderWords } from '../../words/planOrder.ts';

const farthest = (values: readonly number[]): number =>
  Math.max(0, ...values.map((value) => Math.abs(value)));

/** The fade of the pair that is off most, without its sign; null where any is unknown or none is there. */
export function worstFade(pairs: readonly PairLeft[]): Stops | null {
  const known = pairs.flatMap(({ fade }) => (fade ? [fade.whole] : []));
  return known.length === 0 ? null : (farthest(known) as Stops);
}

/** The heat of the pair that is off most, without its sign, in stops of dark current. */
export const worstHeat = (pairs: readonly PairLeft[]): number =>
  farthest(pairs.map(({ heat }) => heat));

/** What an order comes to, as it is written. */
export interface Written {
  readonly fade: string;
  readonly heat: string;
  readonly swaps: number;
  readonly time: string;
}

export function written({ format, inOrder }: OrderWords, costed: CostedOrder): Written {
  const fade = worstFade(costed.pairs);
  return {
    fade: fade === null ? inOrder.unknown : format.number(fade, 2),
    heat: format.number(worstHeat(costed.pairs), 2),
    swaps: costed.swaps,
    time: format.duration(costed.wallS),
  };
}
