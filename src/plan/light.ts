import { assemble, type Gear } from '../gear/rig.ts';
import { forecastAt, nineInTen } from '../light/forecast.ts';
import { rightSettingsAt, type TurnedDial } from '../light/rightSettings.ts';
import type { Scene } from '../light/scene.ts';
import type { Stretch } from '../light/skyTable.ts';
import {
  missesFrom,
  type PlacedAim,
  type SetAims,
  type SetMiss,
  type Start,
  startAt,
} from '../light/startAt.ts';
import { type RightStretch, rightStretches } from '../light/windows.ts';
import { isRefusal } from '../science/refusal.ts';
import { later, type Stops, type UtcMs } from '../science/units.ts';
import type { CauseDifferences } from './causes.ts';
import { type Differences, differencesFrom, type Pair } from './differences.ts';
import { exposuresOf } from './exposures.ts';
import { fadeCause } from './fade.ts';
import type { SetId } from './ids.ts';
import type { Plan, PlanSet } from './plan.ts';
import type { OtherRow, Prepared, SetTable } from './prepare.ts';
import { type SwapAgainstFade, swapAgainstFade } from './swapFade.ts';

/** What would bring a set back into its light. */
export interface Mend {
  /** A start of the list at which this set comes out right, nearest to the one planned; null = none. */
  readonly startMs: UtcMs | null;
  /** One dial of its reference turned, at the start that is planned. */
  readonly turned: readonly TurnedDial[];
}

/** One set laid on the light. */
export interface SetLight {
  readonly set: SetId;
  /** When an exposure of its reference may start; none if the evening never has its light. */
  readonly right: readonly RightStretch[];
  /** The opening of its reference's first shutter and the closing of its last. */
  readonly planned: Stretch;
  /** How far its worst exposure lies outside of the tolerance; positive = too bright. */
  readonly beyond: Stops;
  /** Null while it comes out right. */
  readonly mend: Mend | null;
}

/** A list laid on the light of its evening. */
export interface PlanLight {
  /** When its first act begins. */
  readonly startMs: UtcMs;
  /** The start worked out: the latest at which every set fits, or the smallest total miss. */
  readonly best: Start<SetId>;
  /** How sure the light is at the start: half the width of nine times in ten. */
  readonly within: Stops;
  /** In the order of the plan; only sets that look at the light. */
  readonly sets: readonly SetLight[];
  /** Null unless the light changes too much during a swap in every pair. */
  readonly swap: SwapAgainstFade | null;
}

/** The sets that are judged by the light, each by its reference's frames. */
export function aimsOf({ sets }: Plan, prepared: Prepared): readonly SetAims<SetId>[] {
  return sets.flatMap((set) => {
    const aims = aimsOfSet(set, prepared);
    return set.kind === 'light' && aims.length > 0 ? [{ set: set.id, aims }] : [];
  });
}

function aimsOfSet(set: PlanSet, { frames, timeline }: Prepared): readonly PlacedAim[] {
  return frames.flatMap((frame, place) => {
    const times = timeline.frames[place];
    if (frame.set !== set.id || frame.rig !== set.reference || !times) return [];
    return [{ exact: frame.exact, targetOffset: set.targetOffset, afterS: times.startS }];
  });
}

/**
 * When to start a list, worked out.
 *
 * @param side one side of the night: at dawn the same exposures are right again.
 * @returns null if no set looks at the light, or the sky is not known.
 */
export const bestStart = (
  plan: Plan,
  prepared: Prepared,
  scene: Scene,
  side: Stretch,
): Start<SetId> | null => startAt(scene, aimsOf(plan, prepared), plan.light.tolerance, side);

/**
 * A list laid on the light of its evening.
 *
 * @returns null if no set looks at the light, or the sky is not known for the whole list.
 */
export function planLight(
  plan: Plan,
  gear: Gear,
  prepared: Prepared,
  scene: Scene,
  side: Stretch,
): PlanLight | null {
  const best = bestStart(plan, prepared, scene, side);
  if (!best) return null;
  const aims = aimsOf(plan, prepared);
  const startMs = plan.evening?.startMs ?? best.startMs;
  const misses = missesFrom(scene, aims, plan.light.tolerance, startMs);
  const forecast = forecastAt(scene, startMs);
  if (!misses || !forecast) return null;
  const laid = { plan, gear, scene, side, startMs };
  return {
    startMs,
    best,
    within: nineInTen(forecast.sigma),
    sets: aims.flatMap((one) => setLight(laid, one, misses) ?? []),
    swap: swapAgainstFade(plan, gear, prepared, scene, startMs),
  };
}

interface Laid {
  readonly plan: Plan;
  readonly gear: Gear;
  readonly scene: Scene;
  readonly side: Stretch;
  readonly startMs: UtcMs;
}

function setLight(
  { plan, gear, scene, side, startMs }: Laid,
  one: SetAims<SetId>,
  misses: readonly SetMiss<SetId>[],
): SetLight | null {
  const { tolerance } = plan.light;
  const [first] = one.aims;
  const last = one.aims.at(-1);
  const set = plan.sets.find(({ id }) => id === one.set);
  if (!first || !last || !set) return null;
  const beyond = misses.find((miss) => miss.set === one.set)?.beyond ?? (0 as Stops);
  const mend = (): Mend => {
    const alone = startAt(scene, [one], tolerance, side);
    const assembled = assemble(gear, set.reference);
    const standing = { settings: set.settings, exact: first.exact };
    const turned =
      assembled &&
      rightSettingsAt(
        scene,
        assembled,
        standing,
        set.targetOffset,
        later(startMs, (first.afterS + last.afterS) / 2),
      );
    return {
      startMs: alone?.fits ? nearestFit(scene, one, tolerance, side, startMs) : null,
      turned:
        turned && !isRefusal(turned)
          ? turned.filter(({ miss }) => Math.abs(miss) <= tolerance)
          : [],
    };
  };
  return {
    set: one.set,
    right: rightStretches(scene, first, tolerance, side),
    planned: {
      fromMs: later(startMs, first.afterS),
      toMs: later(startMs, last.afterS + last.exact.t),
    },
    beyond,
    mend: beyond === 0 ? null : mend(),
  };
}

/** The start nearest to the one planned at which one set comes out right, by the minute. */
function nearestFit(
  scene: Scene,
  one: SetAims<SetId>,
  tolerance: Stops,
  { fromMs, toMs }: Stretch,
  startMs: UtcMs,
): UtcMs | null {
  for (
    let away = 60;
    startMs - 1000 * away >= fromMs || startMs + 1000 * away <= toMs;
    away += 60
  ) {
    for (const at of [later(startMs, -away), later(startMs, away)]) {
      if (at < fromMs || at > toMs) continue;
      const [miss] = missesFrom(scene, [one], tolerance, at) ?? [];
      if (miss?.beyond === 0) return at;
    }
  }
  return null;
}

/** The differences of a pair with the fade that its frames will meet. */
const withFade = (
  { lines }: Differences,
  fade: CauseDifferences['fade'],
  pair: Pair,
  set: PlanSet,
): Differences => {
  const causes = Object.fromEntries(
    lines.map(({ cause, difference }) => [cause, difference]),
  ) as CauseDifferences;
  return differencesFrom({ ...causes, fade }, pair, set.hold);
};

/**
 * A plan worked out with the fade that each pair will meet if its list starts at an instant: the
 * mean over its passes.
 */
export function withPredictedFade(
  plan: Plan,
  gear: Gear,
  prepared: Prepared,
  scene: Scene,
  startMs: UtcMs,
): Prepared {
  const table = prepared.table.map((one): SetTable => {
    const set = plan.sets.find(({ id }) => id === one.set);
    const reference = one.kind === 'compared' ? assemble(gear, one.reference.rig) : null;
    if (one.kind !== 'compared' || !set || !reference) return one;
    const others = one.others.map((row): OtherRow => {
      const other = assemble(gear, row.rig);
      if (!other) return row;
      const of = (rig: OtherRow['rig'], pass: number) =>
        exposuresOf(prepared, startMs, set.id, rig, pass);
      const passes = Array.from({ length: set.passes }, (_, index) => ({
        reference: of(set.reference, index + 1),
        other: of(row.rig, index + 1),
      }));
      const fade = fadeCause(scene, set.kind, passes);
      return { ...row, differences: withFade(row.differences, fade, { reference, other }, set) };
    });
    return { ...one, others };
  });
  return { ...prepared, table };
}
