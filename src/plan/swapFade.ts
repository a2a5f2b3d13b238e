import type { Gear } from '../gear/rig.ts';
import { fadeAt, fadeOver } from '../light/fade.ts';
import type { Exposure } from '../light/forecast.ts';
import type { Scene } from '../light/scene.ts';
import { skyEnd } from '../light/skyTable.ts';
import { duration, later, type Seconds, type Stops, type UtcMs } from '../science/units.ts';
import { changeOrder } from './edit.ts';
import { exposuresOf } from './exposures.ts';
import { ORDERS, type OrderName, type Plan } from './plan.ts';
import { type Prepared, preparePlan } from './prepare.ts';

/** The light changes too much while rigs are swapped, in every pair, and what would help. */
export interface SwapAgainstFade {
  /** Swap time x fade of the pair that suffers least, without its sign. */
  readonly least: Stops;
  readonly most: Stops;
  /** A swap so quick that no pair goes beyond the limit. */
  readonly quickS: Seconds;
  /** Orders whose mean over the passes stays within the limit in every pair. */
  readonly orders: readonly OrderName[];
  /** The next start from which on the fade stays small enough during the list; null = none. */
  readonly laterMs: UtcMs | null;
}

/** The exposures of a pair in one pass. */
interface PairInPass {
  readonly set: string;
  readonly other: string;
  readonly reference: readonly Exposure[];
  readonly others: readonly Exposure[];
}

/** Every pair of every light set and pass, as it falls if the list starts at an instant. */
function pairsOf(plan: Plan, prepared: Prepared, startMs: UtcMs): readonly PairInPass[] {
  return plan.sets.flatMap((set) =>
    set.kind !== 'light'
      ? []
      : Array.from({ length: set.passes }, (_, index) => index + 1).flatMap((pass) =>
          plan.rigs.flatMap((rig) => {
            const reference = exposuresOf(prepared, startMs, set.id, set.reference, pass);
            const others =
              rig === set.reference ? [] : exposuresOf(prepared, startMs, set.id, rig, pass);
            return reference.length > 0 && others.length > 0
              ? [{ set: set.id, other: rig, reference, others }]
              : [];
          }),
        ),
  );
}

const middleOf = (exposures: readonly Exposure[]): UtcMs =>
  (exposures.reduce((sum, { startMs, t }) => sum + later(startMs, t / 2), 0) /
    exposures.length) as UtcMs;

/** The fade in stops a minute, without its sign, half way between the frames of a pair. */
function rateBetween(scene: Scene, { reference, others }: PairInPass): number | null {
  const rate = fadeAt(scene, ((middleOf(reference) + middleOf(others)) / 2) as UtcMs);
  return rate === null ? null : Math.abs(rate);
}

/**
 * Whether the light changes by more than the plan's limit while rigs are swapped, in every pair;
 * null if it does not, if nothing is swapped, or if the sky is not known.
 */
export function swapAgainstFade(
  plan: Plan,
  gear: Gear,
  prepared: Prepared,
  scene: Scene,
  startMs: UtcMs,
): SwapAgainstFade | null {
  const { mostFade } = plan.light;
  const { swapS, reframeS } = plan.allowances;
  const minutes = (swapS + reframeS) / 60;
  if (prepared.timeline.swaps.length === 0 || plan.order === 'side-by-side') return null;
  const rates: number[] = [];
  for (const pair of pairsOf(plan, prepared, startMs)) {
    const rate = rateBetween(scene, pair);
    if (rate === null) return null;
    rates.push(rate);
  }
  const [least, most] = [Math.min(...rates), Math.max(...rates)];
  if (rates.length === 0 || least * minutes <= mostFade) return null;
  return {
    least: (least * minutes) as Stops,
    most: (most * minutes) as Stops,
    quickS: duration(Math.max(0, Math.floor((60 * mostFade) / most) - reframeS)),
    orders: ORDERS.filter(
      (order) =>
        order !== plan.order &&
        order !== 'side-by-side' &&
        cancels(changeOrder(plan, order), gear, scene, startMs),
    ),
    laterMs: slowEnough(prepared, scene, startMs, mostFade / minutes),
  };
}

/** Whether an order leaves less of the fade than the limit in the mean of each pair. */
function cancels(plan: Plan, gear: Gear, scene: Scene, startMs: UtcMs): boolean {
  const byPair = new Map<
    string,
    { reference: readonly Exposure[]; other: readonly Exposure[] }[]
  >();
  for (const { set, other, reference, others } of pairsOf(plan, preparePlan(plan, gear), startMs)) {
    const name = `${set} ${other}`;
    byPair.set(name, [...(byPair.get(name) ?? []), { reference, other: others }]);
  }
  return [...byPair.values()].every((passes) => {
    const fade = fadeOver(scene, passes);
    return fade !== null && Math.abs(fade.stops) <= plan.light.mostFade;
  });
}

/** The first start from one on at which the light changes slowly enough throughout the list. */
function slowEnough(
  { timeline: { wallS } }: Prepared,
  scene: Scene,
  fromMs: UtcMs,
  mostRate: number,
): UtcMs | null {
  const end = skyEnd(scene.sky);
  let slowSince: UtcMs | null = null;
  for (let at = fromMs; at < end; at = later(at, 60)) {
    const rate = fadeAt(scene, at);
    if (rate === null || Math.abs(rate) > mostRate) slowSince = null;
    else slowSince ??= at;
    if (slowSince !== null && at >= later(slowSince, wallS)) return slowSince;
  }
  return null;
}
