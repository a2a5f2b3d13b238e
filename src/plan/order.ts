import type { RigId } from '../gear/ids.ts';
import { type Dialled, frameKey, type PlannedFrame } from './frame.ts';
import type { SetId } from './ids.ts';
import { runsBackwards } from './passes.ts';
import type { Plan, PlanSet, TurnPlace } from './plan.ts';

/** What stands on a rig in a set; null where nothing could be worked out. */
export type DialledOf = (set: SetId, rig: RigId) => Dialled | null;

/** A set with the capped darks that follow it. */
interface Group {
  readonly set: PlanSet;
  readonly darks: readonly PlanSet[];
}

/** One rig's share of one pass through a group. */
interface Turn {
  readonly group: Group;
  readonly pass: number;
  readonly rig: RigId;
}

/**
 * The sets with their capped darks. Darks that stand before every other set belong to nothing and
 * are left out; `preparePlan` names them.
 */
function groupsOf(sets: readonly PlanSet[]): readonly Group[] {
  const groups: { set: PlanSet; darks: PlanSet[] }[] = [];
  for (const set of sets) {
    if (set.kind === 'capped-dark') groups.at(-1)?.darks.push(set);
    else groups.push({ set, darks: [] });
  }
  return groups;
}

/** The rigs turned round if that puts the mounted one first. */
const startingWith = (rigs: readonly RigId[], mounted: RigId | undefined): readonly RigId[] =>
  mounted !== undefined && rigs.at(-1) === mounted ? rigs.toReversed() : rigs;

const passNumbers = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => index + 1);

/** Set after set, each starting with the rig that is mounted. */
function turnsBySet(plan: Plan, groups: readonly Group[], dialled: DialledOf): readonly Turn[] {
  const turns: Turn[] = [];
  for (const group of groups) {
    const present = plan.rigs.filter((rig) => dialled(group.set.id, rig) !== null);
    const rigs = startingWith(present, turns.at(-1)?.rig);
    for (const pass of passNumbers(group.set.passes)) {
      const inTurn = runsBackwards(plan.order, pass) ? rigs.toReversed() : rigs;
      turns.push(...inTurn.map((rig) => ({ group, pass, rig })));
    }
  }
  return turns;
}

/** The whole list with one rig, then with the next; a further pass starts with the one mounted. */
function turnsByRig(plan: Plan, groups: readonly Group[], dialled: DialledOf): readonly Turn[] {
  const turns: Turn[] = [];
  const passes = Math.max(0, ...groups.map((group) => group.set.passes));
  if (plan.oneRigAtATime) {
    return plan.rigs.flatMap((rig) =>
      groups.flatMap((group) =>
        dialled(group.set.id, rig)
          ? passNumbers(group.set.passes).map((pass) => ({ group, pass, rig }))
          : [],
      ),
    );
  }
  for (const pass of passNumbers(passes)) {
    for (const rig of startingWith(plan.rigs, turns.at(-1)?.rig)) {
      for (const group of groups) {
        if (pass <= group.set.passes && dialled(group.set.id, rig))
          turns.push({ group, pass, rig });
      }
    }
  }
  return turns;
}

/** The frames of one turn: the set's repeats, then its darks at the same settings. */
function framesOf(turn: Turn, dialled: DialledOf, visit: number): readonly PlannedFrame[] {
  const { group, pass, rig } = turn;
  const now = dialled(group.set.id, rig);
  if (!now) return [];
  return [group.set, ...group.darks].flatMap((set) =>
    passNumbers(set.repeats).map((repeat) => ({
      key: frameKey(set.id, rig, pass, repeat),
      set: set.id,
      rig,
      pass,
      repeat,
      visit,
      ...now,
    })),
  );
}

/** One pass of all rigs at once: of each repeat, one frame from every rig. There is one visit. */
function framesTogether(
  { rigs }: Plan,
  group: Group,
  pass: number,
  dialled: DialledOf,
): readonly PlannedFrame[] {
  const byRig = rigs.map((rig) => framesOf({ group, pass, rig }, dialled, 1));
  const longest = Math.max(0, ...byRig.map((frames) => frames.length));
  return passNumbers(longest).flatMap((place) =>
    byRig.flatMap((frames) => frames.slice(place - 1, place)),
  );
}

/** All rigs stand side by side, set after set. */
const framesSideBySide = (
  plan: Plan,
  groups: readonly Group[],
  dialled: DialledOf,
): readonly PlannedFrame[] =>
  groups.flatMap((group) =>
    passNumbers(group.set.passes).flatMap((pass) => framesTogether(plan, group, pass, dialled)),
  );

/** What stands in one place of an order: a rig's turn, or one of all rigs (null). */
interface Placed {
  readonly group: Group;
  readonly rig: RigId | null;
}

/**
 * Turns in an order of their own. Each place takes the next pass of its set and rig; a place whose
 * set, rig or pass is gone is passed over, and what no place took comes last as it stood.
 */
function inArrangedOrder(
  standing: readonly Placed[],
  arranged: readonly TurnPlace[],
): readonly Placed[] {
  const left = [...standing];
  const taken = arranged.flatMap(({ set, rig }) => {
    const at = left.findIndex((one) => one.group.set.id === set && one.rig === rig);
    return at < 0 ? [] : left.splice(at, 1);
  });
  return [...taken, ...left];
}

/** Passes are numbered as they come. */
function withPasses(placed: readonly Placed[]): readonly (Placed & { readonly pass: number })[] {
  const done = new Map<string, number>();
  return placed.map((one) => {
    const key = `${one.group.set.id}/${one.rig}`;
    const pass = (done.get(key) ?? 0) + 1;
    done.set(key, pass);
    return { ...one, pass };
  });
}

/**
 * The frames of a plan in the order of its name.
 *
 * Set follows set, and each next set starts with the rig that is mounted, by turning round the
 * whole of its order: a set shot B A A B cancels a steady fade as well as A B B A does, and a swap
 * is saved. 'rig-by-rig' takes the whole list with one rig before the next; 'side-by-side' takes
 * the rigs' frames of one repeat together; 'rig-by-rig' with one rig at a time does not come back to
 * a rig. A plan's own arrangement of turns stands before its named order. A capped series comes
 * before everything, all rigs at once. A capped dark is shot straight after each turn of the
 * set before it, at the settings which that set has on the rig; its own passes and settings play
 * no part, its repeats do.
 *
 * @param dialled settings of a rig in a set that is not a capped dark; a rig for which it gives
 * null has no frame in that set.
 */
export function orderFrames(plan: Plan, dialled: DialledOf): readonly PlannedFrame[] {
  const all = groupsOf(plan.sets);
  const series = all.filter(({ set }) => set.kind === 'capped-series');
  const groups = all.filter(({ set }) => set.kind !== 'capped-series');
  return [
    ...framesSideBySide(plan, series, dialled),
    ...(plan.order === 'side-by-side'
      ? framesOfSets(plan, groups, dialled)
      : framesOfTurns(plan, groups, dialled)),
  ];
}

/** All rigs side by side, in the plan's own arrangement of sets if it has one. */
function framesOfSets(
  plan: Plan,
  groups: readonly Group[],
  dialled: DialledOf,
): readonly PlannedFrame[] {
  if (plan.arranged === null) return framesSideBySide(plan, groups, dialled);
  const standing = groups.flatMap((group) =>
    passNumbers(group.set.passes).map((): Placed => ({ group, rig: null })),
  );
  return withPasses(inArrangedOrder(standing, plan.arranged)).flatMap(({ group, pass }) =>
    framesTogether(plan, group, pass, dialled),
  );
}

/** One tripod, rigs swapped on it. */
function framesOfTurns(
  plan: Plan,
  groups: readonly Group[],
  dialled: DialledOf,
): readonly PlannedFrame[] {
  const named =
    plan.order === 'rig-by-rig'
      ? turnsByRig(plan, groups, dialled)
      : turnsBySet(plan, groups, dialled);
  const turns =
    plan.arranged === null
      ? named
      : withPasses(inArrangedOrder(named, plan.arranged)).flatMap(({ group, pass, rig }) =>
          rig === null ? [] : [{ group, pass, rig }],
        );
  let visit = 0;
  let mounted: RigId | null = null;
  return turns.flatMap((turn) => {
    if (turn.rig !== mounted) visit += 1;
    mounted = turn.rig;
    return framesOf(turn, dialled, visit);
  });
}

/** The turns of a list in their order, for a plan to keep as its arrangement. */
export function turnsOf(plan: Plan, frames: readonly PlannedFrame[]): readonly TurnPlace[] {
  const home = new Map(
    groupsOf(plan.sets).flatMap(({ set, darks }) =>
      set.kind === 'capped-series' ? [] : [set, ...darks].map(({ id }) => [id, set.id] as const),
    ),
  );
  const seen = new Set<string>();
  return frames.flatMap(({ set, rig, pass }) => {
    const of = home.get(set);
    if (of === undefined) return [];
    const turn: TurnPlace = { set: of, rig: plan.order === 'side-by-side' ? null : rig };
    const key = `${of}/${turn.rig}/${pass}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return [turn];
  });
}

/** How often one rig gives way to another on the tripod; the first mounting is not counted. */
export const swapCount = (frames: readonly PlannedFrame[]): number =>
  frames.filter((frame, index) => index > 0 && frame.visit !== frames[index - 1]?.visit).length;
