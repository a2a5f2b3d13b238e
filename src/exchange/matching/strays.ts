import type { RigId } from '../../gear/ids.ts';
import { assemble } from '../../gear/rig.ts';
import { columnsFor } from './beside.ts';
import { exposureCost, shownFor } from './clock.ts';
import { columnsOf } from './columns.ts';
import { WRONG_SETTING } from './evidence.ts';
import { suitsWell } from './identity.ts';
import type { Row } from './rows.ts';
import type { Reading } from './sequence.ts';
import { takenBy } from './takers.ts';
import type { FileChoice } from './types.ts';
import { cheapest, type Weighed } from './weighed.ts';

/** More than this nobody chooses from. */
const MOST_STRAYS = 6;

/**
 * For a row without a file: files without a frame that another rig took, or none. Where no serial
 * number is said, files of two bodies may have got into one group.
 */
export function straysFor(
  weighed: Weighed,
  rig: RigId,
): (row: Row, reading: Reading) => readonly FileChoice[] {
  const { files, groups } = weighed;
  const takers = cheapest(weighed).rigs;
  const used = usedFiles(weighed);
  const places = groups.flatMap((group, place) =>
    group.serial !== null || takers[place] === rig || namesAnother(weighed, rig, group)
      ? []
      : group.pictures.filter((file) => !used.has(file)),
  );
  const names = assemble(weighed.run.gear, rig)?.body.files;
  if (!names || places.length === 0) return () => [];
  const columns = {
    start: columnsOf(files, places, names, false),
    end: columnsOf(files, places, names, true),
  };
  return (row, { clock }) =>
    columns[clock?.writesEnd ? 'end' : 'start']
      .filter(({ file }) => file !== null)
      .filter((column) => exposureCost(row, column) < WRONG_SETTING)
      .map(({ file, fromS }) => ({
        choice: { file, cost: 0 },
        away: clock === null ? 0 : Math.abs(fromS - shownFor(row, clock)),
      }))
      .sort((a, b) => a.away - b.away)
      .slice(0, MOST_STRAYS)
      .map(({ choice }) => choice);
}

/** The files that a frame or a clock frame has, by the cheapest answer. */
function usedFiles(weighed: Weighed): ReadonlySet<number> {
  const used = new Set<number>();
  for (const rig of weighed.run.plan.rigs) {
    const beside = weighed.beside(rig, takenBy(rig, cheapest(weighed).rigs));
    const [best] = beside.readings;
    if (!best) continue;
    const columns = columnsFor(beside, best);
    for (const place of best.taken) {
      const file = columns[place]?.file ?? null;
      if (file !== null) used.add(file);
    }
  }
  return used;
}

/** Whether files are so much another rig's that nobody asks about them. */
const namesAnother = (
  { run, identity }: Weighed,
  rig: RigId,
  group: Weighed['groups'][number],
): boolean => run.plan.rigs.some((other) => other !== rig && suitsWell(identity(other, group)));
