import type { RigId } from '../gear/ids.ts';
import { positionsOf } from '../gear/positions.ts';
import { type Fault, fault, isFault } from '../gear/read.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import { addSet, changeRigs, changeSet, copySet, deleteSet } from '../plan/edit.ts';
import { heatSeries } from '../plan/heatSeries.ts';
import type { PlanId, SetId } from '../plan/ids.ts';
import { matchSettings } from '../plan/matching.ts';
import { newPlan, newSet } from '../plan/newPlan.ts';
import { readPlan } from '../plan/parse.ts';
import type { Plan, PlanSet } from '../plan/plan.ts';
import { dialledIn } from '../plan/prepare.ts';
import { type ReadyListName, readyList } from '../plan/readyLists.ts';
import { isRefusal } from '../science/refusal.ts';
import { madeOnce } from './desks.ts';
import type { KeptGear } from './keptGear.ts';
import type { KeptPlans } from './keptPlans.ts';
import type { Undo } from './undo.ts';

/** What a plan starts from. */
export interface NewPlan {
  readonly name: string;
  /** The reference of a ready list first. */
  readonly rigs: readonly RigId[];
  /** Null = no sets yet. */
  readonly list: ReadyListName | null;
}

/** What a capped series starts from. */
export interface NewSeries {
  readonly name: string;
  readonly note: string;
  readonly rig: RigId;
  /** As the body's dial shows it. */
  readonly isoMark: string;
}

/**
 * The plans and every act on them. An act shows at once and is written behind it; what cannot be
 * written is kept and said (`Saving`). An act that would make a plan absurd changes nothing and
 * returns the fault.
 */
export interface PlanDesk {
  make(start: NewPlan): PlanId | Fault;
  /** The capped series of one rig's body, at the highest ISO that it is to be used at. */
  makeSeries(start: NewSeries): PlanId | Fault;
  /** The copy of an invented plan is its owner's own. */
  copy(id: PlanId, name: string): PlanId | Fault;
  /** `edit` gives the changed plan: one of `plan/edit.ts`, or by hand. */
  change(id: PlanId, edit: (plan: Plan) => Plan): Fault | null;
  remove(id: PlanId): void;

  setRigs(id: PlanId, rigs: readonly RigId[]): Fault | null;

  /** A set like the last one, to be changed. Null where there is no rig to be set. */
  addSet(id: PlanId): SetId | Fault | null;
  changeSet(id: PlanId, set: SetId, change: Partial<PlanSet>): Fault | null;
  copySet(id: PlanId, set: SetId): SetId | Fault;
  removeSet(id: PlanId, set: SetId): void;
  /** Another reference, which keeps what it was to be set to. */
  setReference(id: PlanId, set: SetId, rig: RigId): Fault | null;
  /** Every rig by hand, each keeping what it was to be set to. */
  setFree(id: PlanId, set: SetId): Fault | null;
}

/** What the desk needs of the app. */
export interface PlanWorld {
  readonly plans: Pick<KeptPlans, 'plans' | 'put' | 'prepared'>;
  readonly gear: Pick<KeptGear, 'gear'>;
  readonly undo: Pick<Undo, 'offer'>;
  readonly newId: () => string;
}

export function createPlanDesk({ plans: kept, gear: { gear }, undo, newId }: PlanWorld): PlanDesk {
  const { prepared } = kept;
  const find = (id: PlanId): Plan | undefined => kept.plans.peek().find((plan) => plan.id === id);
  /** @throws RangeError if the screen shows a plan that is not there. */
  const planOf = (id: PlanId): Plan => {
    const plan = find(id);
    if (plan === undefined) throw new RangeError(`no such plan: ${id}`);
    return plan;
  };

  /** Parses before it puts. */
  const put = (plan: Plan): PlanId | Fault => {
    const read = readPlan(plan);
    if (isFault(read)) return read;
    kept.put(read, false);
    return read.id;
  };
  const change: PlanDesk['change'] = (id, edit) => {
    const plan = find(id);
    // A field commits what is typed in it when its screen goes away, perhaps with its plan.
    if (!plan) return null;
    const result = put(edit(plan));
    return isFault(result) ? result : null;
  };

  /** What a rig stands on in a set, or would have to start from; null if it has no dials. */
  const settingsOn = (id: PlanId, set: SetId, rig: RigId): Settings | null => {
    const table = prepared(id)
      .peek()
      ?.table.find((candidate) => candidate.set === set);
    const now = dialledIn(table, rig);
    if (now) return now.settings;
    const other = assemble(gear.peek(), rig);
    if (!other) return null;
    if (table?.kind === 'compared') {
      const { reference } = table;
      const assembled = assemble(gear.peek(), reference.rig);
      const match =
        assembled &&
        matchSettings({
          reference: { assembled, ...reference.dialled },
          other,
          hold: { kind: 'same-exposure' },
        });
      if (match && !isRefusal(match)) return match.settings;
    }
    return startOn([other]);
  };

  return {
    make({ name, rigs, list }) {
      const plan = newPlan(newId() as PlanId, name, rigs);
      const assembled = rigs.flatMap((rig) => assemble(gear.peek(), rig) ?? []);
      const ready = list && readyList(list, assembled, () => newId() as SetId);
      // A rig whose dials refuse leaves the list empty; the plan then says which one.
      return put(ready && !isRefusal(ready) ? { ...plan, ...ready } : plan);
    },
    makeSeries({ name, note, rig, isoMark }) {
      const assembled = assemble(gear.peek(), rig);
      if (!assembled) return fault('body-gone');
      const series = heatSeries(assembled, isoMark, () => newId() as SetId);
      if (isRefusal(series)) return fault(series.rule);
      return put({ ...newPlan(newId() as PlanId, name, [rig]), note, ...series });
    },
    copy: (id, name) => put({ ...planOf(id), id: newId() as PlanId, name, invented: false }),
    change,
    remove(id) {
      const plan = planOf(id);
      kept.put(plan, true);
      undo.offer({ act: 'deleted', thing: 'plan', name: plan.name }, () => kept.put(plan, false));
    },

    setRigs: (id, rigs) =>
      change(id, (plan) => {
        const [first] = rigs;
        const changed = changeRigs(plan, rigs);
        return {
          ...changed,
          sets: changed.sets.map((set, index) =>
            first === undefined || set.reference === plan.sets[index]?.reference
              ? set
              : { ...set, settings: settingsOn(id, set.id, first) ?? set.settings },
          ),
        };
      }),

    addSet(id) {
      const { rigs, sets, order } = planOf(id);
      const setId = newId() as SetId;
      const last = sets.findLast(({ kind }) => kind !== 'capped-dark');
      if (last) {
        return change(id, (plan) => addSet(plan, { ...last, id: setId, intent: '' })) ?? setId;
      }
      const assembled = rigs.flatMap((rig) => assemble(gear.peek(), rig) ?? []);
      const [first] = assembled;
      const settings = startOn(assembled);
      if (!first || !settings) return null;
      return (
        change(id, (plan) => addSet(plan, newSet(setId, first.rig.id, settings, order))) ?? setId
      );
    },
    changeSet: (id, set, part) =>
      change(id, (plan) => changeSet(plan, set, (before) => ({ ...before, ...part }))),
    copySet(id, set) {
      const copyId = newId() as SetId;
      return change(id, (plan) => copySet(plan, set, copyId)) ?? copyId;
    },
    removeSet(id, setId) {
      const { sets } = planOf(id);
      const at = sets.findIndex((set) => set.id === setId);
      const set = sets[at];
      if (!set) return;
      kept.put(deleteSet(planOf(id), setId), false);
      // Put back into the plan as it then is: what was changed since stays.
      undo.offer({ act: 'deleted', thing: 'set', name: set.intent }, () => {
        const now = find(id);
        if (now) kept.put(addSet(now, set, at), false);
      });
    },
    setReference: (id, set, rig) =>
      change(id, (plan) => {
        const settings = settingsOn(id, set, rig);
        return changeSet(plan, set, (before) => ({
          ...before,
          reference: rig,
          settings: settings ?? before.settings,
          hold:
            before.hold.kind === 'free'
              ? {
                  kind: 'free',
                  settings: { ...before.hold.settings, [before.reference]: before.settings },
                }
              : before.hold,
        }));
      }),
    setFree: (id, set) =>
      change(id, (plan) => {
        const settings = Object.fromEntries(
          plan.rigs.flatMap((rig) => {
            const now = settingsOn(id, set, rig);
            return now ? [[rig, now]] : [];
          }),
        );
        return changeSet(plan, set, (before) => ({ ...before, hold: { kind: 'free', settings } }));
      }),
  };
}

/**
 * What the first of some rigs starts from with nothing to match: the first step of a ready list,
 * else its own first marks. Null if it has no dials.
 */
function startOn(rigs: readonly Assembled[]): Settings | null {
  const ready = readyList('base-iso-latitude', rigs, () => 'start' as SetId);
  const settings = isRefusal(ready) ? undefined : ready.sets[0]?.settings;
  if (settings) return settings;
  const [first] = rigs;
  const positions = first && positionsOf(first.body, first.lens);
  if (!positions || isRefusal(positions)) return null;
  const [f] = positions.fNumbers;
  const time = positions.times.at(-1);
  const [speed] = positions.isos;
  return f && time && speed
    ? { fMark: f.mark, time: { kind: 'dial', mark: time.mark }, isoMark: speed.mark }
    : null;
}

/** The one desk of an app. */
export const planDesk = madeOnce(createPlanDesk);
