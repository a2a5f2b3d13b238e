import type { RigId } from '../../gear/ids.ts';
import { type Assembled, assemble } from '../../gear/rig.ts';
import type { LogFrame } from '../../log/frames.ts';
import type { CameraFile } from '../../outing/cameraFile.ts';
import type { MadeId } from '../../outing/ids.ts';
import type { RunState } from '../../outing/state.ts';
import type { Beside } from './beside.ts';
import { clockOf } from './bodyClock.ts';
import type { Pair } from './clock.ts';
import { columnsOf, openedByFile } from './columns.ts';
import { SURE_MARGIN } from './evidence.ts';
import { groupsOf, type Written } from './groups.ts';
import { identityCost } from './identity.ts';
import { localSeconds, rowsOf } from './rows.ts';
import { readingsOf } from './sequence.ts';
import { type Takers, takersOf } from './takers.ts';
import type { Decided } from './types.ts';

/** All that was weighed: what the answers, questions and clocks are read from. */
export interface Weighed {
  readonly run: RunState;
  readonly frames: readonly LogFrame[];
  readonly files: readonly CameraFile[];
  readonly groups: readonly Written[];
  /** Who may have taken what, cheapest first; never empty. */
  readonly takers: readonly Takers[];
  readonly beside: (rig: RigId, groups: readonly number[]) => Beside;
  readonly identity: (rig: RigId, group: Written) => number;
  /** Frames whose file was said, with its place; null = none, or not among these files. */
  readonly said: ReadonlyMap<MadeId, number | null>;
  readonly decided: Decided;
}

export const cheapest = ({ takers }: Weighed): Takers => takers[0] ?? { rigs: [], cost: 0 };

/** Whether another rig might as well have taken a group. */
export const isDoubted = ({ takers }: Weighed, group: number): boolean =>
  takers.some(
    ({ rigs, cost }) =>
      rigs[group] !== takers[0]?.rigs[group] && cost - (takers[0]?.cost ?? 0) < SURE_MARGIN,
  );

export function weigh(
  run: RunState,
  frames: readonly LogFrame[],
  files: readonly CameraFile[],
  decided: Decided,
): Weighed {
  const { groups } = groupsOf(files);
  const rigs = run.plan.rigs.flatMap((id) => assemble(run.gear, id) ?? []);
  const said = saidFiles(run, files, decided);
  const beside = remembered(run, frames, files, groups, said, decided);
  const identity = (id: RigId, group: Written): number =>
    identityCost(partsOf(rigs, id), rigs, group, files);
  const takers = takersOf({
    groups,
    rigs: rigs.map(({ rig }) => rig.id),
    said: ({ key }) => decided.rigs.get(key),
    identity,
    readings: (id, taken) => beside(id, taken).readings,
  });
  return { run, frames, files, groups, takers, beside, identity, said, decided };
}

function partsOf(rigs: readonly Assembled[], id: RigId): Assembled {
  const found = rigs.find(({ rig }) => rig.id === id);
  if (!found) throw new RangeError('no-such-rig');
  return found;
}

/** What was decided now goes before what was accepted earlier. */
function saidFiles(
  run: RunState,
  files: readonly CameraFile[],
  decided: Decided,
): ReadonlyMap<MadeId, number | null> {
  const places = new Map(files.map((file, place) => [sameFile(file), place]));
  const accepted = [...run.files].map(
    ([made, file]) => [made, file && (places.get(sameFile(file)) ?? null)] as const,
  );
  return new Map([...accepted, ...decided.files]);
}

const sameFile = ({ name, bytes, time }: CameraFile): string =>
  JSON.stringify([name, bytes, time?.shownMs ?? null]);

/** Each rig's frames beside some files, weighed once. */
function remembered(
  run: RunState,
  frames: readonly LogFrame[],
  files: readonly CameraFile[],
  groups: readonly Written[],
  said: Weighed['said'],
  decided: Decided,
): Weighed['beside'] {
  const known = new Map<string, Beside>();
  const gone = new Set(said.values());
  return (rig, taken) => {
    const key = `${rig} ${taken.join()}`;
    const before = known.get(key);
    if (before) return before;
    const names = assemble(run.gear, rig)?.body.files;
    if (!names) throw new RangeError('no-such-rig');
    const all = rowsOf(rig, frames, run.clockFrames);
    const rows = all.filter(({ made }) => made === null || !said.has(made));
    const pictures = taken.flatMap((group) => groups[group]?.pictures ?? []);
    const free = pictures.filter((place) => !gone.has(place));
    const columns = {
      start: columnsOf(files, free, names, false),
      end: columnsOf(files, free, names, true),
    };
    const saidPairs = (writesEnd: boolean): Pair[] =>
      all.flatMap((row) => {
        const file = files[(row.made && said.get(row.made)) ?? -1];
        const openedS = file ? openedByFile(file, writesEnd) : null;
        return openedS === null ? [] : [{ row, openedS }];
      });
    const clock = decided.clocks.get(rig);
    const readings = readingsOf({
      rows,
      columns,
      said: { start: saidPairs(false), end: saidPairs(true) },
      clock: clock ? clockOf(clock, localOffsetS(run)) : null,
    });
    const weighed = { rows, columns, readings };
    known.set(key, weighed);
    return weighed;
  };
}

/** Seconds that local time was ahead of UTC when the outing began. */
export const localOffsetS = ({ startedAt }: RunState): number =>
  localSeconds(startedAt) - startedAt.wallMs / 1000;
