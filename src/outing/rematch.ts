import type { RigId } from '../gear/ids.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import { sameSettings } from '../gear/settings.ts';
import { rightSettingsAt, type TurnedDial } from '../light/rightSettings.ts';
import type { Scene } from '../light/scene.ts';
import type { Dialled, PlannedFrame } from '../plan/frame.ts';
import { type Match, matchSettings } from '../plan/matching.ts';
import type { PlanSet } from '../plan/plan.ts';
import { isRefusal } from '../science/refusal.ts';
import type { Stops, UtcMs } from '../science/units.ts';
import type { SetInHand } from './light.ts';
import type { RunState } from './state.ts';

/** Settings for all rigs of a set that come out right again. */
export interface Rematch {
  /** The dial of the reference that is turned. */
  readonly dial: TurnedDial['dial'];
  /** What the reference still comes out off; positive = too bright. */
  readonly miss: Stops;
  /** The reference first, then the others in the order of the plan. */
  readonly rigs: readonly (Dialled & { readonly rig: RigId })[];
}

/**
 * Settings by which a set that is no longer right comes out right again if its next exposure starts
 * now, its rigs still held alike: the reference with one dial turned, the others matched to it by
 * the set's hold. Where each rig is set by hand the same dial is turned on each.
 *
 * Left out is what stays outside of the tolerance, turns nothing, or leaves a rig whose dials end too
 * soon to be held alike.
 */
export function rematches(
  { plan, gear, queue }: RunState,
  scene: Scene,
  { set, reference }: SetInHand,
  now: UtcMs,
): readonly Rematch[] {
  const assembled = assemble(gear, set.reference);
  if (!assembled) return [];
  const turned = rightSettingsAt(scene, assembled, reference, set.targetOffset, now);
  if (isRefusal(turned)) return [];
  const others = plan.rigs.filter((rig) => rig !== set.reference);
  const heldTo = (standing: Dialled, other: Assembled): Match | null => {
    const { settings, exact } = standing;
    const match = matchSettings({
      reference: { assembled, settings, exact },
      other,
      hold: set.hold,
    });
    return isRefusal(match) ? null : match;
  };
  return turned.flatMap(({ dial, settings, exact, miss }) => {
    const stands = sameSettings(settings, reference.settings);
    if (stands || Math.abs(miss) > plan.light.tolerance) return [];
    const rigs = others.map((rig) => {
      const other = assemble(gear, rig);
      if (!other) return null;
      const frame = queue.find((each) => each.set === set.id && each.rig === rig);
      const held =
        set.hold.kind === 'free'
          ? frame && turnedAlike(scene, other, frame, set, dial, now)
          : alike(heldTo({ settings, exact }, other), heldTo(reference, other));
      return held ? { rig, settings: held.settings, exact: held.exact } : null;
    });
    const known = rigs.filter((rig) => rig !== null);
    // A pair of which only one rig follows the light is no pair.
    return known.length === others.length
      ? [{ dial, miss, rigs: [{ rig: set.reference, settings, exact }, ...known] }]
      : [];
  });
}

/** A click of the dial: two rigs that are further from their hold than this are not held alike. */
const ONE_CLICK = 1 / 3;

/** A match that keeps to its hold within a click, or as well as the one before; else null. */
function alike(match: Match | null, before: Match | null): Match | null {
  const away = (one: Match | null): number =>
    one ? Math.max(...Object.values(one.deviation).map(Math.abs)) : 0;
  return away(match) < Math.max(ONE_CLICK, away(before) + 0.01) ? match : null;
}

const turnedAlike = (
  scene: Scene,
  rig: Assembled,
  standing: PlannedFrame,
  set: PlanSet,
  dial: TurnedDial['dial'],
  now: UtcMs,
): Dialled | null => {
  const turned = rightSettingsAt(scene, rig, standing, set.targetOffset, now);
  return isRefusal(turned) ? null : (turned.find((each) => each.dial === dial) ?? null);
};

/**
 * The frames still to be made, those of a set at other settings. A capped dark stands for the frame
 * that it follows: one whose light frame is shot already stays as it was, later ones follow.
 */
export function withRematch(
  { plan, queue }: RunState,
  { id }: PlanSet,
  rigs: Rematch['rigs'],
): readonly PlannedFrame[] {
  const place = plan.sets.findIndex((set) => set.id === id);
  const after = plan.sets.slice(place + 1);
  const end = after.findIndex(({ kind }) => kind !== 'capped-dark');
  const darks = new Set(after.slice(0, end < 0 ? after.length : end).map((dark) => dark.id));
  const rematched = new Set<RigId>();
  return queue.map((frame) => {
    const now = rigs.find(({ rig }) => rig === frame.rig);
    if (!now) return frame;
    if (frame.set === id) rematched.add(frame.rig);
    else if (!darks.has(frame.set) || !rematched.has(frame.rig)) return frame;
    return { ...frame, settings: now.settings, exact: now.exact };
  });
}
