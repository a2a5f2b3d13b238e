import type { CameraFile } from '../../outing/cameraFile.ts';
import { HAND_TIMING_S } from '../../outing/openTime.ts';
import type { Cause, KnownOrUnknown } from '../../plan/causes.ts';
import { stopsBetweenFNumbers, stopsBetweenIsos } from '../../science/exposure.ts';
import { type Seconds, type Stops, seconds, stops } from '../../science/units.ts';
import type { LogFrame } from '../frames.ts';

/*
 * How each cause of a pair is known, and how wide. What stands on a dial counts as exact: by how much
 * a body strays from its marks is its offset, and has its width there.
 */

/** How a figure is known. The weakest of what it is made of gives it its mark. */
export const KNOWN_BY = ['measured', 'logged', 'predicted', 'unknown'] as const;
export type KnownBy = (typeof KNOWN_BY)[number];

/** The weaker of two marks. */
export const weaker = (a: KnownBy, b: KnownBy): KnownBy =>
  KNOWN_BY.indexOf(a) > KNOWN_BY.indexOf(b) ? a : b;

/** One sigma of an offset found on a wall: a third of a third stop (our choice). */
export const OFFSET_SIGMA: Stops = stops(0.05);
/** One sigma of a transmission as it is stated for a lens: the next f-stop of its T-stop (our choice). */
export const TRANSMISSION_SIGMA: Stops = stops(0.05);
/** So many sigmas hold nine times in ten, as elsewhere in the app. */
const SIGMAS_IN_NINE_OF_TEN = 1.6;

/** A file's figure repeats a mark within the rounding of marks: half a third stop. */
const MARK_ROUNDING: Stops = stops(1 / 6);
/** A file's time repeats the time that is reckoned with, or its mark, within so much (our choice). */
const TIME_REPEATS: Stops = stops(0.02);

const near = (a: number, b: number, within: number): boolean =>
  Math.abs(Math.log2(a / b)) <= within;

/** Seconds that a time's mark reads: '1/10' or '64'. */
function secondsOfMark(mark: string): Seconds | null {
  const [above = '', below = '1'] = mark.split('/');
  const value = Number(above) / Number(below);
  return Number.isFinite(value) && value > 0 ? seconds(value) : null;
}

function repeatsTime({ settings, exact, openTime }: LogFrame, file: Seconds): boolean {
  if (!settings || !exact) return false;
  const width = handSigma({ exact, openTime }) ?? 0;
  if (near(file, exact.t, TIME_REPEATS + SIGMAS_IN_NINE_OF_TEN * width)) return true;
  const mark = settings.time.kind === 'dial' ? secondsOfMark(settings.time.mark) : null;
  return openTime.from === 'dial' && mark !== null && near(file, mark, TIME_REPEATS);
}

/**
 * How a frame's own setting is known: measured where its file says the same as the log; logged where
 * there is no file, it says nothing, or it says something else that nobody has taken yet.
 */
export function frameKnownBy(
  cause: Extract<Cause, 'time' | 'aperture' | 'iso'>,
  frame: LogFrame,
  file: CameraFile | null | undefined,
): KnownBy {
  const { exact } = frame;
  if (!exact || !file) return 'logged';
  const says = {
    time: () => file.exposureS !== null && repeatsTime(frame, file.exposureS),
    aperture: () =>
      file.fNumber !== null &&
      Math.abs(stopsBetweenFNumbers(file.fNumber, exact.n)) <= MARK_ROUNDING,
    iso: () => file.iso !== null && Math.abs(stopsBetweenIsos(file.iso, exact.s)) <= MARK_ROUNDING,
  }[cause]();
  return says ? 'measured' : 'logged';
}

/**
 * One sigma of the time a shutter was open, in stops: of a time taken by hand its 0.3 s, taken to hold
 * nine times in ten; nothing for what the body timed. Null where only a wall clock bridged it, which
 * may have been set meanwhile.
 */
export function handSigma({ exact, openTime }: Pick<LogFrame, 'exact' | 'openTime'>): Stops | null {
  if (openTime.from !== 'hand' || !exact) return stops(0);
  if (openTime.certainty === 'wall') return null;
  return (HAND_TIMING_S / SIGMAS_IN_NINE_OF_TEN / exact.t / Math.LN2) as Stops;
}

/** How a cause is known that belongs to the rigs or the sky. */
export function causeKnownBy(
  cause: Extract<Cause, 'offset' | 'transmission' | 'fade'>,
  difference: KnownOrUnknown,
): KnownBy {
  if (!difference.known) return 'unknown';
  if (cause === 'offset') return 'measured';
  if (cause === 'transmission') return 'logged';
  return difference.estimate?.from === 'readings' ? 'measured' : 'predicted';
}
