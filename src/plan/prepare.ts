import type { RigId } from '../gear/ids.ts';
import { LETTERS } from '../gear/letter.ts';
import { exactSettings, positionsOf } from '../gear/positions.ts';
import { type Assembled, assemble, type Gear } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import { isRefusal, must } from '../science/refusal.ts';
import type { Side } from './causes.ts';
import { type Differences, differencesBetween } from './differences.ts';
import type { Dialled, PlannedFrame } from './frame.ts';
import type { SetId } from './ids.ts';
import { type Match, matchSettings } from './matching.ts';
import { orderFrames } from './order.ts';
import type { Plan, PlanSet } from './plan.ts';
import type { Problem } from './problems.ts';
import { type Course, type FadeAfter, timelineOf } from './timeline.ts';

/** A rig beside the reference of its set. */
export interface OtherRow {
  readonly rig: RigId;
  readonly dialled: Dialled;
  /** Null when the settings are free. */
  readonly match: Match | null;
  readonly differences: Differences;
}

/** What a set comes to on real dials. */
export type SetTable =
  | {
      readonly kind: 'compared';
      readonly set: SetId;
      readonly reference: { readonly rig: RigId; readonly dialled: Dialled };
      /** In the order of the plan's rigs; a rig with a problem is left out. */
      readonly others: readonly OtherRow[];
    }
  /** A capped dark: the settings of the set that it follows. */
  | { readonly kind: 'follows'; readonly set: SetId; readonly after: SetId }
  /** The reference cannot be set; the problems say why. */
  | { readonly kind: 'unresolved'; readonly set: SetId };

/** A plan worked out on the gear as it is now. */
export interface Prepared {
  readonly frames: readonly PlannedFrame[];
  readonly table: readonly SetTable[];
  readonly timeline: Course;
  readonly problems: readonly Problem[];
}

/** What is wrong with the plan as a whole. */
function problemsOfPlan(plan: Plan, rigs: ReadonlyMap<RigId, Assembled>): readonly Problem[] {
  const problems: Problem[] = [];
  if (plan.rigs.length === 0) problems.push({ code: 'no-rigs' });
  if (plan.rigs.length === 1) problems.push({ code: 'one-rig' });
  if (plan.rigs.length > LETTERS.length) {
    problems.push({ code: 'too-many-rigs', most: LETTERS.length });
  }
  for (const rig of plan.rigs) if (!rigs.has(rig)) problems.push({ code: 'rig-gone', rig });
  const carried = [...rigs.values()].map(({ rig }) => rig.letter);
  for (const letter of LETTERS) {
    if (carried.filter((other) => other === letter).length > 1) {
      problems.push({ code: 'letter-twice', letter });
    }
  }
  if (plan.sets.length === 0) problems.push({ code: 'no-sets' });
  return problems;
}

/** A side of a pair, or what is wrong with it; problems that only need saying may stand beside it. */
interface Resolved<S> {
  readonly side: S | null;
  readonly problems: readonly Problem[];
}

/** Settings that a hand chose, on the rig's real dials. */
function chosenByHand(assembled: Assembled, settings: Settings, set: SetId): Resolved<Side> {
  const { body, lens } = assembled;
  const place = { set, rig: assembled.rig.id };
  const no = (problem: Problem): Resolved<Side> => ({ side: null, problems: [problem] });
  const exact = exactSettings(assembled, settings);
  if (isRefusal(exact)) return no({ code: 'settings-not-on-dials', rule: exact.rule, ...place });
  const { time, isoMark } = settings;
  if (time.kind === 'bulb') {
    if (body.bulb.kind === 'none') return no({ code: 'bulb-not-on-body', ...place });
    const { longestS } = body.bulb;
    if (time.seconds > longestS) return no({ code: 'bulb-too-long', longestS, ...place });
  }
  const { isos, times } = must(positionsOf(body, lens));
  const problems: Problem[] = [];
  if (isos.some(({ mark, extended }) => extended && mark === isoMark)) {
    problems.push({ code: 'extended-iso', isoMark, ...place });
  }
  const mark = time.kind === 'dial' ? time.mark : null;
  if (times.some((position) => position.uncertain && position.mark === mark)) {
    problems.push({ code: 'time-uncertain', ...place });
  }
  return { side: { assembled, settings, exact }, problems };
}

/** Settings that the hold gives another rig; `match` is null when a hand chose them. */
function heldTo(
  reference: Side,
  assembled: Assembled,
  set: PlanSet,
): Resolved<Side & { readonly match: Match | null }> {
  const rig = assembled.rig.id;
  const place = { set: set.id, rig };
  if (set.hold.kind === 'free') {
    const settings = Object.hasOwn(set.hold.settings, rig) ? set.hold.settings[rig] : undefined;
    if (!settings) return { side: null, problems: [{ code: 'free-settings-missing', ...place }] };
    const { side, problems } = chosenByHand(assembled, settings, set.id);
    return { side: side && { ...side, match: null }, problems };
  }
  const match = matchSettings({ reference, other: assembled, hold: set.hold });
  if (isRefusal(match)) {
    return { side: null, problems: [{ code: 'dials-refused', rule: match.rule, ...place }] };
  }
  const problems = match.unreached.map(
    (unreached): Problem => ({ code: 'out-of-reach', unreached, ...place }),
  );
  if (match.timeUncertain) problems.push({ code: 'time-uncertain', ...place });
  const { settings, exact } = match;
  return { side: { assembled, settings, exact, match }, problems };
}

/** One set that is no capped dark. */
function compare(
  plan: Plan,
  set: PlanSet,
  rigs: ReadonlyMap<RigId, Assembled>,
): { readonly table: SetTable; readonly problems: readonly Problem[] } {
  const unresolved = (problems: readonly Problem[]) => ({
    table: { kind: 'unresolved', set: set.id } as const,
    problems,
  });
  if (!plan.rigs.includes(set.reference)) {
    return unresolved([{ code: 'reference-not-in-plan', set: set.id, rig: set.reference }]);
  }
  const assembled = rigs.get(set.reference);
  // A rig that is gone is a problem of the plan and said once there.
  if (!assembled) return unresolved([]);
  const reference = chosenByHand(assembled, set.settings, set.id);
  if (!reference.side) return unresolved(reference.problems);
  const problems = [...reference.problems];
  const others: OtherRow[] = [];
  for (const other of rigs.values()) {
    if (other.rig.id === set.reference) continue;
    const { side, problems: found } = heldTo(reference.side, other, set);
    problems.push(...found);
    if (!side) continue;
    others.push({
      rig: other.rig.id,
      dialled: { settings: side.settings, exact: side.exact },
      match: side.match,
      differences: differencesBetween(reference.side, side, set.hold),
    });
  }
  const { settings, exact } = reference.side;
  return {
    table: {
      kind: 'compared',
      set: set.id,
      reference: { rig: set.reference, dialled: { settings, exact } },
      others,
    },
    problems,
  };
}

/** What stands on a rig in a compared set; null where nothing could be worked out. */
export function dialledIn(table: SetTable | undefined, rig: RigId): Dialled | null {
  if (table?.kind !== 'compared') return null;
  if (table.reference.rig === rig) return table.reference.dialled;
  return table.others.find((row) => row.rig === rig)?.dialled ?? null;
}

/**
 * A plan worked out on the gear: settings of every rig in every set, their differences, the frames
 * in order, when each falls, and what is wrong. A rig that cannot be set has no frames there and a
 * problem that says why; `stopsStart` tells which problems must be put right before an outing.
 *
 * @param fade by which rests are weighed; left out, it is not known and every rest is taken that the
 * limit on heat asks for.
 */
export function preparePlan(plan: Plan, gear: Gear, fade?: FadeAfter): Prepared {
  const rigs = new Map<RigId, Assembled>();
  for (const id of plan.rigs) {
    const assembled = assemble(gear, id);
    if (assembled) rigs.set(id, assembled);
  }
  const problems = [...problemsOfPlan(plan, rigs)];
  const tables = new Map<SetId, SetTable>();
  let after: SetId | null = null;
  for (const set of plan.sets) {
    if (set.kind !== 'capped-dark') {
      const compared = compare(plan, set, rigs);
      tables.set(set.id, compared.table);
      problems.push(...compared.problems);
      after = set.id;
    } else if (after === null) {
      tables.set(set.id, { kind: 'unresolved', set: set.id });
      problems.push({ code: 'dark-without-light', set: set.id });
    } else {
      tables.set(set.id, { kind: 'follows', set: set.id, after });
    }
  }
  const frames = orderFrames(plan, (set, rig) => dialledIn(tables.get(set), rig));
  return {
    frames,
    table: [...tables.values()],
    // Every frame's rig was just found among the gear.
    timeline: must(timelineOf(plan, gear, frames, fade)),
    problems,
  };
}
