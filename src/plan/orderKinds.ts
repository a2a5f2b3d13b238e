import type { Body } from '../gear/body.ts';
import { darkFrameS } from '../gear/darkFrame.ts';
import type { RigId } from '../gear/ids.ts';
import { type Settings, sameSettings } from '../gear/settings.ts';
import { partLeft } from '../science/heat.ts';
import { type Refusal, refuse } from '../science/refusal.ts';
import { highestAtRestEnd, restedMidHeat } from '../science/sensorRest.ts';
import type { PlannedFrame } from './frame.ts';
import { heatAbove } from './heatLimit.ts';
import type { FrameKey, SetId } from './ids.ts';
import { nextFrameOf } from './nextFrame.ts';
import { homesOf } from './orderHead.ts';
import type { OrderRig, TurnFrame, TurnKind, TurnPart } from './orderTurn.ts';
import { leastSeconds, mostSeconds } from './orderTurnTime.ts';
import type { Mounting, Plan } from './plan.ts';
import type { RestChoice } from './restChoice.ts';

/*
 * The turns in a list of frames, and what kinds of them there are.
 */

/** Frames of one turn, found in the order that stands. */
export interface FoundTurn {
  readonly set: SetId;
  readonly rig: RigId;
  readonly pass: number;
  readonly frames: PlannedFrame[];
}

/** The turns of a list that can be put in order; a refusal ('set-gone') if a frame's set is gone. */
export function turnsFound(
  plan: Plan,
  frames: readonly PlannedFrame[],
): readonly FoundTurn[] | Refusal {
  const home = homesOf(plan);
  const found = new Map<string, FoundTurn>();
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

/** The number of the marks that some settings of a rig stand on. */
export type MarksOf = (rig: number, settings: Settings) => number;

/** Numbers each rig's settings by the marks they stand on. */
export function numberedMarks(): MarksOf {
  const seen = new Map<number, Settings[]>();
  return (rig, settings) => {
    const own = seen.get(rig) ?? [];
    seen.set(rig, own);
    const known = own.findIndex((each) => sameSettings(each, settings));
    return known >= 0 ? known : own.push(settings) - 1;
  };
}

/** A rig of a problem with its body. */
export interface RigAtWork {
  readonly own: OrderRig;
  readonly body: Body;
}

/** A frame with all that a search works out beforehand. */
function turnFrame(
  plan: Plan,
  rest: RestChoice,
  { own: { model }, body }: RigAtWork,
  frame: PlannedFrame,
  marks: number,
): TurnFrame {
  const { exact, repeat } = frame;
  const set = plan.sets.find(({ id }) => id === frame.set);
  const capped = set?.kind === 'capped-dark';
  const next = nextFrameOf(plan, body, exact.t);
  const rested = restedMidHeat(model, next);
  const darkS = darkFrameS(body.darkFrame, exact.t);
  return {
    t: exact.t,
    darkS,
    capped,
    marks,
    askedS: repeat === 1 && !capped ? (set?.restBeforeS ?? 0) : 0,
    rested,
    highest:
      rest.kind === 'limit'
        ? highestAtRestEnd(model, next, heatAbove(rested, rest.ratioOf(frame)))
        : Number.POSITIVE_INFINITY,
    leftAtMid: partLeft(exact.t / 2, model.tau),
    leftAtEnd: partLeft(exact.t + darkS, model.tau),
  };
}

/** What a list of frames is to be put in order by. */
interface ListToOrder {
  readonly plan: Plan;
  readonly mounting: Mounting;
  readonly rest: RestChoice;
  /** All frames, those before the turns too. */
  readonly frames: readonly PlannedFrame[];
}

/** The kinds of turns in a list, and its turns by the indices of their kinds. */
export interface Kinds {
  readonly kinds: readonly TurnKind[];
  readonly standing: readonly number[];
}

/**
 * Tells the turns of a list by their kinds.
 *
 * @param sets of which the kinds tell the index.
 * @returns a refusal ('passes-differ') if the passes of one rig in one set are not alike.
 */
export function kindsOf(
  { plan, mounting, rest, frames: all }: ListToOrder,
  found: readonly FoundTurn[],
  sets: readonly SetId[],
  rigs: readonly RigAtWork[],
  marks: MarksOf,
): Kinds | Refusal {
  const rigIndex = new Map(rigs.map(({ own }, index) => [own.id, index]));
  const indexOf = (id: RigId): number => rigIndex.get(id) as number;
  const partOf = ({ rig: id, frames }: FoundTurn): TurnPart => {
    const rig = indexOf(id);
    return {
      rig,
      frames: frames.map((frame) =>
        turnFrame(plan, rest, rigs[rig] as RigAtWork, frame, marks(rig, frame.settings)),
      ),
    };
  };
  const longestTime = rigs.map(({ own }) =>
    Math.max(...all.filter(({ rig }) => rig === own.id).map(({ exact }) => exact.t)),
  );
  /** What turns of one kind share. */
  const kindKey = ({ set, rig }: FoundTurn) =>
    mounting === 'side-by-side' ? set : `${set}/${rig}`;
  const kinds: TurnKind[] = [];
  for (const key of new Set(found.map(kindKey))) {
    const own = found.filter((turn) => kindKey(turn) === key);
    const passes = [...new Set(own.map(({ pass }) => pass))].map((pass) =>
      own.filter((turn) => turn.pass === pass).sort((a, b) => indexOf(a.rig) - indexOf(b.rig)),
    );
    const [first, ...others] = passes.map((turns) => turns.map(partOf));
    const set = sets.indexOf((own[0] as FoundTurn).set);
    if (!first || others.some((each) => !alike(each, first))) return refuse('passes-differ');
    const working = rigs.map((rig) => rig.own);
    kinds.push({
      index: kinds.length,
      set,
      parts: first,
      count: passes.length,
      places: Math.max(...first.map(({ frames }) => frames.length)),
      passes: passes.map((turns) => interleaved(turns)),
      leastS: leastSeconds(first, plan.allowances, working),
      mostS: mostSeconds(first, plan.allowances, working, rest, longestTime),
    });
  }
  const kindOf = new Map(
    kinds.flatMap(({ index, passes }) =>
      passes.flatMap((frames) => frames.map(({ key }): [FrameKey, number] => [key, index])),
    ),
  );
  // A turn stands where its first frame does.
  const firsts = new Map<string, FrameKey>();
  for (const turn of found) {
    const of = `${kindKey(turn)}/${turn.pass}`;
    if (!firsts.has(of)) firsts.set(of, (turn.frames[0] as PlannedFrame).key);
  }
  return { kinds, standing: [...firsts.values()].map((key) => kindOf.get(key) as number) };
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
function interleaved(turns: readonly FoundTurn[]): readonly PlannedFrame[] {
  const longest = Math.max(...turns.map(({ frames }) => frames.length));
  return Array.from({ length: longest }, (_, place) =>
    turns.flatMap(({ frames }) => frames.slice(place, place + 1)),
  ).flat();
}
