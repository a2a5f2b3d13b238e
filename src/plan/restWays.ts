import { thermalRangeOf } from '../gear/bodyHeat.ts';
import type { RigId } from '../gear/ids.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import { isRefusal, must, type Refusal } from '../science/refusal.ts';
import { restedMidHeat } from '../science/sensorRest.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import { cornerModels, type Ranged, usualModel } from '../science/thermalRange.ts';
import { duration, type Seconds } from '../science/units.ts';
import { heatsOf, pairHeats, type RigHeats } from './heat.ts';
import { heatCourseOf } from './heatCourse.ts';
import type { FrameKey } from './ids.ts';
import { DEFAULT_HEAT_LIMIT, DEFAULT_REST } from './newPlan.ts';
import { nextFrameOf } from './nextFrame.ts';
import type { Plan } from './plan.ts';
import type { Prepared } from './prepare.ts';
import { warmUp, warmUpOf, withoutWarmUp } from './warmUp.ts';

/**
 * The ways of dealing with heat. Two are honest: to rest until a frame is inside the limit, and to
 * warm all bodies up and keep their rhythm. The rule of thumb alone lies between them.
 */
export const REST_WAYS = ['limit', 'warm-up', 'thumb', 'none'] as const;
export type RestWay = (typeof REST_WAYS)[number];

/** The way that a plan goes. */
export const restWayOf = (plan: Plan): RestWay => (warmUpOf(plan) ? 'warm-up' : plan.rest.kind);

/** The plan by another way; what was set for a way it goes already stays. */
export function inRestWay(
  plan: Plan,
  gear: Gear,
  frames: Prepared['frames'],
  way: RestWay,
): Plan | Refusal {
  if (way === restWayOf(plan)) return plan;
  switch (way) {
    case 'warm-up':
      return warmUp(plan, gear, frames);
    case 'limit':
      return withoutWarmUp(plan, { kind: 'limit', limit: DEFAULT_HEAT_LIMIT });
    case 'thumb':
      return withoutWarmUp(plan, { kind: 'thumb', rule: DEFAULT_REST });
    case 'none':
      return withoutWarmUp(plan, { kind: 'none' });
    default:
      return way satisfies never;
  }
}

/** What a way of resting comes to. */
export interface RestOutcome {
  /** The heat line, by its history alone, of the pair that is parted most; null without a pair. */
  readonly pair: Ranged<Doublings> | null;
  /**
   * How much warmer over a rested body's such frame a rig's last compared frame is than its first;
   * of the rig that drifts most. Null where no rig has two frames.
   */
  readonly firstToLast: Ranged<Doublings> | null;
  /** Of it, how long rigs wait for nothing but their cooling. */
  readonly restS: Seconds;
  readonly wallS: Seconds;
}

const farthest = (all: readonly Ranged<Doublings>[]): Ranged<Doublings> | null =>
  all.reduce<Ranged<Doublings> | null>(
    (far, each) => (far && Math.abs(far.usual) >= Math.abs(each.usual) ? far : each),
    null,
  );

/** What a prepared list leaves in heat, and what it costs in time. */
export function restOutcome(plan: Plan, gear: Gear, prepared: Prepared): RestOutcome {
  const { frames, timeline } = prepared;
  // Every rig of a prepared list is among the gear, and the timeline is the list's own.
  const course = must(heatCourseOf(plan, gear, frames, timeline));
  const thermal = (rig: RigId) => {
    const assembled = assemble(gear, rig);
    if (!assembled) throw new RangeError(`a prepared rig that is not there: ${rig}`);
    return thermalRangeOf(assembled.body);
  };
  const heats = heatsOf(course, thermal);
  const series = new Set(
    plan.sets.flatMap(({ id, kind }) => (kind === 'capped-series' ? [id] : [])),
  );
  const compared = frames.filter(({ set }) => !series.has(set));
  const drifts = [...heats].flatMap(([rig, own]) => {
    const ofRig = compared.filter((frame) => frame.rig === rig);
    const [first, last] = [ofRig[0], ofRig.at(-1)];
    const assembled = assemble(gear, rig);
    if (!first || !last || first === last || !assembled) return [];
    const models = [usualModel(thermal(rig)), ...cornerModels(thermal(rig))];
    const overRested = (
      { key, exact }: typeof first,
      of: ReadonlyMap<FrameKey, Doublings>,
      i: number,
    ) =>
      (of.get(key) ?? 0) -
      restedMidHeat(
        models[i] as (typeof models)[number],
        nextFrameOf(plan, assembled.body, exact.t),
      );
    const [usual = 0, ...corners] = underEach(own).map(
      (of, i) => overRested(last, of, i) - overRested(first, of, i),
    );
    return [
      {
        usual: usual as Doublings,
        least: Math.min(usual, ...corners) as Doublings,
        most: Math.max(usual, ...corners) as Doublings,
      },
    ];
  });
  return {
    pair: farthest(
      pairHeats(plan, frames, heats).flatMap(({ set, byHistory }) =>
        series.has(set) ? [] : [byHistory],
      ),
    ),
    firstToLast: farthest(drifts),
    restS: duration(timeline.rests.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0)),
    wallS: timeline.wallS,
  };
}

const underEach = ({ usual, corners }: RigHeats) => [usual, ...corners];

/** What every way would come to, in order; a refusal where it cannot be gone. */
export function restOutcomes(
  plan: Plan,
  gear: Gear,
  frames: Prepared['frames'],
  prepare: (plan: Plan) => Prepared,
): readonly { readonly way: RestWay; readonly outcome: RestOutcome | Refusal }[] {
  return REST_WAYS.map((way) => {
    const changed = inRestWay(plan, gear, frames, way);
    return {
      way,
      outcome: isRefusal(changed) ? changed : restOutcome(changed, gear, prepare(changed)),
    };
  });
}
