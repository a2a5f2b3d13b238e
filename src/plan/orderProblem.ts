import { assemble, type Gear } from '../gear/rig.ts';
import { partLeft } from '../science/heat.ts';
import { isRefusal, type Refusal, refuse } from '../science/refusal.ts';
import { usualModel } from '../science/thermalRange.ts';
import { duration, type Ev, type Seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import type { ThermalOf } from './heat.ts';
import type { SetId } from './ids.ts';
import { type LightTable, tabulate } from './lightTable.ts';
import { settlingOf, waitsIn } from './nextFrame.ts';
import { type OrderHead, orderHead, splitHead } from './orderHead.ts';
import { kindsOf, numberedMarks, type RigAtWork, turnsFound } from './orderKinds.ts';
import type { OrderRig, TurnKind } from './orderTurn.ts';
import type { Allowances, Mounting, Plan } from './plan.ts';
import type { RestChoice } from './restChoice.ts';

/*
 * The order of frames as a problem to search: what may be put where, and what it takes. What is put
 * in order are turns.
 */

/** When the exposure of a set is right, in seconds from the start; an end may be open. */
export interface SetWindow {
  readonly fromS: Seconds | null;
  readonly toS: Seconds | null;
}

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

/**
 * Makes the problem of a list of frames. A capped series stands before everything and is passed over.
 *
 * @returns a refusal if there is nothing to order ('no-frames'), a frame's rig or set is gone
 * ('rig-gone', 'set-gone'), or the passes of one rig in one set are not alike ('passes-differ').
 */
export function orderProblem(request: OrderRequest): OrderProblem | Refusal {
  const { plan, gear, mounting, rest, thermal, locked } = request;
  const { before, turns } = splitHead(plan, request.frames);
  const head = orderHead(plan, gear, before, thermal);
  if (isRefusal(head)) return head;
  const found = turnsFound(plan, turns);
  if (isRefusal(found)) return found;
  if (found.length === 0) return refuse('no-frames');

  const atWork: RigAtWork[] = [];
  for (const id of new Set(found.map(({ rig }) => rig))) {
    const assembled = assemble(gear, id);
    if (!assembled) return refuse('rig-gone');
    const { body, lens } = assembled;
    const model = usualModel(thermal(id));
    const own = {
      id,
      timerS: body.selfTimer.usedS ?? 0,
      waits: waitsIn(lens),
      model,
      leftDialled: partLeft(plan.allowances.dialChangeS, model.tau),
      leftSettled: partLeft(settlingOf(plan, body), model.tau),
      leftWritten: partLeft(plan.allowances.writeS, model.tau),
    };
    atWork.push({ own, body });
  }
  const rigs = atWork.map(({ own }) => own);
  const setIds = [...new Set(found.map(({ set }) => set))];
  const marks = numberedMarks();
  const made = kindsOf(request, found, setIds, atWork, marks);
  if (isRefusal(made)) return made;
  const { kinds, standing } = made;
  const sets = setIds.map((id, index) => orderSet(request, id, index, rigs, kinds));
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
      locked.has((sets[(kinds[kind] as TurnKind).set] as OrderSet).id) ? kind : -1,
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

/** A set as the search sees it. */
function orderSet(
  { plan, windows, notBefore }: OrderRequest,
  id: SetId,
  index: number,
  rigs: readonly OrderRig[],
  kinds: readonly TurnKind[],
): OrderSet {
  const own = plan.sets.find((set) => set.id === id);
  return {
    id,
    reference: rigs.findIndex((rig) => rig.id === own?.reference),
    fromS: windows.get(id)?.fromS ?? Number.NEGATIVE_INFINITY,
    toS: windows.get(id)?.toS ?? Number.POSITIVE_INFINITY,
    notBeforeS: notBefore.get(id) ?? 0,
    fades: own?.kind === 'light',
    frames: rigs.map((_, rig) => {
      const turns = kinds.filter(({ set }) => set === index);
      return turns.reduce((sum, kind) => sum + kind.count * countedFrames(kind, rig), 0);
    }),
  };
}

/** The frames of a rig in a turn that count for its pair. */
const countedFrames = ({ parts }: TurnKind, rig: number): number =>
  parts
    .filter((part) => part.rig === rig)
    .reduce((sum, { frames }) => sum + frames.filter(({ capped }) => !capped).length, 0);

/** No course of the list ends later: it waits for the last set to open, then does all it has. */
const latestEnd = (kinds: readonly TurnKind[], sets: readonly OrderSet[]): Seconds =>
  duration(
    Math.max(0, ...sets.map(({ notBeforeS }) => notBeforeS)) +
      kinds.reduce((sum, { count, mostS }) => sum + count * mostS, 0),
  );
