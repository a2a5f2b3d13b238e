import { bestChain, type Chain } from './chain.ts';
import {
  type Clock,
  candidateClocks,
  costOfClock,
  exposureCost,
  fitClock,
  type Pair,
  shownFor,
} from './clock.ts';
import type { Column } from './columns.ts';
import {
  FILE_LEFT,
  FRAME_IN_GAP,
  FRAME_LEFT,
  farthestFor,
  NUMBER_COST,
  NUMBERS_IGNORED,
  timeCost,
} from './evidence.ts';
import type { Row } from './rows.ts';

/** What hangs on whether a body writes the start or the end of an exposure as its time. */
export interface ByEnd<T> {
  readonly start: T;
  readonly end: T;
}

export const byEnd = <T>(of: ByEnd<T>, clock: Pick<Clock, 'writesEnd'> | null): T =>
  clock?.writesEnd ? of.end : of.start;

/** One body's frames and files, with what somebody has said about them. */
export interface Sequence {
  readonly rows: readonly Row[];
  /** By whether a file's time is the end of its exposure; the same files, numbered alike or not. */
  readonly columns: ByEnd<readonly Column[]>;
  /** Pairs that somebody has said; their rows and columns are in neither of the above. */
  readonly said: ByEnd<readonly Pair[]>;
  /** Where somebody has said it stands; null = to be found. */
  readonly clock: Clock | null;
}

/** A way of reading a sequence: a clock, whether file numbers are believed, and the best pairing. */
export interface Reading {
  /** Null where no file says a time, or nothing is paired. */
  readonly clock: Clock | null;
  readonly numbersBelieved: boolean;
  /** Against leaving everything out: below zero for all that is worth anything. */
  readonly cost: number;
  /** The column of each row, -1 for none. */
  readonly taken: Chain['taken'];
  /** Of each row its choices with what each costs above the best. */
  readonly choices: Chain['choices'];
}

/** A reading whose other choices have not been looked for. */
type Settled = Omit<Reading, 'choices'>;
type Belief = Pick<Reading, 'clock' | 'numbersBelieved'>;

/** Losses beyond this are of no interest to anybody. */
export const KEPT_LOSS = 15;
/** A first look is this much wider than a clock's own scatter. */
const FIRST_LOOKS = 3;
/** A candidate that is so much worse at first sight never becomes the best. */
const HOPELESS = 60;
/** Exposures so short tell start from end nowhere. */
const TELLING_LENGTH_S = 2;

/** What a row and a column cost together, apart from what is left out for them; null = too far off. */
export function pairCost(row: Row, column: Column, reading: Belief): number {
  const { clock, numbersBelieved } = reading;
  const away = clock === null ? 0 : awayFrom(shownFor(row, clock), column);
  const time = timeCost(away / (clock === null ? 1 : row.sigmaS));
  const number = numbersBelieved ? numberCost(row, column) : 0;
  return time + number + (column.file === null ? FRAME_IN_GAP : exposureCost(row, column));
}

const awayFrom = (shownS: number, { fromS, toS }: Column): number =>
  Math.max(0, fromS - shownS, shownS - toS);

const numberCost = (row: Row, column: Column): number =>
  row.number === null || column.number === null
    ? NUMBER_COST.unknown
    : row.number === column.number
      ? NUMBER_COST.same
      : NUMBER_COST.other;

/** The best pairing under one clock. Exact: what is out of bounds is worth less than leaving it. */
function pairing(
  { rows, columns: both }: Sequence,
  reading: Belief,
  wider: number,
  kept: number | null,
): Chain {
  const { clock } = reading;
  const columns = byEnd(both, clock);
  const seen = (row: Row): Row =>
    wider > 0 ? { ...row, sigmaS: Math.hypot(row.sigmaS, wider) } : row;
  const looked = rows.map(seen);
  const first = new Int32Array(rows.length);
  const last = new Int32Array(rows.length);
  looked.forEach((row, place) => {
    const shownS = clock === null ? 0 : shownFor(row, clock);
    const reachS = row.sigmaS * farthestFor(FRAME_LEFT + FILE_LEFT + (kept ?? 0));
    first[place] = clock === null ? 0 : firstWhere(columns, ({ toS }) => toS >= shownS - reachS);
    last[place] =
      (clock === null
        ? columns.length
        : firstWhere(columns, ({ fromS }) => fromS > shownS + reachS)) - 1;
  });
  return bestChain(
    {
      rows: rows.length,
      columns: columns.length,
      first,
      last,
      worth: (r, c) => {
        const [row, column] = [looked[r] as Row, columns[c] as Column];
        const left = FRAME_LEFT + (column.file === null ? 0 : FILE_LEFT);
        return left - pairCost(row, column, reading);
      },
    },
    kept,
  );
}

/** The first column for which something holds that, once it holds, holds for all after it. */
function firstWhere(columns: readonly Column[], holds: (column: Column) => boolean): number {
  let [low, high] = [0, columns.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(columns[middle] as Column)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/**
 * What the sequence may mean, the cheapest first, as far as it costs little more; that nothing belongs
 * together is one of them.
 */
export function readingsOf(sequence: Sequence): readonly Reading[] {
  const { rows, columns: both } = sequence;
  const columns = both.start;
  const nothing: Settled = {
    clock: sequence.clock,
    numbersBelieved: false,
    cost: 0,
    taken: new Int32Array(rows.length).fill(-1),
  };
  const choicesOfNothing = rows.map(() => [{ column: -1, loss: 0 }]);
  if (rows.length === 0 || columns.length === 0) {
    return [{ ...nothing, choices: choicesOfNothing }];
  }
  const numbered =
    rows.some(({ number }) => number !== null) && columns.some(({ number }) => number !== null);
  const ways = numbered ? [true, false] : [false];
  const candidates = candidatesFor(sequence);
  const readings = ways.flatMap((numbersBelieved) => {
    const extra = numbered && !numbersBelieved ? NUMBERS_IGNORED : 0;
    return likelyOf(sequence, candidates, numbersBelieved).map((clock) =>
      settled(sequence, clock, numbersBelieved, extra),
    );
  });
  const sorted = distinct([nothing, ...readings].sort((a, b) => a.cost - b.cost));
  return sorted
    .filter(({ cost }) => cost <= (sorted[0]?.cost ?? 0) + KEPT_LOSS)
    .map((each) => ({
      ...each,
      choices: each === nothing ? choicesOfNothing : pairing(sequence, each, 0, KEPT_LOSS).choices,
    }));
}

function candidatesFor({ rows, columns, said, clock }: Sequence): readonly (Clock | null)[] {
  if (clock) return [clock, { ...clock, writesEnd: !clock.writesEnd }];
  if (!columns.start.some(({ fromS }) => Number.isFinite(fromS))) return [null];
  const tells = [...rows, ...said.start.map(({ row }) => row)].some(
    ({ lengthS }) => lengthS >= TELLING_LENGTH_S,
  );
  return (tells ? [false, true] : [false]).flatMap((writesEnd) =>
    candidateClocks(rows, byEnd(columns, { writesEnd }), byEnd(said, { writesEnd }), writesEnd),
  );
}

/** The clocks that are worth a second look. */
function likelyOf(
  sequence: Sequence,
  candidates: readonly (Clock | null)[],
  numbersBelieved: boolean,
): readonly (Clock | null)[] {
  if (candidates.length < 2) return candidates;
  const first = candidates.map((clock) => ({
    clock,
    cost:
      (clock ? costOfClock(clock) : 0) -
      pairing(sequence, { clock, numbersBelieved }, FIRST_LOOKS, null).worth,
  }));
  const best = Math.min(...first.map(({ cost }) => cost));
  return first.filter(({ cost }) => cost <= best + HOPELESS).map(({ clock }) => clock);
}

const MOST_ROUNDS = 5;

/** Pairs under a clock, the clock by those pairs, and so on until neither changes. */
function settled(
  sequence: Sequence,
  start: Clock | null,
  numbersBelieved: boolean,
  extra: number,
): Settled {
  let clock = start;
  let chain = pairing(sequence, { clock, numbersBelieved }, FIRST_LOOKS, null);
  for (let round = 0; round < MOST_ROUNDS && clock; round += 1) {
    clock = fitClock([...pairsOf(sequence, chain, clock), ...byEnd(sequence.said, clock)], clock);
    const before = chain.taken;
    chain = pairing(sequence, { clock, numbersBelieved }, 0, null);
    if (chain.taken.every((column, row) => column === before[row])) break;
  }
  const cost = (clock && !sequence.clock ? costOfClock(clock) : 0) + saidCost(sequence, clock);
  return { clock, numbersBelieved, cost: cost + extra - chain.worth, taken: chain.taken };
}

const saidCost = ({ said }: Sequence, clock: Clock | null): number =>
  clock === null
    ? 0
    : byEnd(said, clock).reduce(
        (sum, { row, openedS }) => sum + timeCost((openedS - shownFor(row, clock)) / row.sigmaS),
        0,
      );

/** The pairs of a chain that say a time. */
const pairsOf = ({ rows, columns }: Sequence, { taken }: Chain, clock: Clock): Pair[] =>
  rows.flatMap((row, place) => {
    const column = byEnd(columns, clock)[taken[place] as number];
    return column && column.file !== null && Number.isFinite(column.fromS)
      ? [{ row, openedS: column.fromS }]
      : [];
  });

/** Of readings that take the same columns under the same clock only the cheapest. */
function distinct(readings: readonly Settled[]): readonly Settled[] {
  const seen = new Set<string>();
  return readings.filter(({ taken, clock }) => {
    const key = `${taken.join()} ${clock?.writesEnd}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
