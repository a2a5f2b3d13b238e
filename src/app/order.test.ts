import { effect, signal } from '@preact/signals';
import { beforeEach, describe, expect, it } from 'vitest';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import type { Site } from '../light/site.ts';
import { USUAL_WEIGHTS } from '../plan/costWeights.ts';
import { arrange, changeSet, lockSet } from '../plan/edit.ts';
import { turnsOf } from '../plan/order.ts';
import { costedOrder, namedStarts } from '../plan/orderCost.ts';
import { orderProblem } from '../plan/orderProblem.ts';
import { type OrderQuestion, orderRequest } from '../plan/orderRequest.ts';
import { orderTrade, type TradePoint } from '../plan/orderTrade.ts';
import { mountingOf, type Plan } from '../plan/plan.ts';
import { PRACTICE_PLAN_ID, practicePlan } from '../plan/practicePlan.ts';
import { seed } from '../science/mulberry32.ts';
import { must } from '../science/refusal.ts';
import { stops } from '../science/units.ts';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { createKeptPlans } from './keptPlans.ts';
import { createOrderDesk, type OrderState } from './order.ts';
import type { OrderAnswer, StartSearch } from './orderSearch.ts';
import { createSaving } from './saving.ts';
import { createUndo } from './undo.ts';

const ID = PRACTICE_PLAN_ID;

/** Searches that answer when the test says so. */
interface Started {
  readonly question: OrderQuestion;
  readonly say: (answer: OrderAnswer) => void;
  ended: boolean;
}

function world() {
  const gear = signal(PRACTICE_GEAR);
  const sites = signal<readonly Site[]>([PRACTICE_SITE]);
  const store = memoryStore({ makeId: () => 'id', reader: eventReader });
  const plans = createKeptPlans({ store, gear, saving: createSaving() });
  const undo = createUndo();
  const searches: Started[] = [];
  const start: StartSearch = (question, hear) => {
    const search: Started = { question, say: hear, ended: false };
    searches.push(search);
    return () => {
      search.ended = true;
    };
  };
  plans.put(practicePlan(), false);
  const desk = createOrderDesk({ plans, gear: { gear }, sites: { sites }, undo }, start);
  const planNow = (): Plan => {
    const plan = plans.plans.value.find(({ id }) => id === ID);
    if (!plan) throw new Error('the plan');
    return plan;
  };
  const question = (): OrderQuestion => {
    const frames = plans.prepared(ID).value?.frames;
    if (!frames) throw new Error('its frames');
    return { plan: planNow(), gear: gear.value, frames, light: null };
  };
  const change = (edit: (plan: Plan) => Plan): void => plans.put(edit(planNow()), false);
  return { gear, sites, plans, undo, searches, desk, planNow, question, change };
}

/** The practice list's orders with no light known, by a short search. */
function pointsOf(question: OrderQuestion): readonly TradePoint[] {
  const request = orderRequest(question);
  const problem = must(orderProblem(request));
  const effort = { walks: 1, tries: 20, steps: 2000 };
  const trade = orderTrade(problem, USUAL_WEIGHTS, seed(1), effort, namedStarts(request, problem));
  let step = trade.next();
  while (!step.done) step = trade.next();
  return must(step.value);
}

let own: ReturnType<typeof world>;
beforeEach(() => {
  own = world();
});
const search = (index: number): Started => {
  const started = own.searches[index];
  if (!started) throw new Error(`search ${index}`);
  return started;
};
const kinds = (): OrderState['kind'][] => {
  const seen: OrderState['kind'][] = [];
  effect(() => {
    seen.push(own.desk.state(ID).kind);
  });
  return seen;
};

describe('a search', () => {
  it('shows how far it is, what it has by then, and what it ends with', () => {
    const seen = kinds();
    const question = own.question();
    own.desk.look(question);
    expect(search(0).question).toBe(question);
    const points = pointsOf(question);
    search(0).say({ kind: 'looking', share: 0.2, points: points.slice(0, 1) });
    search(0).say({ kind: 'looking', share: 0.4, points: null });
    expect(own.desk.state(ID)).toEqual({
      kind: 'looking',
      share: 0.4,
      points: points.slice(0, 1),
      light: null,
    });
    search(0).say({ kind: 'found', points });
    expect(own.desk.state(ID)).toEqual({ kind: 'found', points, light: null, isWhole: true });
    expect(search(0).ended).toBe(true);
    expect(new Set(seen)).toEqual(new Set(['idle', 'looking', 'found']));
    expect(own.desk.state('another' as typeof ID).kind).toBe('idle');
  });

  it('that is cancelled is ended, and leaves what it has found', () => {
    own.desk.look(own.question());
    own.desk.cancel();
    expect(search(0).ended).toBe(true);
    expect(own.desk.state(ID)).toEqual({ kind: 'idle', isOutdated: false });
    const question = own.question();
    own.desk.look(question);
    const points = pointsOf(question).slice(0, 2);
    search(1).say({ kind: 'looking', share: 0.4, points });
    own.desk.cancel();
    expect(own.desk.state(ID)).toEqual({ kind: 'found', points, light: null, isWhole: false });
    // What it says after its end is not heard.
    search(1).say({ kind: 'looking', share: 0.9, points: [] });
    expect(own.desk.state(ID).kind).toBe('found');
  });

  it('is dropped when the list, the gear or the site changes, and says that it is outdated', () => {
    const [first] = own.planNow().sets;
    if (!first) throw new Error('a set');
    const changes: readonly (() => void)[] = [
      () => own.change((plan) => changeSet(plan, first.id, (set) => ({ ...set, repeats: 2 }))),
      () => own.change((plan) => lockSet(plan, first.id, true)),
      () => {
        own.sites.value = own.sites.value.map((site) => ({ ...site, name: 'Elsewhere' }));
      },
      () => {
        own.gear.value = {
          ...own.gear.value,
          bodies: own.gear.value.bodies.map((body) => ({ ...body, bitDepth: 12 })),
        };
      },
    ];
    for (const [index, change] of changes.entries()) {
      own.desk.look(own.question());
      change();
      expect(search(index).ended).toBe(true);
      expect(own.desk.state(ID)).toEqual({ kind: 'idle', isOutdated: true });
      search(index).say({ kind: 'found', points: [] });
      expect(own.desk.state(ID).kind).toBe('idle');
    }
  });

  it('goes on while only the name or the order that stands changes', () => {
    own.desk.look(own.question());
    own.change((plan) => ({ ...plan, name: 'Another evening', note: 'Wind.' }));
    const turns = turnsOf(own.planNow(), own.question().frames);
    own.change((plan) => ({ ...arrange(plan, turns.toReversed()), swapWorth: stops(0.3) }));
    expect(search(0).ended).toBe(false);
    expect(own.desk.state(ID).kind).toBe('looking');
  });

  it('hangs on the places of what is locked, and on no others', () => {
    const [first] = own.planNow().sets;
    if (!first) throw new Error('a set');
    own.change((plan) => lockSet(plan, first.id, true));
    const turns = turnsOf(own.planNow(), own.question().frames);
    const at = turns.findIndex(({ set }) => set !== first.id);
    own.desk.look(own.question());
    own.change((plan) => arrange(plan, turns));
    expect(own.desk.state(ID).kind).toBe('looking');
    own.change((plan) => arrange(plan, [...turns.slice(at), ...turns.slice(0, at)]));
    expect(own.desk.state(ID)).toEqual({ kind: 'idle', isOutdated: true });
  });

  it('of another plan takes the place of the one before', () => {
    own.desk.look(own.question());
    own.desk.look(own.question());
    expect([search(0).ended, search(1).ended]).toEqual([true, false]);
    search(0).say({ kind: 'refused', rule: 'no-frames' });
    expect(own.desk.state(ID).kind).toBe('looking');
    search(1).say({ kind: 'refused', rule: 'locked-against-mounting' });
    expect(own.desk.state(ID)).toEqual({ kind: 'refused', rule: 'locked-against-mounting' });
    own.change((plan) => ({ ...plan, rigs: plan.rigs.toReversed() }));
    expect(own.desk.state(ID)).toEqual({ kind: 'idle', isOutdated: false });
  });
});

describe('a found order', () => {
  it('is taken with what a swap is worth there, and its frames come in that order', () => {
    const points = pointsOf(own.question());
    for (const point of points) {
      own.desk.take(ID, point);
      expect(own.planNow().swapWorth).toBe(point.perSwap);
      const { frames } = own.question();
      expect(frames.map(({ key }) => key)).toEqual(point.costed.frames.map(({ key }) => key));
      const problem = must(orderProblem(orderRequest(own.question())));
      const again = costedOrder(problem, problem.standing, {
        ...USUAL_WEIGHTS,
        perSwap: point.perSwap,
      });
      expect(again.cost.total).toBeCloseTo(point.costed.cost.total, 9);
    }
    expect(new Set(points.map(({ costed }) => costed.swaps)).size).toBeGreaterThan(1);
  });

  it('that replaces an arrangement can be undone; one that replaces a named order need not', () => {
    const [fair, , , , , few] = pointsOf(own.question());
    if (!fair || !few) throw new Error('points');
    own.desk.take(ID, fair);
    expect(own.undo.last.value).toBeNull();
    const before = own.planNow();
    own.desk.take(ID, few);
    expect(own.planNow().arranged).not.toEqual(before.arranged);
    expect(own.undo.last.value?.deed).toEqual({ act: 'order-replaced' });
    own.change((plan) => ({ ...plan, note: 'Wind.' }));
    own.undo.take();
    expect(own.planNow()).toEqual({ ...before, note: 'Wind.' });
  });

  it('gives way to a named order or another mounting, and comes back with its passes', () => {
    const [fair] = pointsOf(own.question());
    if (!fair) throw new Error('a point');
    own.desk.take(ID, fair);
    const before = own.planNow();
    own.desk.choose(ID, 'double-mirror');
    expect(own.planNow().arranged).toBeNull();
    expect(own.planNow().sets[0]?.passes).toBe(4);
    own.undo.take();
    expect(own.planNow()).toEqual(before);
    own.desk.mount(ID, 'one-rig-at-a-time');
    expect(mountingOf(own.planNow())).toBe('one-rig-at-a-time');
    own.undo.take();
    expect(own.planNow()).toEqual(before);
  });
});
