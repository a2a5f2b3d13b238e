import type { RigId } from '../../gear/ids.ts';
import type { MadeId } from '../../outing/ids.ts';
import { type Beside, columnsFor } from './beside.ts';
import { shownFor } from './clock.ts';
import type { Column } from './columns.ts';
import {
  FILE_LEFT,
  FRAME_LEFT,
  FREE_WITHIN_S,
  SURE_MARGIN,
  SURE_PAIR,
  UNKNOWN_SETTING,
} from './evidence.ts';
import type { Row } from './rows.ts';
import { pairCost, type Reading } from './sequence.ts';
import { straysFor } from './strays.ts';
import { takenBy } from './takers.ts';
import type { FileChoice, FrameMatch } from './types.ts';
import { cheapest, type Weighed } from './weighed.ts';

/** Files at one place in the order; without a clock all of them are. */
const MOST_FREE = 50;
/** More than this nobody chooses from. */
const MOST_OTHERS = 6;

/** What each frame has, over all ways of sharing out the files and of reading the sequences. */
export function answersOf(weighed: Weighed): readonly FrameMatch[] {
  const { frames, said, run } = weighed;
  const costs = new Map<MadeId, Map<number | null, number>>();
  for (const rig of run.plan.rigs) gather(weighed, rig, costs);
  const taken = new Map(run.plan.rigs.flatMap((rig) => takenFor(weighed, rig)));
  return frames.map((frame): FrameMatch => {
    const made = frame.id;
    const decided = said.get(made);
    if (decided !== undefined) return { made, file: decided, sure: true, said: true, others: [] };
    const best = taken.get(made) ?? { file: null, isOdd: false, free: [] };
    const known = costs.get(made) ?? new Map<number | null, number>();
    for (const { file, cost } of best.free) if (!known.has(file)) known.set(file, cost);
    const others = [...known]
      .filter(([file]) => file !== best.file)
      .map(([file, cost]): FileChoice => ({ file, cost }))
      .sort((a, b) => a.cost - b.cost);
    const margin = others[0]?.cost ?? Number.POSITIVE_INFINITY;
    const sure = margin >= SURE_MARGIN && !best.isOdd;
    return {
      made,
      file: best.file,
      sure,
      said: false,
      others: sure ? [] : withNone(others, best.file).slice(0, MOST_OTHERS),
    };
  });
}

/** That a frame has no file can always be said. */
const withNone = (others: readonly FileChoice[], best: number | null): readonly FileChoice[] =>
  best === null || others.some(({ file }) => file === null)
    ? others
    : [...others, { file: null, cost: FRAME_LEFT }];

/** The least cost of each choice of a rig's frames above the cheapest whole answer. */
function gather(
  weighed: Weighed,
  rig: RigId,
  costs: Map<MadeId, Map<number | null, number>>,
): void {
  for (const { rigs, cost } of weighed.takers) {
    const beside = weighed.beside(rig, takenBy(rig, rigs));
    const { rows, readings } = beside;
    const above = cost - cheapest(weighed).cost - (readings[0]?.cost ?? 0);
    for (const reading of readings) {
      if (above + reading.cost >= SURE_MARGIN) break;
      const columns = columnsFor(beside, reading);
      rows.forEach(({ made }, row) => {
        if (made === null) return;
        const known = costs.get(made) ?? new Map<number | null, number>();
        costs.set(made, known);
        for (const { column, loss } of reading.choices[row] ?? []) {
          const file = columns[column]?.file ?? null;
          const whole = above + reading.cost + loss;
          known.set(file, Math.min(known.get(file) ?? Number.POSITIVE_INFINITY, whole));
        }
      });
    }
  }
}

interface Taken {
  readonly file: number | null;
  /** Whether its pair is unlikely by itself, whatever else there is. */
  readonly isOdd: boolean;
  /** Where there is none: files without a frame that stand at its place in the order. */
  readonly free: readonly FileChoice[];
}

function takenFor(weighed: Weighed, rig: RigId): readonly (readonly [MadeId, Taken])[] {
  const beside = weighed.beside(rig, takenBy(rig, cheapest(weighed).rigs));
  const [best] = beside.readings;
  if (!best) return [];
  const columns = columnsFor(beside, best);
  const strays = straysFor(weighed, rig);
  const doubted = doubtedNumbers(beside, best);
  return beside.rows.flatMap((row, place): readonly (readonly [MadeId, Taken])[] => {
    if (row.made === null) return [];
    const column = columns[best.taken[place] as number];
    const file = column?.file ?? null;
    if (column && file !== null) {
      const isOdd = doubted.has(place) || oddness(row, column, best) > SURE_PAIR;
      return [[row.made, { file, isOdd, free: [] }]];
    }
    const free = [...freeFor(beside, best, place), ...strays(row, best)];
    return [[row.made, { file: null, isOdd: free.length > 0, free }]];
  });
}

/**
 * Rows whose file bears another number than was logged, from one on whose own number is missing among
 * the files: that file may be gone, and this one another picture. Until the numbers agree again.
 */
function doubtedNumbers(beside: Beside, best: Reading): ReadonlySet<number> {
  const columns = columnsFor(beside, best);
  const gaps = new Set(columns.flatMap(({ file, number }) => (file === null ? number : [])));
  // A file that is missing at the end leaves no gap.
  gaps.add((columns.at(-1)?.number ?? Number.NaN) + 1);
  const doubted = new Set<number>();
  let shift = 0;
  let inDoubt = false;
  beside.rows.forEach(({ number }, place) => {
    const borne = columns[best.taken[place] as number]?.number ?? null;
    if (number === null || borne === null) return;
    if (borne - number !== shift) inDoubt = borne !== number && gaps.has(number);
    shift = borne - number;
    if (inDoubt) doubted.add(place);
  });
  return doubted;
}

/** The files without a frame between those of the frames before and after. */
function freeFor(beside: Beside, best: Reading, place: number): readonly FileChoice[] {
  const { clock, taken } = best;
  const row = beside.rows[place];
  if (!row) return [];
  const before = taken.slice(0, place).findLast((column) => column >= 0) ?? -1;
  const after = taken.slice(place + 1).find((column) => column >= 0);
  return columnsFor(beside, best)
    .slice(before + 1, after)
    .slice(0, MOST_FREE)
    .flatMap((column): readonly FileChoice[] => {
      const { file } = column;
      const away = clock === null ? 0 : Math.abs(column.fromS - shownFor(row, clock));
      if (file === null || away > FREE_WITHIN_S) return [];
      const cost = pairCost(row, column, best) - FRAME_LEFT - FILE_LEFT;
      return [{ file, cost: Math.max(0, cost) }];
    });
}

/** A pair's own cost, beyond what is the same for all: settings that one side does not say. */
function oddness(row: Row, column: Column, reading: Reading): number {
  const unknown = (['time', 'aperture', 'iso'] as const).filter((each) =>
    Number.isNaN(row.exposure[each] - column.exposure[each]),
  ).length;
  return pairCost(row, column, reading) - unknown * UNKNOWN_SETTING;
}
