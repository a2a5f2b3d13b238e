import { restIsMeasured, thermalRangeOf } from '../gear/bodyHeat.ts';
import type { RigId } from '../gear/ids.ts';
import { type Assembled, assemble, type Gear } from '../gear/rig.ts';
import { heatAfter, type ThermalModel } from '../science/heat.ts';
import { must } from '../science/refusal.ts';
import { restedMidHeat } from '../science/sensorRest.ts';
import { type Doublings, doublings } from '../science/sensorUnits.ts';
import { DARK_CURRENT_AT_20, type Ranged, usualModel } from '../science/thermalRange.ts';
import { duration, type Ratio, type Seconds } from '../science/units.ts';
import { darkRatio, sceneUnder } from './darkRatio.ts';
import type { PlannedFrame } from './frame.ts';
import {
  frameHeat,
  heatsOf,
  type PairHeat,
  pairHeats,
  type RestRange,
  restBefore,
} from './heat.ts';
import { behindAt, type HeatSpan, heatCourseOf } from './heatCourse.ts';
import { heatAbove } from './heatLimit.ts';
import type { FrameKey } from './ids.ts';
import { nextFrameOf, settlingOf, waitsIn } from './nextFrame.ts';
import type { HeatLimit, Plan, PlanSet } from './plan.ts';
import type { Prepared } from './prepare.ts';
import { isProposed, type LimitRest } from './rest.ts';
import type { FrameTimes, WeighedRest } from './timeline.ts';

/** A rest that the limit asks for before a frame, with all that is to be said of it. */
export interface PlannedRest {
  readonly key: FrameKey;
  readonly rig: RigId;
  /** With the values to work with: how long, what it wins and what it costs. */
  readonly rest: LimitRest;
  /**
   * How long it would have to be over the corners of what is known of the body and, where the limit
   * follows from the noise of the shadows, over the two decades of a pixel's dark current.
   */
  readonly range: RestRange;
  /** The dark current allowed against a rested body's first such frame. */
  readonly limit: Ratio;
  /** A lens that loses its focus when switched off rests on. */
  readonly mode: 'off' | 'idle';
  readonly isProposed: boolean;
  /** Nobody has measured how this body cools: the rest is a suggestion. */
  readonly isSuggestion: boolean;
}

/** The heat of a rig at an instant, with the values to work with. */
export interface HeatPoint {
  readonly atS: Seconds;
  readonly heat: Doublings;
}

/** The heat of a list. All of it in stops of dark current, never to be added to stops of light. */
export interface PlanHeat {
  /** At mid-exposure, over the rig's own rested state. */
  readonly frames: ReadonlyMap<FrameKey, Ranged<Doublings>>;
  /** Each other rig against the reference of each set in which anything is compared. */
  readonly pairs: readonly PairHeat[];
  readonly rests: readonly PlannedRest[];
  readonly courses: ReadonlyMap<RigId, readonly HeatPoint[]>;
}

/** What all rests of a list are worked out from. */
interface Listed {
  readonly plan: Plan;
  readonly limit: HeatLimit;
  readonly sets: ReadonlyMap<PlanSet['id'], PlanSet>;
  readonly frames: readonly PlannedFrame[];
}

/** The heat of a prepared list: of each frame, each pair and each rest. */
export function planHeat(plan: Plan, gear: Gear, { frames, timeline }: Prepared): PlanHeat {
  // Every rig of a prepared list is among the gear, and the timeline is the list's own.
  const course = must(heatCourseOf(plan, gear, frames, timeline));
  const bodyOf = (rig: RigId) => (assemble(gear, rig) as Assembled).body;
  const heats = heatsOf(course, (rig) => thermalRangeOf(bodyOf(rig)));
  const sets = new Map(plan.sets.map((set) => [set.id, set]));
  const { rest } = plan;
  const limit = rest.kind === 'limit' ? rest.limit : null;
  return {
    frames: new Map(
      frames.flatMap(({ key, rig }) => {
        const heat = frameHeat(heats, rig, key);
        return heat ? [[key, heat] as const] : [];
      }),
    ),
    pairs: pairHeats(plan, frames, heats).filter(
      ({ set }) => sets.get(set)?.kind !== 'capped-series',
    ),
    rests:
      limit === null
        ? []
        : timeline.weighed.flatMap((weighed) => {
            const place = frames.findIndex(({ key }) => key === weighed.key);
            const [frame, times] = [frames[place], timeline.frames[place]];
            const assembled = assemble(gear, weighed.rig);
            const spans = course.get(weighed.rig);
            return frame && times && assembled && spans
              ? [
                  plannedRest(
                    { plan, limit, sets, frames },
                    weighed,
                    frame,
                    times,
                    assembled,
                    spans,
                  ),
                ]
              : [];
          }),
    courses: new Map(
      [...course].map(([rig, spans]) => [
        rig,
        heatPoints(usualModel(thermalRangeOf(bodyOf(rig))), spans),
      ]),
    ),
  };
}

function plannedRest(
  { plan, limit, sets, frames }: Listed,
  { key, rig, rest }: WeighedRest,
  { set: setId, exact }: PlannedFrame,
  { startS }: FrameTimes,
  { body, lens }: Assembled,
  spans: readonly HeatSpan[],
): PlannedRest {
  const taken = isProposed(rest);
  const next = nextFrameOf(plan, body, exact.t);
  const thermal = thermalRangeOf(body);
  const set = sets.get(setId);
  const scene = set ? sceneUnder(set, frames) : null;
  const ratioBy = (model: ThermalModel, dark = DARK_CURRENT_AT_20.usual): Ratio =>
    darkRatio(limit, body, exact, scene, restedMidHeat(model, next), dark);
  const settledFrom = startS - settlingOf(plan, body);
  const waiting = {
    behind: behindAt(spans, duration(Math.max(0, settledFrom - (taken ? rest.s : 0)))),
    mode: waitsIn(lens),
    next,
  };
  const ranges = [
    DARK_CURRENT_AT_20.usual,
    ...(scene === null ? [] : [DARK_CURRENT_AT_20.least, DARK_CURRENT_AT_20.most]),
  ].map((dark) =>
    restBefore(waiting, thermal, (model) =>
      heatAbove(restedMidHeat(model, next), ratioBy(model, dark)),
    ),
  );
  return {
    key,
    rig,
    rest,
    range: {
      usual: ranges[0]?.usual ?? null,
      least: shortest(ranges.map(({ least }) => least)),
      most: ranges.some(({ most }) => most === null)
        ? null
        : duration(Math.max(...ranges.map(({ most }) => most ?? 0))),
    },
    limit: ratioBy(usualModel(thermal)),
    mode: waiting.mode,
    isProposed: taken,
    isSuggestion: !restIsMeasured(body),
  };
}

/** The shortest of some rests, null being none that is enough. */
function shortest(rests: readonly (Seconds | null)[]): Seconds | null {
  const enough = rests.filter((rest) => rest !== null);
  return enough.length === 0 ? null : duration(Math.min(...enough));
}

/** A curve of so many straight pieces a time constant misses it by less than a line is wide. */
const PIECES_A_TAU = 12;

/** The course of a rig's heat as points to be joined by lines. */
function heatPoints(model: ThermalModel, spans: readonly HeatSpan[]): readonly HeatPoint[] {
  const points: HeatPoint[] = [{ atS: duration(0), heat: doublings(0) }];
  let at = 0;
  let heat = doublings(0);
  for (const { mode, lasts } of spans) {
    const pieces = Math.max(1, Math.ceil((lasts / model.tau) * PIECES_A_TAU));
    for (let piece = 0; piece < pieces; piece += 1) {
      heat = heatAfter(heat, model.plateaus[mode], lasts / pieces, model.tau);
      at += lasts / pieces;
      points.push({ atS: duration(at), heat });
    }
  }
  return points;
}
