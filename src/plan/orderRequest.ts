import type { Body } from '../gear/body.ts';
import { thermalRangeOf } from '../gear/bodyHeat.ts';
import type { RigId } from '../gear/ids.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import { levelAt, type Scene, seenEv } from '../light/scene.ts';
import { skyEnd } from '../light/skyTable.ts';
import { restedMidHeat } from '../science/sensorRest.ts';
import { usualModel } from '../science/thermalRange.ts';
import { type Ev, later, type Seconds, type UtcMs } from '../science/units.ts';
import { darkRatio, sceneUnder } from './darkRatio.ts';
import type { PlannedFrame } from './frame.ts';
import type { SetId } from './ids.ts';
import type { PlanLight, SetLight } from './light.ts';
import { nextFrameOf } from './nextFrame.ts';
import type { OrderRequest, SetWindow } from './orderProblem.ts';
import { mountingOf, type Plan } from './plan.ts';
import type { RestChoice } from './restChoice.ts';

/** The light that an order is looked for in. */
export interface OrderLight {
  readonly scene: Scene;
  /** When the first act of the list begins. */
  readonly startMs: UtcMs;
  readonly windows: ReadonlyMap<SetId, SetWindow>;
}

/** What is asked of a search: plain values only, so that it can be handed to a worker. */
export interface OrderQuestion {
  readonly plan: Plan;
  readonly gear: Gear;
  /** All frames of the plan in the order that stands. */
  readonly frames: readonly PlannedFrame[];
  /** Null = not known. */
  readonly light: OrderLight | null;
}

/** The light of a list as its search sees it. */
export const orderLight = (
  scene: Scene,
  { startMs, sets }: Pick<PlanLight, 'startMs' | 'sets'>,
  frames: readonly PlannedFrame[],
): OrderLight => ({
  scene,
  startMs,
  windows: new Map(
    sets.flatMap((set): readonly [SetId, SetWindow][] => {
      const window = windowOf(set, startMs, frames);
      return window ? [[set.set, window]] : [];
    }),
  ),
});

/**
 * The minutes of a set by the middles of its exposures: of several stretches the one nearest to
 * where it is planned. Null where the evening never has its light: no order mends that.
 */
function windowOf(
  { set, right, planned }: SetLight,
  startMs: UtcMs,
  frames: readonly PlannedFrame[],
): SetWindow | null {
  const away = ({ fromMs, toMs }: (typeof right)[number]): number =>
    Math.max(0, fromMs - planned.fromMs, planned.fromMs - toMs);
  const [nearest] = right.toSorted((one, other) => away(one) - away(other));
  const exposed = frames.find((frame) => frame.set === set)?.exact.t;
  if (!nearest || exposed === undefined) return null;
  const middle = (at: UtcMs): Seconds => ((at - startMs) / 1000 + exposed / 2) as Seconds;
  return { fromS: middle(nearest.fromMs), toS: middle(nearest.toMs) };
}

/** The scene's EV from the start of the list on; beyond what is known of the sky it stays as it is. */
function lightFrom({ scene, startMs }: OrderLight): (at: Seconds) => Ev {
  const end = skyEnd(scene.sky);
  return (at) => {
    const level = levelAt(scene, Math.min(later(startMs, at), end) as UtcMs);
    // The light of a plan is worked out only where its sky is known throughout.
    if (!level) throw new RangeError('an order in a light that is not known');
    return seenEv(scene, level);
  };
}

/** How the rigs of a plan rest, as a search sees it. */
function restOf(
  { plan, frames }: OrderQuestion,
  bodyOf: (rig: RigId) => Body | undefined,
): RestChoice {
  const { rest } = plan;
  if (rest.kind !== 'limit') return rest;
  const { limit } = rest;
  return {
    kind: 'limit',
    longestS: limit.longestS,
    ratioOf({ set, rig, exact }) {
      const [body, own] = [bodyOf(rig), plan.sets.find(({ id }) => id === set)];
      if (!body || !own) return limit.unknownRatio;
      const rested = restedMidHeat(
        usualModel(thermalRangeOf(body)),
        nextFrameOf(plan, body, exact.t),
      );
      return darkRatio(limit, body, exact, sceneUnder(own, frames), rested);
    },
  };
}

/** The request of a question: what is worked out from plan and gear, and the light as a function. */
export function orderRequest(question: OrderQuestion): OrderRequest {
  const { plan, gear, frames, light } = question;
  const bodyOf = (rig: RigId): Body | undefined => assemble(gear, rig)?.body;
  return {
    plan,
    gear,
    frames,
    mounting: mountingOf(plan),
    light: light && lightFrom(light),
    windows: light?.windows ?? new Map(),
    // A list is shot without a wait for its sets.
    notBefore: new Map(),
    rest: restOf(question, bodyOf),
    thermal(rig) {
      const body = bodyOf(rig);
      if (!body) throw new RangeError(`a rig that is not there: ${rig}`);
      return thermalRangeOf(body);
    },
    locked: new Set(plan.locked),
  };
}
