import { USUAL_WEIGHTS } from '../../src/plan/costWeights.ts';
import { mulberry32, seed } from '../../src/science/mulberry32.ts';
import { type OrderCase, orderCase } from '../arbitraries/orders.ts';
import { search } from './orders/lists.ts';
import type { Bench, Ratio } from './ratio.ts';
import { median, type Table } from './table.ts';

/*
 * How the time of planning grows with the number of turns and of rigs.
 */

const TURNS = [8, 16, 24, 32, 48, 64];
const RIGS = [2, 3, 4];
const LISTS = 3;

/** Lists of so many turns of so many rigs; fewer than asked for where chance brings none. */
function listsOf(count: number, turns: number, rigs: number): readonly OrderCase[] {
  const size = { leastTurns: turns, mostTurns: turns, mostRepeats: 2, darks: true };
  const found: OrderCase[] = [];
  for (let from = 1; found.length < count && from <= 40; from += 1) {
    const request = orderCase(mulberry32(seed(from)), size);
    if (request.plan.rigs.length === rigs) found.push(request);
  }
  return found;
}

export const bench: Bench = async (_, brief) => {
  const counts = brief ? TURNS.slice(0, 2) : TURNS;
  const taken = counts.map((turns) => ({
    turns,
    ms: RIGS.map((rigs) =>
      listsOf(brief ? 1 : LISTS, turns, rigs).map((each) => search(each, USUAL_WEIGHTS).ms),
    ),
  }));
  // A first search compiles the code that all others run.
  const least = median(taken[0]?.ms.flat() ?? []);
  const cell = (ms: readonly number[]): string =>
    ms.length === 0
      ? '-'
      : `${(median(ms) / 1000).toFixed(2)} s (x ${(median(ms) / least).toFixed(0)})`;
  const table: Table = {
    name: `planning, median of up to ${LISTS} lists, in seconds and against ${counts[0]} turns`,
    heads: ['turns', ...RIGS.map((rigs) => `${rigs} rigs`), 'all', 'slowest, s'],
    lines: taken.map(({ turns, ms }) => [
      turns,
      ...ms.map(cell),
      cell(ms.flat()),
      (Math.max(...ms.flat()) / 1000).toFixed(2),
    ]),
  };
  return [
    table,
    ...taken.map(
      ({ turns, ms }): Ratio => ({
        name: `planning ${turns} turns against ${counts[0]}`,
        measured: ms.flat(),
        against: taken[0]?.ms.flat() ?? [],
        unit: 'ms',
      }),
    ),
  ];
};
