import type { SetId } from '../../src/plan/ids.ts';
import { type Use, walkWithApp } from './field.ts';
import { walkWithPaper } from './paper.ts';
import { type OrderFrom, type Task, taskOf } from './task.ts';
import type { Walked } from './ways.ts';
import { type Evening, eveningOf } from './world/evening.ts';
import { type TrueDifference, trueDifference } from './world/truth.ts';

type How = { readonly order: OrderFrom } & (
  | { readonly with: 'paper' }
  | ({ readonly with: 'app' } & Use)
);

/** The ways of working that are compared on the same evenings. */
export const WAYS = {
  paper: { with: 'paper', order: 'list' },
  app: { with: 'app', order: 'mirror', readings: true, rests: true },
  'without readings': { with: 'app', order: 'mirror', readings: false, rests: true },
  'without rests': { with: 'app', order: 'mirror', readings: true, rests: false },
  'in the order of the search': { with: 'app', order: 'search', readings: true, rests: true },
  'in the order of the list': { with: 'app', order: 'list', readings: true, rests: true },
} as const satisfies Readonly<Record<string, How>>;

export type Way = keyof typeof WAYS;

/** A pair of rigs over a set: what it really was, and how far off it was said to be. */
export interface JudgedPair {
  readonly seed: number;
  readonly set: SetId;
  readonly true: TrueDifference;
  /** Of the stated even-up, in stops, without its sign. */
  readonly error: number;
  /** Half of the interval that is to hold the truth 95 times in a hundred. */
  readonly half: number;
}

function judged(
  evening: Evening,
  { exposures, switchedOn, stated }: Walked,
): readonly JudgedPair[] {
  return stated.map(({ set, reference, other, stops, half, weights }) => {
    const really = trueDifference(evening, exposures, switchedOn, weights, [reference, other]);
    const error = Math.abs(stops - really.light - really.exposure);
    return { seed: evening.seed, set, true: really, error, half };
  });
}

/** One evening, each way; offsets of bodies and lenses, which nobody knows, are left out throughout. */
export function judgedEvening(
  seed: number,
  ways: readonly Way[],
): ReadonlyMap<Way, readonly JudgedPair[]> {
  const evening = eveningOf(seed);
  const tasks = new Map<OrderFrom, Task>();
  return new Map(
    ways.map((way) => {
      const how: How = WAYS[way];
      const task = tasks.get(how.order) ?? taskOf(evening, how.order);
      tasks.set(how.order, task);
      return [
        way,
        judged(evening, how.with === 'paper' ? walkWithPaper(task) : walkWithApp(task, how)),
      ];
    }),
  );
}
