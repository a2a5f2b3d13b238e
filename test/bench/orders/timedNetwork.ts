import { darkFrameS } from '../../../src/gear/darkFrame.ts';
import type { RigId } from '../../../src/gear/ids.ts';
import { assemble } from '../../../src/gear/rig.ts';
import { sameSettings } from '../../../src/gear/settings.ts';
import type { CostWeights } from '../../../src/plan/costWeights.ts';
import type { PlannedFrame } from '../../../src/plan/frame.ts';
import type { SetId } from '../../../src/plan/ids.ts';
import { duration } from '../../../src/science/units.ts';
import type { OrderCase } from '../../arbitraries/orders.ts';
import { LinearProgram, type Term } from './linearProgram.ts';

/*
 * The order of frames as a mixed-integer linear program, made from plan, gear, frames and light by
 * itself: nothing of the search or of its cost is used.
 *
 * A node is an instant of an evening, with what has been shot by then, on what the dials of each
 * rig stand, which rig is on the tripod and what rest it owes. An arc is a turn: it leads from the
 * node before it to the one behind it and carries the light of its frames. One path leads from the
 * start to an end. What each turn costs by itself (a swap, minutes outside of its window, the wall
 * time at the end) is the cost of its arc; the fade left of a pair is a column of its own that is no
 * less than the difference of the pair's mean light, either way round.
 *
 * Heat is not in it, nor rests by a limit of heat. Rests by the rule of thumb are, as long as no rig
 * owes one that comes back to the tripod (see inSteps.ts).
 */

interface Frame {
  readonly t: number;
  readonly darkS: number;
  /** A capped dark counts for no pair, and is not rested for. */
  readonly capped: boolean;
}

/** All turns of one rig in one set. */
interface Turns {
  readonly set: SetId;
  readonly rig: RigId;
  readonly count: number;
  readonly timerS: number;
  readonly first: PlannedFrame;
  readonly frames: readonly Frame[];
}

interface Node {
  readonly done: readonly number[];
  /** By rig: the turns on whose marks it stands; -1 = none yet. */
  readonly marks: readonly number[];
  readonly mounted: RigId | null;
  readonly restS: number;
  readonly at: number;
}

interface Arc {
  readonly from: number;
  readonly to: number;
  readonly turns: number;
  readonly cost: number;
  /** The EV of its frames that count, summed. */
  readonly light: number;
}

/** A turn by what it is of. */
export interface TurnNamed {
  readonly set: SetId;
  readonly rig: RigId;
}

/** What the solver came to. */
export interface SolvedOrder {
  readonly proven: boolean;
  readonly cost: number;
  /** Null if it found none in its time. */
  readonly order: readonly TurnNamed[] | null;
  readonly seconds: number;
}

function turnsOf({ plan, gear, frames }: OrderCase): readonly Turns[] {
  let home: SetId | null = null;
  const homes = new Map<SetId, SetId>();
  for (const { id, kind } of plan.sets) {
    if (kind !== 'capped-dark') home = id;
    if (home !== null) homes.set(id, home);
  }
  const found: Turns[] = [];
  for (const set of new Set(homes.values())) {
    for (const rig of plan.rigs) {
      const own = frames.filter((frame) => frame.rig === rig && homes.get(frame.set) === set);
      const [first] = own;
      const body = assemble(gear, rig)?.body;
      if (!first || !body) continue;
      found.push({
        set,
        rig,
        first,
        count: new Set(own.map(({ pass }) => pass)).size,
        timerS: body.selfTimer.usedS ?? 0,
        frames: own
          .filter(({ pass }) => pass === first.pass)
          .map((frame) => ({
            t: frame.exact.t,
            darkS: darkFrameS(body.darkFrame, frame.exact.t),
            capped: frame.set !== set,
          })),
      });
    }
  }
  return found;
}

/** More nodes than this no solver orders in the time that it has here. */
const MOST_NODES = 8_000;

/**
 * Solves a case, made of steps, for the cheapest order by all but its heat.
 *
 * @returns null if its network is too large to be worth a try.
 */
export async function solveOrder(
  request: OrderCase,
  weights: CostWeights,
  limitSeconds: number,
): Promise<SolvedOrder | null> {
  const turns = turnsOf(request);
  const network = networkOf(request, weights, turns);
  if (!network) return null;
  const { nodes, arcs } = network;
  const program = new LinearProgram();
  // As many columns as arcs, in their order, before any other.
  for (const { cost } of arcs) program.column(cost, 1, 'whole');

  const through = nodes.map((): Term[] => []);
  for (const [column, { from, to }] of arcs.entries()) {
    through[from]?.push({ column, factor: -1 });
    through[to]?.push({ column, factor: 1 });
  }
  const total = turns.reduce((sum, { count }) => sum + count, 0);
  for (const [index, terms] of through.entries()) {
    const shot = (nodes[index] as Node).done.reduce((sum, each) => sum + each, 0);
    if (shot === total) continue;
    const comesIn = index === 0 ? -1 : 0;
    program.row(comesIn, terms, comesIn);
  }
  for (const { id, reference } of request.plan.sets) {
    const own = (rig: RigId) => turns.findIndex((each) => each.set === id && each.rig === rig);
    for (const other of request.plan.rigs) {
      const [one, two] = [own(reference), own(other)];
      if (other === reference || one < 0 || two < 0) continue;
      const left = program.column(weights.fadePerStop, Number.POSITIVE_INFINITY, 'real');
      const difference = arcs.flatMap((arc, column): readonly Term[] => {
        if (arc.turns !== one && arc.turns !== two) return [];
        const mean = arc.light / counted(turns[arc.turns] as Turns);
        return [{ column, factor: arc.turns === two ? mean : -mean }];
      });
      const opposite = difference.map(({ column, factor }) => ({ column, factor: -factor }));
      const whole = { column: left, factor: 1 };
      program.row(0, [whole, ...difference], Number.POSITIVE_INFINITY);
      program.row(0, [whole, ...opposite], Number.POSITIVE_INFINITY);
    }
  }
  const { proven, cost, values, seconds } = await program.solve(limitSeconds);
  const taken = arcs.filter((_, column) => (values[column] ?? 0) > 0.5);
  return {
    proven,
    cost,
    order: values.length === 0 ? null : inOrder(taken, turns),
    seconds,
  };
}

/** The turns of a path, from the start on. */
function inOrder(path: readonly Arc[], turns: readonly Turns[]): readonly TurnNamed[] {
  const after = new Map(path.map((arc) => [arc.from, arc]));
  const order: TurnNamed[] = [];
  for (let arc = after.get(0); arc; arc = after.get(arc.to)) {
    const { set, rig } = turns[arc.turns] as Turns;
    order.push({ set, rig });
  }
  return order;
}

/** The frames of all its turns that count for a pair. */
const counted = ({ count, frames }: Turns): number =>
  count * frames.filter(({ capped }) => !capped).length;

function networkOf(
  request: OrderCase,
  weights: CostWeights,
  turns: readonly Turns[],
): { readonly nodes: readonly Node[]; readonly arcs: readonly Arc[] } | null {
  const { plan, mounting } = request;
  const start: Node = {
    done: turns.map(() => 0),
    marks: plan.rigs.map(() => -1),
    mounted: null,
    restS: 0,
    at: 0,
  };
  const nodes = [start];
  const indices = new Map([[JSON.stringify(start), 0]]);
  const arcs: Arc[] = [];
  // Nodes that are added on the way are gone through in their turn.
  for (const [from, node] of nodes.entries()) {
    const isLeft = ({ count }: Turns, index: number): boolean => (node.done[index] ?? 0) < count;
    const mustStay =
      mounting === 'one-rig-at-a-time' &&
      turns.some((each, index) => each.rig === node.mounted && isLeft(each, index));
    for (const [index, each] of turns.entries()) {
      if (!isLeft(each, index) || (mustStay && each.rig !== node.mounted)) continue;
      const { next, ...arc } = taken(request, weights, turns, node, index);
      const key = JSON.stringify(next);
      const to = indices.get(key) ?? nodes.push(next) - 1;
      indices.set(key, to);
      arcs.push({ from, to, turns: index, ...arc });
      if (nodes.length > MOST_NODES) return null;
    }
  }
  return { nodes, arcs };
}

/** What the rule of thumb asks of a sensor after an exposure, in s. */
const restAfter = ({ rest }: OrderCase, { t }: Frame): number =>
  rest.kind === 'thumb' && t > rest.rule.offUpToS
    ? Math.min(rest.rule.factor * t, rest.rule.longestS)
    : 0;

/** Takes a turn from a node: where it leads, what it costs and what light it brings. */
function taken(
  request: OrderCase,
  weights: CostWeights,
  turns: readonly Turns[],
  { done, marks, mounted, restS, at }: Node,
  index: number,
): { readonly next: Node; readonly cost: number; readonly light: number } {
  const { plan, windows, notBefore } = request;
  const { swapS, reframeS, dialChangeS, settleS, writeS } = plan.allowances;
  const { set, rig, first, timerS, frames } = turns[index] as Turns;
  const rigIndex = plan.rigs.indexOf(rig);
  const standsOn = turns[marks[rigIndex] as number]?.first.settings;
  const isSwap = mounted !== null && mounted !== rig;
  const isDialled = !standsOn || !sameSettings(standsOn, first.settings);

  let now = at + (isSwap ? swapS + reframeS : 0) + (isDialled ? dialChangeS : 0);
  if (mounted === rig) now = Math.max(now, at + restS);
  now = Math.max(now, (notBefore.get(set) ?? 0) - settleS - timerS);
  let light = 0;
  let outsideS = 0;
  let owed = 0;
  for (const frame of frames) {
    if (!frame.capped) now += owed;
    const middle = now + settleS + timerS + frame.t / 2;
    if (!frame.capped) {
      light += request.light(duration(middle));
      const { fromS, toS } = windows.get(set) ?? { fromS: null, toS: null };
      outsideS += Math.max(0, (fromS ?? middle) - middle, middle - (toS ?? middle));
    }
    now += settleS + timerS + frame.t + frame.darkS + writeS;
    owed = Math.max(0, restAfter(request, frame) - writeS);
  }

  const next: Node = {
    done: done.with(index, (done[index] as number) + 1),
    marks: marks.with(
      rigIndex,
      // Where several sets stand on the same marks, one of them stands for all.
      turns.findIndex(
        (each) => each.rig === rig && sameSettings(each.first.settings, first.settings),
      ),
    ),
    mounted: rig,
    restS: owed,
    at: now,
  };
  const isLast = next.done.every((shot, each) => shot === turns[each]?.count);
  const ofSet = turns
    .filter((each) => each.set === set)
    .reduce((sum, each) => sum + counted(each), 0);
  const cost =
    (isSwap ? weights.perSwap : 0) +
    (weights.outsidePerMinute * outsideS) / 60 / ofSet +
    (isLast ? (weights.wallPerMinute * now) / 60 : 0);
  return { next, cost, light };
}
