import type { RigId } from '../../gear/ids.ts';
import type { MadeId } from '../../outing/ids.ts';
import { type Beside, columnsFor } from './beside.ts';
import type { Column } from './columns.ts';
import type { Copies } from './groups.ts';
import type { Exposure } from './rows.ts';
import { takenBy } from './takers.ts';
import type { FrameMatch, LeftFile, LeftKind } from './types.ts';
import { cheapest, type Weighed } from './weighed.ts';

/** Farther from every frame than this, a file is of another evening. */
const EVENING_S = 3 * 3600;
/** A bracket's frames follow one another at once. */
const BRACKET_S = 20;
/** Figures of one setting, in stops. */
const SAME_SETTING = 0.2;

/** What the files without a frame probably are. */
export function leftFiles(
  weighed: Weighed,
  answers: readonly FrameMatch[],
  copies: Copies,
): readonly LeftFile[] {
  const frameOf = new Map(
    answers.flatMap(({ file, made }) => (file === null ? [] : [[file, made]])),
  );
  const kinds = new Map<number, LeftFile>();
  for (const rig of weighed.run.plan.rigs) {
    const beside = weighed.beside(rig, takenBy(rig, cheapest(weighed).rigs));
    for (const left of leftOf(rig, beside, frameOf)) kinds.set(left.file, left);
  }
  const rigs = new Map<number, RigId | null>();
  weighed.groups.forEach(({ files }, place) => {
    for (const file of files) rigs.set(file, cheapest(weighed).rigs[place] ?? null);
  });
  return weighed.files.flatMap((_, file): readonly LeftFile[] => {
    if (frameOf.has(file)) return [];
    const rig = rigs.get(file) ?? null;
    const copyOf = copies.get(file);
    if (copyOf !== undefined) return [{ file, kind: 'copy', rig, beside: null, copyOf }];
    return [kinds.get(file) ?? { file, kind: 'unknown', rig, beside: null, copyOf: null }];
  });
}

function leftOf(
  rig: RigId,
  beside: Beside,
  frameOf: ReadonlyMap<number, MadeId>,
): readonly LeftFile[] {
  const { rows, readings } = beside;
  const [best] = readings;
  if (!best) return [];
  const columns = columnsFor(beside, best);
  const rowAt = new Map([...best.taken].map((column, row) => [column, rows[row]]));
  const real = columns.flatMap((column, place) =>
    column.file === null || !Number.isFinite(column.fromS)
      ? []
      : [{ ...column, file: column.file, row: rowAt.get(place) }],
  );
  const matched = real.filter(({ row }) => row).map(({ fromS }) => fromS);
  const [from, to] = [matched[0], matched.at(-1)];
  return real.flatMap((column, place): readonly LeftFile[] => {
    const { file, fromS, row } = column;
    if (frameOf.has(file)) return [];
    const say = (kind: LeftKind, made: MadeId | null = null): readonly LeftFile[] => [
      { file, kind, rig, beside: made, copyOf: null },
    ];
    if (row?.clockFrame) return say('clock-frame');
    if (from === undefined || to === undefined) return say('unknown');
    if (fromS < from - EVENING_S || fromS > to + EVENING_S) return say('other-evening');
    const before = real.slice(0, place).findLast((other) => frameOf.has(other.file));
    const after = real.slice(place + 1).find((other) => frameOf.has(other.file));
    for (const other of [before, after]) {
      if (other && isBracket(column, other)) return say('bracket', frameOf.get(other.file));
    }
    if (before && isSame(column.exposure, before.exposure)) {
      return say('retake', frameOf.get(before.file));
    }
    return say('extra-shot');
  });
}

const apart = (a: number, b: number): number => Math.abs(a - b);

const isSame = (a: Exposure, b: Exposure): boolean =>
  apart(a.time, b.time) < SAME_SETTING &&
  apart(a.aperture, b.aperture) < SAME_SETTING &&
  apart(a.iso, b.iso) < SAME_SETTING;

/** Only its time is moved, and nothing but the exposures themselves lies between. */
function isBracket(
  one: Pick<Column, 'fromS' | 'exposure'>,
  other: Pick<Column, 'fromS' | 'exposure'>,
): boolean {
  const longest = 2 ** Math.max(one.exposure.time, other.exposure.time);
  return (
    apart(one.exposure.time, other.exposure.time) >= SAME_SETTING &&
    apart(one.exposure.aperture, other.exposure.aperture) < SAME_SETTING &&
    apart(one.exposure.iso, other.exposure.iso) < SAME_SETTING &&
    apart(one.fromS, other.fromS) < BRACKET_S + longest
  );
}
