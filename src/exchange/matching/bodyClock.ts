import type { RigId } from '../../gear/ids.ts';
import type { BodyClock } from '../../outing/cameraFile.ts';
import { duration, type Seconds } from '../../science/units.ts';
import { type Beside, columnsFor } from './beside.ts';
import type { Clock } from './clock.ts';
import type { Reading } from './sequence.ts';

/** A clock as the journal keeps it, for the matching. */
export const clockOf = (
  { aheadS, sigmaS, gainsSPerHour, atMs }: BodyClock,
  offsetS: number,
): Clock => ({
  aheadS,
  sigmaS,
  gainsSPerHour,
  centreS: atMs / 1000 + offsetS,
  writesEnd: false,
});

/** A clock of a reading as the journal keeps it; null where no file of it says a time. */
export function clockRead(
  rig: RigId,
  beside: Beside,
  reading: Reading,
  offsetS: number,
): BodyClock | null {
  const { clock, taken } = reading;
  const { rows } = beside;
  const columns = columnsFor(beside, reading);
  if (clock === null) return null;
  const paired = (row: number): boolean => typeof columns[taken[row] as number]?.file === 'number';
  if (!rows.some((_, row) => paired(row))) return null;
  const byFrame = rows.some((row, place) => row.clockFrame !== null && paired(place));
  return {
    rig,
    aheadS: clock.aheadS as Seconds,
    sigmaS: duration(clock.sigmaS),
    gainsSPerHour: clock.gainsSPerHour as Seconds,
    atMs: Math.round((clock.centreS - offsetS) * 1000),
    from: byFrame ? 'clock-frame' : 'sequence',
  };
}

/**
 * How a rig's clock stood by the cheapest reading. Its scatter holds every other reading's clock as
 * far as that is likely: start and end of exposures alone may be told apart by nothing.
 */
export function bodyClockOf(
  rig: RigId,
  beside: Beside,
  offsetS: number,
  by: 'by-hand' | null,
): BodyClock | null {
  const [best] = beside.readings;
  const found = best && clockRead(rig, beside, best, offsetS);
  if (!best?.clock || !found) return null;
  let [sum, square] = [0, 0];
  for (const { clock, cost } of beside.readings) {
    if (clock === null) continue;
    const likely = Math.exp((best.cost - cost) / 2);
    sum += likely;
    square += likely * (clock.sigmaS ** 2 + (clock.aheadS - best.clock.aheadS) ** 2);
  }
  return { ...found, sigmaS: duration(Math.sqrt(square / sum)), from: by ?? found.from };
}
