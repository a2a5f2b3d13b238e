import {
  type DialPosition,
  fNumberPositions,
  isoPositions,
  type TimePosition,
  timePositions,
} from '../science/dials.ts';
import { isRefusal, type Refusal, refuse } from '../science/refusal.ts';
import type { FNumber, Iso } from '../science/units.ts';
import type { Body } from './body.ts';
import type { Lens } from './lens.ts';
import type { Exact, Settings } from './settings.ts';

/** Everything that can be dialled on a rig. */
export interface Positions {
  /** Wide to narrow. */
  readonly fNumbers: readonly DialPosition<FNumber>[];
  /** Short to long. */
  readonly times: readonly TimePosition[];
  /** Low to high. */
  readonly isos: readonly DialPosition<Iso>[];
}

/**
 * Remembers the positions of each dial: a log asks for the same few dials once a
 * frame. Profiles are never changed in place, so the dial itself is the key.
 */
function remembered<D extends object, P>(compute: (dial: D) => P): (dial: D) => P {
  const known = new WeakMap<D, P>();
  return (dial) => {
    const positions = known.get(dial) ?? compute(dial);
    known.set(dial, positions);
    return positions;
  };
}

const fNumbersOf = remembered(fNumberPositions);
const timesOf = remembered(timePositions);
const isosOf = remembered(isoPositions);

/**
 * The dial positions of a body with a lens on it.
 *
 * @returns the dials' own refusal for a profile that was never parsed.
 */
export function positionsOf(body: Body, lens: Lens): Positions | Refusal {
  const fNumbers = fNumbersOf(lens.fNumber);
  const times = timesOf(body.time);
  const isos = isosOf(body.iso);
  if (isRefusal(fNumbers)) return fNumbers;
  if (isRefusal(times)) return times;
  if (isRefusal(isos)) return isos;
  return { fNumbers, times, isos };
}

/**
 * The values behind what is dialled on a rig; bulb seconds are taken as they are.
 *
 * @returns a refusal if a mark is not on the rig's dials ('f-mark-not-on-lens',
 * 'time-mark-not-on-body', 'iso-mark-not-on-body').
 */
export function exactSettings(
  rig: { readonly body: Body; readonly lens: Lens },
  settings: Settings,
): Exact | Refusal {
  const positions = positionsOf(rig.body, rig.lens);
  if (isRefusal(positions)) return positions;
  const n = positions.fNumbers.find(({ mark }) => mark === settings.fMark)?.exact;
  const s = positions.isos.find(({ mark }) => mark === settings.isoMark)?.exact;
  const { time } = settings;
  const t =
    time.kind === 'bulb'
      ? time.seconds
      : positions.times.find(({ mark }) => mark === time.mark)?.exact;
  if (n === undefined) return refuse('f-mark-not-on-lens');
  if (t === undefined) return refuse('time-mark-not-on-body');
  if (s === undefined) return refuse('iso-mark-not-on-body');
  return { n, t, s };
}
