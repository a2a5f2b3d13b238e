import type { Body } from '../gear/body.ts';
import { darkFrameS } from '../gear/darkFrame.ts';
import type { RigId } from '../gear/ids.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import { type Settings, sameSettings } from '../gear/settings.ts';
import { partLeft, type ThermalModel } from '../science/heat.ts';
import { isRefusal, type Refusal, refuse } from '../science/refusal.ts';
import { coolingTime, highestAtRestEnd, restedMidHeat } from '../science/sensorRest.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import { usualModel } from '../science/thermalRange.ts';
import { duration, type Ev, type Ratio, type Seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import type { ThermalOf } from './heat.ts';
import { heatAbove } from './heatLimit.ts';
import type { FrameKey, SetId } from './ids.ts';
import { type LightTable, tabulate } from './lightTable.ts';
import { nextFrameOf, waitsIn } from './nextFrame.ts';
import { homesOf, type OrderHead, orderHead, splitHead } from './orderHead.ts';
import type { Allowances, Mounting, Plan, RestRule } from './plan.ts';
import { restOwed } from './rest.ts';

/*
 * The order of frames as a problem to search: what may be put where, and what it takes.
 *
 * What is put in order are turns: one rig's frames of one set in one pass, with the capped darks
 * that follow them. Repeats of a turn stay together by what a repeat is; passes of one rig in one set
 * are alike, so that only how many are done matters. Side by side a turn holds the frames of all
 * rigs.
 */

/** When the exposure of a set is right, in seconds from the start; an end may be open. */
export interface SetWindow {
  readonly fromS: Seconds | null;
  readonly toS: Seconds | null;
}

/** How long a rig rests before a frame. */
export type RestChoice =
  | { readonly kind: 'none' }
  | { readonly kind: 'thumb'; readonly rule: RestRule }
  /** Until a frame's dark current is within its ratio of a rested body's first such frame. */
  | {
      readonly kind: 'limit';
      readonly ratioOf: (frame: PlannedFrame) => Ratio;
      readonly longestS: Seconds;
    };

export interface OrderRequest {
  readonly plan: Plan;
  readonly gear: Gear;
  /** All frames of the plan in the order that stands. */
  readonly frames: readonly PlannedFrame[];
  readonly mounting: Mounting;
  /**
   * The scene's EV so many seconds after the start of the list; must answer for any instant. Null =
   * not known: no fade is weighed then.
   */
  readonly light: ((at: Seconds) => Ev) | null;
  readonly windows: ReadonlyMap<SetId, SetWindow>;
  /** A set whose shutter does not open before so many seconds from the start: one waits for it. */
  readonly notBefore: ReadonlyMap<SetId, Seconds>;
  readonly rest: RestChoice;
  readonly thermal: ThermalOf;
  /** Sets whose turns keep their places in the list. */
  readonly locked: ReadonlySet<SetId>;
}

/** One frame of a turn as the search sees it; times in s, heat in doublings. */
export interface TurnFrame {
  readonly t: number;
  /** The body's own dark frame after it. */
  readonly darkS: number;
  readonly capped: boolean;
  /** Frames of a rig with the same number stand on the same marks. */
  readonly marks: number;
  /** A rest that its set asks for, counted from the rig's last exposure. */
  readonly askedS: number;
  /** A rested body's first such frame, at mid-exposure. */
  readonly rested: number;
  /** The highest heat at the end of a rest that the limit lets pass. */
  readonly highest: number;
  /** What is left of the distance to the exposing plateau at mid-exposure, and after the dark frame. */
  readonly leftAtMid: number;
  readonly leftAtEnd: number;
}

/** One rig's part of a turn. */
export interface TurnPart {
  readonly rig: number;
  readonly frames: readonly TurnFrame[];
}

/** A turn that occurs in as many passes as its set has. */
export interface TurnKind {
  readonly index: number;
  readonly set: number;
  readonly parts: readonly TurnPart[];
  readonly count: number;
  /** The most frames of a part: each place of a turn has one from every part that has as many. */
  readonly places: number;
  /** The frames of each pass in the order in which they are shot. */
  readonly passes: readonly (readonly PlannedFrame[])[];
  /** What a turn takes at least: no swap, no dial change, no rest. */
  readonly leastS: number;
  /** And at most: a swap, all dialled anew, the longest rests, but no waiting for its set. */
  readonly mostS: number;
}

export interface OrderSet {
  readonly id: SetId;
  readonly reference: number;
  readonly fromS: number;
  readonly toS: number;
  readonly notBeforeS: number;
  /** Whether the light outside falls on it: a flat has light of its own. */
  readonly fades: boolean;
  /** Frames of each rig that count for the pair: all but capped ones, over all passes. */
  readonly frames: readonly number[];
}

export interface OrderRig {
  readonly id: RigId;
  readonly timerS: number;
  readonly waits: 'off' | 'idle';
  readonly model: ThermalModel;
  /** What is left of the distance to the idle plateau after a dial change, settling and writing. */
  readonly leftDialled: number;
  readonly leftSettled: number;
  readonly leftWritten: number;
}

export interface OrderProblem {
  readonly rigs: readonly OrderRig[];
  /** What stands before the turns, in every order. */
  readonly head: OrderHead;
  /** By rig: on which marks the head leaves it; -1 = on none. */
  readonly marksBefore: readonly number[];
  readonly sets: readonly OrderSet[];
  readonly kinds: readonly TurnKind[];
  /** How many turns there are. */
  readonly turns: number;
  /** The order that stands, as indices of kinds. */
  readonly standing: readonly number[];
  /** The kind that must stand in a place; -1 = free. */
  readonly fixed: readonly number[];
  readonly allowances: Allowances;
  readonly rest: RestChoice;
  readonly mounting: Mounting;
  /** Even where it is not known. */
  readonly light: LightTable;
  readonly lightIsKnown: boolean;
}

/** Frames of one turn, found in the order that stands. */
interface Found {
  readonly set: SetId;
  readonly rig: RigId;
  readonly pass: number;
  readonly frames: PlannedFrame[];
}

function turnsFound(plan: Plan, frames: readonly PlannedFrame[]): readonly Found[] | Refusal {
  const home = homesOf(plan);
  const found = new Map<string, Found>();
  for (const frame of frames) {
    const set = home.get(frame.set);
    if (set === undefined) return refuse('set-gone');
    const key = `${set}/${frame.rig}/${frame.pass}`;
    const turn = found.get(key) ?? { set, rig: frame.rig, pass: frame.pass, frames: [] };
    turn.frames.push(frame);
    found.set(key, turn);
  }
  return [...found.values()];
}

/** Numbers each rig's settings by the marks they stand on. */
function marksOf(): (rig: number, settings: Settings) => number {
  const seen = new Map<number, Settings[]>();
  return (rig, settings) => {
    const own = seen.get(rig) ?? [];
    seen.set(rig, own);
    const known = own.findIndex((each) => sameSettings(each, settings));
    return known >= 0 ? known : own.push(settings) - 1;
  };
}

/**
 * Makes the problem of a list of frames. A capped series stands before everything and is passed over.
 *
 * @returns a refusal if there is nothing to order ('no-frames'), a frame's rig or set is gone
 * ('rig-gone', 'set-gone'), or the passes of one rig in one set are not alike ('passes-differ').
 */
export function orderProblem(request: OrderRequest): OrderProblem | Refusal {
  const { plan, gear, mounting, rest, thermal, windows, notBefore } = request;
  const { before, turns } = splitHead(plan, request.frames);
  const head = orderHead(plan, gear, before, thermal);
  if (isRefusal(head)) return head;
  const found = turnsFound(plan, turns);
  if ('refused' in found) return found;
  if (found.length === 0) return refuse('no-frames');

  const rigs: OrderRig[] = [];
  const bodies: Body[] = [];
  for (const id of new Set(found.map(({ rig }) => rig))) {
    const assembled = assemble(gear, id);
    if (!assembled) return refuse('rig-gone');
    const { body, lens } = assembled;
    const timerS = body.selfTimer.usedS ?? 0;
    const model = usualModel(thermal(id));
    rigs.push({
      id,
      timerS,
      waits: waitsIn(lens),
      model,
      leftDialled: partLeft(plan.allowances.dialChangeS, model.tau),
      leftSettled: partLeft(plan.allowances.settleS + timerS, model.tau),
      leftWritten: partLeft(plan.allowances.writeS, model.tau),
    });
    bodies.push(body);
  }
  const rigIndex = new Map(rigs.map(({ id }, index) => [id, index]));
  const setIds = [...new Set(found.map(({ set }) => set))];
  const capped = new Set(
    plan.sets.filter(({ kind }) => kind === 'capped-dark').map(({ id }) => id),
  );
  const restBefore = new Map(plan.sets.map(({ id, restBeforeS }) => [id, restBeforeS ?? 0]));
  const marks = marksOf();

  const partOf = ({ rig: id, frames }: Found): TurnPart => {
    const rig = rigIndex.get(id) as number;
    const { model } = rigs[rig] as OrderRig;
    const body = bodies[rig] as Body;
    return {
      rig,
      frames: frames.map((frame) => {
        const { set, exact, settings, repeat } = frame;
        const next = nextFrameOf(plan, body, exact.t);
        const rested = restedMidHeat(model, next);
        const darkS = darkFrameS(body.darkFrame, exact.t);
        return {
          t: exact.t,
          darkS,
          capped: capped.has(set),
          marks: marks(rig, settings),
          askedS: repeat === 1 && !capped.has(set) ? (restBefore.get(set) ?? 0) : 0,
          rested,
          highest:
            rest.kind === 'limit'
              ? highestAtRestEnd(model, next, heatAbove(rested, rest.ratioOf(frame)))
              : Number.POSITIVE_INFINITY,
          leftAtMid: partLeft(exact.t / 2, model.tau),
          leftAtEnd: partLeft(exact.t + darkS, model.tau),
        };
      }),
    };
  };

  const longestTime = rigs.map(({ id }) =>
    Math.max(...request.frames.filter(({ rig }) => rig === id).map(({ exact }) => exact.t)),
  );
  /** What turns of one kind share. */
  const kindKey = ({ set, rig }: Found) => (mounting === 'side-by-side' ? set : `${set}/${rig}`);
  const kinds: TurnKind[] = [];
  const standing: number[] = [];
  for (const key of new Set(found.map(kindKey))) {
    const own = found.filter((turn) => kindKey(turn) === key);
    const passes = [...new Set(own.map(({ pass }) => pass))].map((pass) =>
      own
        .filter((turn) => turn.pass === pass)
        .sort((a, b) => (rigIndex.get(a.rig) as number) - (rigIndex.get(b.rig) as number)),
    );
    const parts = passes.map((turns) => turns.map(partOf));
    const [first] = parts;
    const set = setIds.indexOf((own[0] as Found).set);
    if (!first || parts.some((each) => !alike(each, first))) return refuse('passes-differ');
    kinds.push({
      index: kinds.length,
      set,
      parts: first,
      count: passes.length,
      places: Math.max(...first.map(({ frames }) => frames.length)),
      passes: passes.map((turns) => interleaved(turns)),
      leastS: leastSeconds(first, plan.allowances, rigs),
      mostS: mostSeconds(first, plan.allowances, rigs, (part, frame) =>
        longestRest(rest, rigs[part.rig] as OrderRig, frame, longestTime[part.rig] as number),
      ),
    });
  }
  const kindOf = new Map(
    kinds.flatMap((kind) =>
      kind.passes.flatMap((frames) =>
        frames.map(({ key }): [FrameKey, number] => [key, kind.index]),
      ),
    ),
  );
  // A turn stands where its first frame does.
  const counted = new Set<string>();
  for (const turn of found) {
    const of = `${kindKey(turn)}/${turn.pass}`;
    if (counted.has(of)) continue;
    counted.add(of);
    standing.push(kindOf.get((turn.frames[0] as PlannedFrame).key) as number);
  }

  const sets = setIds.map((id, index): OrderSet => {
    const own = plan.sets.find((set) => set.id === id);
    const reference = own?.reference;
    return {
      id,
      reference: reference === undefined ? -1 : (rigIndex.get(reference) ?? -1),
      fromS: windows.get(id)?.fromS ?? Number.NEGATIVE_INFINITY,
      toS: windows.get(id)?.toS ?? Number.POSITIVE_INFINITY,
      notBeforeS: notBefore.get(id) ?? 0,
      fades: own?.kind === 'light',
      frames: rigs.map((_, rig) =>
        kinds
          .filter((kind) => kind.set === index)
          .reduce(
            (sum, kind) =>
              sum +
              kind.count *
                kind.parts
                  .filter((part) => part.rig === rig)
                  .reduce(
                    (own, part) => own + part.frames.filter((each) => !each.capped).length,
                    0,
                  ),
            0,
          ),
      ),
    };
  });
  return {
    rigs,
    head,
    marksBefore: rigs.map(({ id }, rig) => {
      const settings = head.behind.get(id)?.settings;
      return settings ? marks(rig, settings) : -1;
    }),
    sets,
    kinds,
    turns: standing.length,
    standing,
    fixed: standing.map((kind) =>
      request.locked.has((sets[(kinds[kind] as TurnKind).set] as OrderSet).id) ? kind : -1,
    ),
    allowances: plan.allowances,
    rest,
    mounting,
    light: tabulate(
      request.light ?? (() => 0 as Ev),
      duration(head.timeline.wallS + latestEnd(kinds, sets)),
    ),
    lightIsKnown: request.light !== null,
  };
}

/** Whether two passes are made of the same frames. */
const alike = (one: readonly TurnPart[], other: readonly TurnPart[]): boolean =>
  one.length === other.length &&
  one.every((part, index) => {
    const against = other[index];
    return (
      part.rig === against?.rig &&
      part.frames.length === against.frames.length &&
      part.frames.every((frame, place) => {
        const its = against.frames[place];
        return frame.t === its?.t && frame.capped === its.capped && frame.marks === its.marks;
      })
    );
  });

/** The frames of a pass as they are shot: of each place one frame from every rig. */
function interleaved(turns: readonly Found[]): readonly PlannedFrame[] {
  const longest = Math.max(...turns.map(({ frames }) => frames.length));
  return Array.from({ length: longest }, (_, place) =>
    turns.flatMap(({ frames }) => frames.slice(place, place + 1)),
  ).flat();
}

/** What a turn takes at least: no swap, no dial, no rest. */
function leastSeconds(
  parts: readonly TurnPart[],
  { settleS, writeS }: Allowances,
  rigs: readonly OrderRig[],
): number {
  const longest = Math.max(...parts.map(({ frames }) => frames.length));
  let sum = 0;
  for (let place = 0; place < longest; place += 1) {
    sum +=
      settleS +
      Math.max(
        ...parts.map(({ rig, frames }) => {
          const frame = frames[place];
          return frame ? (rigs[rig] as OrderRig).timerS + frame.t + frame.darkS + writeS : 0;
        }),
      );
  }
  return sum;
}

/** No rest before a frame is longer. */
function longestRest(
  rest: RestChoice,
  { model, waits }: OrderRig,
  { highest, capped, askedS }: TurnFrame,
  longestTime: number,
): number {
  if (rest.kind === 'none' || capped) return askedS;
  if (rest.kind === 'thumb') {
    return Math.max(askedS, restOwed(rest.rule, longestTime as Seconds, duration(0)));
  }
  const hottest = Math.max(model.plateaus.exposing, model.plateaus.idle) as Doublings;
  const needed = coolingTime(model, hottest, waits, highest as Doublings);
  return Math.max(askedS, isRefusal(needed) ? 0 : Math.min(needed, rest.longestS));
}

/** What a turn takes at most, apart from waiting for its set. */
const mostSeconds = (
  parts: readonly TurnPart[],
  allowances: Allowances,
  rigs: readonly OrderRig[],
  restBefore: (part: TurnPart, frame: TurnFrame) => number,
): number =>
  allowances.swapS +
  allowances.reframeS +
  leastSeconds(parts, allowances, rigs) +
  parts.reduce(
    (sum, part) =>
      sum +
      part.frames.reduce((own, frame) => own + allowances.dialChangeS + restBefore(part, frame), 0),
    0,
  );

/** No course of the list ends later: it waits for the last set to open, then does all it has. */
const latestEnd = (kinds: readonly TurnKind[], sets: readonly OrderSet[]): Seconds =>
  duration(
    Math.max(0, ...sets.map(({ notBeforeS }) => notBeforeS)) +
      kinds.reduce((sum, { count, mostS }) => sum + count * mostS, 0),
  );
