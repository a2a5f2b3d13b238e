import type { RigId } from '../../gear/ids.ts';
import type { CameraFile } from '../../outing/cameraFile.ts';
import type { MadeId } from '../../outing/ids.ts';
import type { Cause, KnownOrUnknown } from '../../plan/causes.ts';
import type { Differences, Figure } from '../../plan/differences.ts';
import type { FrameKey } from '../../plan/ids.ts';
import { type Stops, stops } from '../../science/units.ts';
import type { LogFrame } from '../frames.ts';
import {
  causeKnownBy,
  frameKnownBy,
  handSigma,
  type KnownBy,
  OFFSET_SIGMA,
  TRANSMISSION_SIGMA,
  weaker,
} from './knownBy.ts';

/** A figure in stops with its width. */
export interface Wide extends Figure {
  /** One sigma, of what has a width that is known. */
  readonly sigma: Stops;
  /** Causes in it whose width nobody knows: the figure may be wider than it says. */
  readonly unsure: readonly Cause[];
}

/** One cause of a pair as the ledger has it. */
export interface CauseFigure {
  readonly cause: Cause;
  readonly difference: KnownOrUnknown;
  /** One sigma; null where it is unknown, or of unknown width. */
  readonly sigma: Stops | null;
  readonly by: KnownBy;
  /** Whether it is in the sum. */
  readonly counted: boolean;
}

/** A pair in stops: what it was worked out from, its sums, and how wide they are. */
export interface PairFigures {
  readonly causes: readonly CauseFigure[];
  /** Brightness as rendered; + where the other is the brighter. */
  readonly sum: Wide;
  /** The brightening that brings the other to its reference: minus the sum. */
  readonly evenUp: Wide;
  readonly perArea: Wide;
  readonly wholeSensor: Wide;
  readonly commonCrop: Wide;
}

/** A frame in a pair with what it takes in its figure: above zero for the other rig, in all 1. */
export interface WeightedFrame {
  readonly frame: LogFrame;
  readonly file: CameraFile | null;
  readonly weight: number;
}

/** The frames that count, each with its weight in a pair. */
export const weightedFrames = (
  frames: readonly LogFrame[],
  files: ReadonlyMap<MadeId, CameraFile | null>,
  weights: ReadonlyMap<FrameKey, number>,
): readonly WeightedFrame[] =>
  frames.flatMap((frame) => {
    const weight = frame.counts ? weights.get(frame.planned.key) : undefined;
    return weight === undefined ? [] : [{ frame, file: files.get(frame.id) ?? null, weight }];
  });

/** The weights of one pass alone: plain means over the repeats of either side. */
export function weightsOfPass(
  frames: readonly LogFrame[],
  weights: ReadonlyMap<FrameKey, number>,
  pass: number,
  reference: RigId,
): ReadonlyMap<FrameKey, number> {
  const own = frames.filter(
    ({ counts, planned }) => counts && planned.pass === pass && weights.has(planned.key),
  );
  const references = own.filter(({ rig }) => rig === reference).length;
  return new Map(
    own.map(({ rig, planned }) => [
      planned.key,
      rig === reference ? -1 / references : 1 / (own.length - references),
    ]),
  );
}

const root = (squares: number): Stops => Math.sqrt(squares) as Stops;

/** Times taken by hand err each by itself. */
function timeSigma(frames: readonly WeightedFrame[]): Stops | null {
  let squares = 0;
  for (const { frame, weight } of frames) {
    const sigma = handSigma(frame);
    if (sigma === null) return null;
    squares += (weight * sigma) ** 2;
  }
  return root(squares);
}

function sigmaOf(
  cause: Cause,
  difference: KnownOrUnknown,
  frames: readonly WeightedFrame[],
): Stops | null {
  if (!difference.known) return null;
  switch (cause) {
    case 'time':
      return timeSigma(frames);
    case 'aperture':
    case 'iso':
      return stops(0);
    case 'offset':
      // One wall for each rig: repeats and passes share its error.
      return root(2 * OFFSET_SIGMA ** 2);
    case 'transmission':
      return root(2 * TRANSMISSION_SIGMA ** 2);
    case 'fade':
      return difference.estimate?.sigma ?? null;
  }
}

function knownBy(
  cause: Cause,
  difference: KnownOrUnknown,
  frames: readonly WeightedFrame[],
): KnownBy {
  if (cause !== 'time' && cause !== 'aperture' && cause !== 'iso') {
    return causeKnownBy(cause, difference);
  }
  if (!difference.known) return 'unknown';
  return frames
    .map(({ frame, file }) => frameKnownBy(cause, frame, file))
    .reduce(weaker, 'measured');
}

function wide(figure: Figure, causes: readonly CauseFigure[]): Wide {
  const within = causes.filter(({ difference }) => difference.known);
  return {
    ...figure,
    sigma: root(within.reduce((sum, { sigma }) => sum + (sigma ?? 0) ** 2, 0)),
    unsure: within.filter(({ sigma }) => sigma === null).map(({ cause }) => cause),
  };
}

const LIGHT: readonly Cause[] = ['time', 'aperture', 'transmission', 'fade'];

/** A pair's differences with how they are known and how wide they are. */
export function pairFigures(
  differences: Differences,
  frames: readonly WeightedFrame[],
): PairFigures {
  const causes = differences.lines.map(
    ({ cause, difference, counted }): CauseFigure => ({
      cause,
      difference,
      counted,
      sigma: sigmaOf(cause, difference, frames),
      by: knownBy(cause, difference, frames),
    }),
  );
  const sum = wide(
    differences.sum,
    causes.filter(({ counted }) => counted),
  );
  const ofLight = causes.filter(({ cause }) => LIGHT.includes(cause));
  const { perArea, wholeSensor, commonCrop } = differences.light;
  return {
    causes,
    sum,
    evenUp: { ...sum, stops: stops(-sum.stops) },
    perArea: wide(perArea, ofLight),
    wholeSensor: wide(wholeSensor, ofLight),
    commonCrop: wide(commonCrop, ofLight),
  };
}
