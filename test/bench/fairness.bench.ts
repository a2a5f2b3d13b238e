import { type JudgedPair, judgedEvening, WAYS, type Way } from '../simulated/fairness.ts';
import type { Bench, Ratio } from './ratio.ts';

/*
 * Whether it makes the comparison fair, on simulated evenings whose light is known. What the app's
 * models were tried on are the seeds up to 200; these are others.
 */

const SEEDS = { from: 201, to: 1000 } as const;
/** The search takes its time: other orders are tried on one evening in so many. */
const OTHER_ORDERS_EVERY = 4;
const OTHER_ORDERS: readonly Way[] = ['in the order of the search', 'in the order of the list'];
/** A pair is unfair if its light differs by more than a click of the dial. */
const UNFAIR = 1 / 3;

const NAMES: Readonly<Record<Way, string>> = {
  paper: 'with paper and a stopwatch',
  app: 'with the app',
  'without readings': 'with the app, no readings taken',
  'without rests': 'with the app, no rests',
  'in the order of the search': 'with the app, in the order of its search',
  'in the order of the list': 'with the app, a list of one pass left as it is',
};

/** The value below which a share of all lies. */
function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
}

const inHundred = (pairs: readonly JudgedPair[], is: (pair: JudgedPair) => boolean): number =>
  (100 * pairs.filter(is).length) / pairs.length;

const held = (pairs: readonly JudgedPair[]): number =>
  inHundred(pairs, ({ error, half }) => error <= half);
const unfair = (pairs: readonly JudgedPair[]): number =>
  inHundred(pairs, ({ true: { light } }) => Math.abs(light) > UNFAIR);

/** What one way of working comes to against paper, and against what is aimed at. */
function figuresOf(
  way: Way,
  pairs: readonly JudgedPair[],
  paper: readonly JudgedPair[],
): readonly Ratio[] {
  const name = (what: string): string => `fairness: ${what}, ${NAMES[way]}`;
  const compared = (
    what: string,
    of: (pair: JudgedPair) => number,
    unit: string,
  ): readonly Ratio[] =>
    ([0.5, 0.95] as const).map((share) => ({
      name: name(`${what}, ${share === 0.5 ? 'median' : '95th percentile'}`),
      unit,
      measured: quantile(pairs.map(of), share),
      against: quantile(paper.map(of), share),
    }));
  return [
    ...compared('light that really sets a pair apart', (pair) => Math.abs(pair.true.light), 'stop'),
    ...compared('error of the stated even-up', ({ error }) => error, 'stop'),
    ...compared('heat by history', (pair) => Math.abs(pair.true.heatByHistory), 'stop'),
    {
      name: name('pairs over a third of a stop apart'),
      unit: '%',
      measured: unfair(pairs),
      against: unfair(paper),
      ...(way === 'app' && { aim: 0.1 }),
    },
    {
      name: name('intervals that hold the truth, against the 95 in 100 that they say'),
      unit: '%',
      measured: held(pairs),
      against: 95,
    },
  ];
}

/** What is aimed at, each against its bound. */
function aimsOf(pairs: readonly JudgedPair[]): readonly Ratio[] {
  const errors = pairs.map(({ error }) => error);
  const bounded = (what: string, unit: string, measured: number, against: number): Ratio => ({
    name: `fairness: ${what}, ${NAMES.app}, against its bound`,
    unit,
    measured,
    against,
    aim: 1,
  });
  return [
    bounded('median error of the even-up', 'stop', quantile(errors, 0.5), 0.05),
    bounded('95th percentile of that error', 'stop', quantile(errors, 0.95), 0.15),
    bounded('intervals off 95 in 100, either way', '%', Math.abs(held(pairs) - 95), 2),
  ];
}

export const bench: Bench = async () => {
  const ways = Object.keys(WAYS) as readonly Way[];
  const all = new Map<Way, JudgedPair[]>(ways.map((way) => [way, []]));
  for (let seed = SEEDS.from; seed <= SEEDS.to; seed += 1) {
    const tried =
      seed % OTHER_ORDERS_EVERY === 0 ? ways : ways.filter((way) => !OTHER_ORDERS.includes(way));
    for (const [way, pairs] of judgedEvening(seed, tried)) all.get(way)?.push(...pairs);
  }
  const of = (way: Way): readonly JudgedPair[] => all.get(way) ?? [];
  return [...ways.flatMap((way) => figuresOf(way, of(way), of('paper'))), ...aimsOf(of('app'))];
};
