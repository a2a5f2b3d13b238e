import { darkFrameS } from '../gear/darkFrame.ts';
import type { Assembled } from '../gear/rig.ts';
import { airyDiameter } from '../science/diffraction.ts';
import { CIRCLE_DIVISOR, circleOfConfusion, entrancePupil, hyperfocal } from '../science/focus.ts';
import { aspectStops, diagonal } from '../science/formats.ts';
import {
  type Degrees,
  type Distance,
  distance,
  type Micrometres,
  type Millimetres,
  micrometres,
  type Pixels,
  type PixelsPerDegree,
  type Ratio,
  type Share,
  type Stops,
} from '../science/units.ts';
import { anglesOfView, commonCrop, parallaxPixels, pixelPitch } from '../science/view.ts';
import type { Side } from './causes.ts';
import { formatOf, framingRatio, samplingOf, viewOf } from './framing.ts';
import type { Framing, Plan } from './plan.ts';

/** A figure of each side. */
export interface Both<T> {
  readonly reference: T;
  readonly other: T;
}

/** How far the nearest subject shifts between two rigs side by side. */
export interface Parallax {
  /** Of the other rig. */
  readonly px: Pixels;
  readonly warns: boolean;
}

/** What sets two frames apart besides their brightness, each in its own unit, never in the sum. */
export interface Besides {
  /** Other minus reference. */
  readonly angleOfView: { readonly horizontal: Degrees; readonly vertical: Degrees };
  /** The part of each frame that both show. */
  readonly commonCrop: Both<Share>;
  /** By the set's framing rule: above 1 where the other takes in more (or has more pixels a degree). */
  readonly framingRatio: Ratio;
  readonly pixelsPerDegree: Both<PixelsPerDegree>;
  /** Entrance pupil of the other over the reference's: 1 = equal depth of field at matched angle. */
  readonly pupilRatio: Ratio;
  /**
   * Depth of field of the other over the reference's, whole frames at equal viewing size, for a
   * subject well inside the hyperfocal distance: the hyperfocal distances' inverse ratio.
   */
  readonly depthOfFieldRatio: Ratio;
  /** Circle of confusion: diagonal / 1500 (common practice, no source). */
  readonly hyperfocalMm: Both<Millimetres>;
  /** Diameter of the Airy disc in the rig's own pixels, at 0.55 µm. */
  readonly airyPx: Both<Pixels>;
  /** Exposure time of the other over the reference's: how much longer whatever moves is drawn out. */
  readonly timeRatio: Ratio;
  /** Null unless the plan states how far the axes stand apart and how near the nearest subject is. */
  readonly parallax: Parallax | null;
  /** What the diagonal crop ratio overstates of the other's light over the whole sensor. */
  readonly diagonalOverstates: Stops;
  /** Whether the body closes its shutter for a dark frame of its own after this exposure. */
  readonly takesDarkFrame: Both<boolean>;
  readonly bitDepth: Both<number>;
}

/** Green light, where the eye and most sensors are keenest. */
const WAVELENGTH: Micrometres = micrometres(0.55);

/** The nearest subject that counts may move by this much (design's own limit). */
const PARALLAX_WARNS_ABOVE_PX = 2;

/** Both rigs are pointed at a landmark far away. */
const FAR: Distance = distance(Number.POSITIVE_INFINITY);

const pitchOf = ({ body }: Assembled): Micrometres => pixelPitch(body.widthMm, body.pixelsWide);

function parallaxOf(other: Assembled, plan: Parallaxed): Parallax | null {
  const { nearestSubjectMm, axesApartMm } = plan;
  if (nearestSubjectMm === null || axesApartMm === null) return null;
  const px = parallaxPixels({
    base: axesApartMm,
    subject: nearestSubjectMm,
    aimedAt: FAR,
    focal: other.lens.focalMm,
    pitch: pitchOf(other),
  });
  return { px, warns: px > PARALLAX_WARNS_ABOVE_PX };
}

/** What a plan states about the stand of its rigs. */
export type Parallaxed = Pick<Plan, 'nearestSubjectMm' | 'axesApartMm'>;

/**
 * What sets two frames apart besides their brightness, planned or made. Focused far; real focal
 * lengths, sensors and pixels.
 */
export function besidesOf(
  reference: Side,
  other: Side,
  framing: Framing,
  plan: Parallaxed,
): Besides {
  const views = { reference: viewOf(reference.assembled), other: viewOf(other.assembled) };
  const angles = { reference: anglesOfView(views.reference), other: anglesOfView(views.other) };
  const common = commonCrop(views.reference, views.other);
  const both = <T>(figure: (side: Side) => T): Both<T> => ({
    reference: figure(reference),
    other: figure(other),
  });
  const pupil = both(({ assembled, exact }) => entrancePupil(assembled.lens.focalMm, exact.n));
  const hyperfocalMm = both(({ assembled: { body, lens }, exact }) =>
    hyperfocal(
      lens.focalMm,
      exact.n,
      circleOfConfusion(diagonal(formatOf(body)), CIRCLE_DIVISOR.usual),
    ),
  );
  return {
    angleOfView: {
      horizontal: (angles.other.horizontal - angles.reference.horizontal) as Degrees,
      vertical: (angles.other.vertical - angles.reference.vertical) as Degrees,
    },
    commonCrop: { reference: common.ofFirst, other: common.ofSecond },
    framingRatio: framingRatio(framing, reference.assembled, other.assembled),
    pixelsPerDegree: both(({ assembled }) => samplingOf(assembled)),
    pupilRatio: (pupil.other / pupil.reference) as Ratio,
    depthOfFieldRatio: (hyperfocalMm.reference / hyperfocalMm.other) as Ratio,
    hyperfocalMm,
    airyPx: both(
      ({ assembled, exact }) => (airyDiameter(WAVELENGTH, exact.n) / pitchOf(assembled)) as Pixels,
    ),
    timeRatio: (other.exact.t / reference.exact.t) as Ratio,
    parallax: parallaxOf(other.assembled, plan),
    diagonalOverstates: aspectStops(
      formatOf(reference.assembled.body),
      formatOf(other.assembled.body),
    ),
    takesDarkFrame: both(
      ({ assembled, exact }) => darkFrameS(assembled.body.darkFrame, exact.t) > 0,
    ),
    bitDepth: both(({ assembled }) => assembled.body.bits.depth),
  };
}
