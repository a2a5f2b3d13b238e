import type { RigId } from '../gear/ids.ts';
import {
  type HeatSegment,
  heatAfter,
  meanHeat,
  midExposureHeat,
  type ThermalModel,
} from '../science/heat.ts';
import { isRefusal } from '../science/refusal.ts';
import { type NextFrame, restNeeded } from '../science/sensorRest.ts';
import { type Doublings, doublings } from '../science/sensorUnits.ts';
import {
  cornerModels,
  overCorners,
  type Ranged,
  type ThermalRange,
  usualModel,
} from '../science/thermalRange.ts';
import type { Seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import type { HeatCourse, HeatSpan } from './heatCourse.ts';
import type { FrameKey, SetId } from './ids.ts';
import type { Plan } from './plan.ts';

/*
 * Heat in a plan, in stops of dark current over each rig's own rested state; never to be added to
 * stops of exposure. Each rig is heated by its own frames only.
 */

/** What is known of how a rig's body warms; an unmeasured body has the stated ranges. */
export type ThermalOf = (rig: RigId) => ThermalRange;

/** The heat in the middle of each frame under one model. */
type FrameHeats = ReadonlyMap<FrameKey, Doublings>;

/** The heats of one rig's frames. */
export interface RigHeats {
  readonly usual: FrameHeats;
  /** At the corners of the ranges, always in the same order. */
  readonly corners: readonly FrameHeats[];
}

/** The heats of all frames of a list. */
export type PlanHeats = ReadonlyMap<RigId, RigHeats>;

function heatsUnder(model: ThermalModel, spans: readonly HeatSpan[], start: Doublings): FrameHeats {
  const heats = new Map<FrameKey, Doublings>();
  let heat = start;
  for (const { mode, lasts, frame } of spans) {
    const plateau = model.plateaus[mode];
    if (frame !== null) heats.set(frame, midExposureHeat(heat, plateau, lasts, model.tau));
    heat = heatAfter(heat, plateau, lasts, model.tau);
  }
  return heats;
}

const RESTED = doublings(0);

/** The heat of every frame at mid-exposure; all rigs start rested. */
export const heatsOf = (course: HeatCourse, thermal: ThermalOf): PlanHeats =>
  new Map(
    [...course].map(([rig, spans]) => [
      rig,
      {
        usual: heatsUnder(usualModel(thermal(rig)), spans, RESTED),
        corners: cornerModels(thermal(rig)).map((model) => heatsUnder(model, spans, RESTED)),
      },
    ]),
  );

/** The heat of one frame with its range; null for a frame that is not in the list. */
export function frameHeat(heats: PlanHeats, rig: RigId, key: FrameKey): Ranged<Doublings> | null {
  const own = heats.get(rig);
  const usual = own?.usual.get(key);
  if (own === undefined || usual === undefined) return null;
  const all = own.corners.flatMap((each) => each.get(key) ?? []);
  return ranged(usual, all);
}

const ranged = (usual: Doublings, others: readonly Doublings[]): Ranged<Doublings> => ({
  usual,
  least: Math.min(usual, ...others) as Doublings,
  most: Math.max(usual, ...others) as Doublings,
});

/** The heat line of one pair in one set, in stops of dark current; + where the other is warmer. */
export interface PairHeat {
  readonly set: SetId;
  readonly reference: RigId;
  readonly other: RigId;
  /**
   * What the two histories make of it, over the corners that both bodies share: what an order or a
   * rest can even out.
   */
  readonly byHistory: Ranged<Doublings>;
  /**
   * The same where each body may lie in another corner of its range: how far apart two bodies may
   * be that nobody has measured. A body that warms more is a result, not an unfairness.
   */
  readonly withBodies: Ranged<Doublings>;
}

/** The heat lines of a list: each other rig against the reference of each set, means over frames. */
export function pairHeats(
  plan: Plan,
  frames: readonly PlannedFrame[],
  heats: PlanHeats,
): readonly PairHeat[] {
  const meanIn = (of: FrameHeats, set: SetId, rig: RigId): Doublings | null => {
    const own = frames.flatMap((frame) =>
      frame.set === set && frame.rig === rig ? (of.get(frame.key) ?? []) : [],
    );
    const mean = meanHeat(own);
    return isRefusal(mean) ? null : mean;
  };
  return plan.sets.flatMap(({ id: set, reference }) =>
    plan.rigs.flatMap((other) => {
      if (other === reference) return [];
      const [one, two] = [heats.get(reference), heats.get(other)];
      const usualOne = one && meanIn(one.usual, set, reference);
      const usualTwo = two && meanIn(two.usual, set, other);
      if (!one || !two || usualOne == null || usualTwo == null) return [];
      const cornersOne = one.corners.flatMap((each) => meanIn(each, set, reference) ?? []);
      const cornersTwo = two.corners.flatMap((each) => meanIn(each, set, other) ?? []);
      const usual = (usualTwo - usualOne) as Doublings;
      const together = cornersTwo.map(
        (heat, index) => (heat - (cornersOne[index] ?? 0)) as Doublings,
      );
      const ends = (of: readonly Doublings[]) => [Math.min(...of), Math.max(...of)] as const;
      const [lowOne, highOne] = ends(cornersOne);
      const [lowTwo, highTwo] = ends(cornersTwo);
      return [
        {
          set,
          reference,
          other,
          byHistory: ranged(usual, together),
          withBodies: ranged(usual, [
            (lowTwo - highOne) as Doublings,
            (highTwo - lowOne) as Doublings,
          ]),
        },
      ];
    }),
  );
}

/** A rest in seconds with its range; null where no rest in that mode is enough. */
export interface RestRange {
  readonly usual: Seconds | null;
  readonly least: Seconds | null;
  readonly most: Seconds | null;
}

/** A rig that waits for its next frame. */
export interface Waiting {
  /** All it has gone through since it was rested, to where the rest begins. */
  readonly behind: readonly HeatSegment[];
  readonly mode: 'off' | 'idle';
  readonly next: NextFrame;
}

/**
 * The rest that keeps the next mid-exposure under a heat, in closed form, with the usual values and
 * over the corners. An unmeasured body's rest is a suggestion: show it with its range.
 *
 * @param most the highest allowed heat under a model, for example that of the partner's frame or of
 * a rested body's first frame, + log2 of the limit.
 */
export function restBefore(
  { behind, mode, next }: Waiting,
  range: ThermalRange,
  most: (model: ThermalModel) => Doublings,
): RestRange {
  // Longer than any evening stands for 'never' while the corners are compared.
  const never = Number.POSITIVE_INFINITY as Seconds;
  const rest = overCorners(range, (model) => {
    const now = behind.reduce(
      (heat, { mode: was, lasts }) => heatAfter(heat, model.plateaus[was], lasts, model.tau),
      RESTED,
    );
    const needed = restNeeded(model, now, mode, next, most(model));
    return isRefusal(needed) ? never : needed;
  });
  const orNull = (value: Seconds): Seconds | null => (value === never ? null : value);
  return { usual: orNull(rest.usual), least: orNull(rest.least), most: orNull(rest.most) };
}
