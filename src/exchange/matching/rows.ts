import type { RigId } from '../../gear/ids.ts';
import type { LogFrame } from '../../log/frames.ts';
import { isShort } from '../../outing/exposure.ts';
import type { EventId, MadeId } from '../../outing/ids.ts';
import type { Instant } from '../../outing/instant.ts';
import type { RunState } from '../../outing/state.ts';
import { CLOCK_FRAME_SIGMA_S, LATE_SIGMA_S, TAKEN_SIGMA_S, TAP_SIGMA_S } from './evidence.ts';

/** Nobody releases again sooner (our choice). */
const WRITTEN_AFTER_S = 0.5;

/** An exposure in stops of each setting; NaN where it is not known. */
export interface Exposure {
  readonly time: number;
  readonly aperture: number;
  readonly iso: number;
}

export const exposureOf = (
  t: number | null | undefined,
  n: number | null | undefined,
  s: number | null | undefined,
): Exposure => ({
  time: t ? Math.log2(t) : Number.NaN,
  aperture: n ? 2 * Math.log2(n) : Number.NaN,
  iso: s ? Math.log2(s) : Number.NaN,
});

/** Something that the log says a rig exposed: a frame, or the clock on the screen. */
export interface Row {
  /** Null for a clock frame. */
  readonly made: MadeId | null;
  readonly clockFrame: EventId | null;
  /** When it opened by the phone's local time, as seconds counted as if they were UTC. */
  readonly localS: number;
  readonly lengthS: number;
  readonly sigmaS: number;
  readonly exposure: Exposure;
  /** Whether the exposure was recorded, not only planned. */
  readonly recorded: boolean;
  readonly number: number | null;
}

/** The phone's local time, as seconds counted as if they were UTC. */
export const localSeconds = ({ wallMs, offsetMin }: Instant): number =>
  wallMs / 1000 + offsetMin * 60;

const frameRow = (frame: LogFrame): Row => {
  const { exact, planned } = frame;
  const { n, t, s } = exact ?? planned.exact;
  const oneTap = frame.leadInS === 0 && isShort(planned.exact.t);
  return {
    made: frame.id,
    clockFrame: null,
    localS: localSeconds(frame.opened),
    lengthS: t,
    sigmaS: oneTap ? TAKEN_SIGMA_S : TAP_SIGMA_S,
    exposure: exposureOf(t, n, s),
    recorded: exact !== null,
    number: frame.fileNumber,
  };
};

/** All that a rig exposed, in the order of time. */
export function rowsOf(
  rig: RigId,
  frames: readonly LogFrame[],
  clockFrames: RunState['clockFrames'],
): readonly Row[] {
  const clocks = clockFrames
    .filter((each) => each.rig === rig)
    .map(
      ({ id, at }): Row => ({
        made: null,
        clockFrame: id,
        localS: localSeconds(at),
        lengthS: 0,
        sigmaS: CLOCK_FRAME_SIGMA_S,
        exposure: exposureOf(null, null, null),
        recorded: false,
        number: null,
      }),
    );
  const rows = withLateTaps(frames.filter((frame) => frame.rig === rig).map(frameRow));
  return [...rows, ...clocks].sort((a, b) => a.localS - b.localS);
}

/** Where a tap follows another sooner than an exposure takes, both may have come at any time. */
const withLateTaps = (rows: readonly Row[]): readonly Row[] =>
  rows.map((row, place) => {
    const [before, after] = [rows[place - 1], rows[place + 1]];
    return (before && isTooSoon(before, row)) || (after && isTooSoon(row, after))
      ? { ...row, sigmaS: Math.max(row.sigmaS, LATE_SIGMA_S) }
      : row;
  });

/** One tap says that an exposure is over, a start that it begins. */
const isTooSoon = (first: Row, second: Row): boolean =>
  second.localS - first.localS <
  (second.sigmaS === TAKEN_SIGMA_S ? second.lengthS : first.lengthS) + WRITTEN_AFTER_S;
