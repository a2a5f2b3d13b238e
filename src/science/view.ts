import { diagonal, type SensorFormat } from './formats.ts';
import { type Refusal, refuse } from './refusal.ts';
import {
  type Arcseconds,
  type Degrees,
  type Distance,
  type Magnification,
  type Micrometres,
  type Millimetres,
  magnification,
  type Pixels,
  type PixelsPerDegree,
  type Ratio,
  type Share,
} from './units.ts';

/*
 * Rectilinear lenses, thin-lens model. The factor 1 + m holds for a lens that focuses as a
 * whole; one with inner focusing shortens its focal length instead. Source of the formulas:
 * Jacobson, Photographic Lenses FAQ, Q5-Q6.
 */

const DEGREES_PER_RADIAN = 180 / Math.PI;
const ARCSECONDS_PER_RADIAN = 3600 * DEGREES_PER_RADIAN;

/** Focused at infinity. */
export const AT_INFINITY: Magnification = magnification(0);

/** What a rig sees: its format behind a lens, focused at a magnification. */
export interface Framing {
  readonly format: SensorFormat;
  readonly focal: Millimetres;
  readonly magnification: Magnification;
}

/**
 * The magnification at a subject distance from the front principal plane, f / (s - f); zero at
 * infinity. Refuses a subject at or inside the focal length ('focus-inside-focal-length').
 */
export function magnificationAt(focal: Millimetres, subject: Distance): Magnification | Refusal {
  if (subject <= focal) return refuse('focus-inside-focal-length');
  return (focal / (subject - focal)) as Magnification;
}

/** The tangent of half the angle that an extent on the sensor covers. */
const halfTangent = (extent: Millimetres, focal: Millimetres, m: Magnification): number =>
  extent / (2 * focal * (1 + m));

/** The angle of view in degrees over an extent of the sensor: a width, a height, a diagonal. */
export const angleOfView = (
  extent: Millimetres,
  focal: Millimetres,
  m: Magnification = AT_INFINITY,
): Degrees => (2 * Math.atan(halfTangent(extent, focal, m)) * DEGREES_PER_RADIAN) as Degrees;

/** The angles of view of a framing in degrees, on both axes and over the diagonal. */
export const anglesOfView = ({ format, focal, magnification: m }: Framing) => ({
  horizontal: angleOfView(format.width, focal, m),
  vertical: angleOfView(format.height, focal, m),
  diagonal: angleOfView(diagonal(format), focal, m),
});

/** The distance from pixel to pixel in µm: width over pixels across. */
export const pixelPitch = (width: Millimetres, across: Pixels): Micrometres =>
  ((1000 * width) / across) as Micrometres;

/**
 * Pixels per degree on the lens axis, at infinity. Off the axis a rectilinear lens samples finer,
 * by 1/cos² radially: not to be multiplied by an angle of view.
 */
export const pixelsPerDegree = (focal: Millimetres, pitch: Micrometres): PixelsPerDegree =>
  ((1000 * focal) / pitch / DEGREES_PER_RADIAN) as PixelsPerDegree;

/** The angle of one pixel on the lens axis in arcseconds, at infinity. */
export const angleOfPixel = (focal: Millimetres, pitch: Micrometres): Arcseconds =>
  ((ARCSECONDS_PER_RADIAN * pitch) / (1000 * focal)) as Arcseconds;

/**
 * Where the reference's edges fall in this rig's frame, from the centre, as parts of the half
 * width and half height: 1 is the edge, below 1 inside, above 1 out of the frame. Both rigs stand
 * at one spot and point along one axis.
 */
export function edgesWithin(
  reference: Framing,
  rig: Framing,
): { readonly horizontal: Ratio; readonly vertical: Ratio } {
  const extent = (side: 'width' | 'height', { format, focal, magnification: m }: Framing) =>
    halfTangent(format[side], focal, m);
  return {
    horizontal: (extent('width', reference) / extent('width', rig)) as Ratio,
    vertical: (extent('height', reference) / extent('height', rig)) as Ratio,
  };
}

/**
 * The part of each frame that both show, for two rigs at one spot and along one axis. Reckoned in
 * tangents, so that it holds for wide lenses.
 */
export function commonCrop(
  first: Framing,
  second: Framing,
): { readonly ofFirst: Share; readonly ofSecond: Share } {
  const inFirst = edgesWithin(second, first);
  const inSecond = edgesWithin(first, second);
  return {
    ofFirst: (Math.min(1, inFirst.horizontal) * Math.min(1, inFirst.vertical)) as Share,
    ofSecond: (Math.min(1, inSecond.horizontal) * Math.min(1, inSecond.vertical)) as Share,
  };
}

/**
 * How far a subject moves in the frame between two parallel lens axes, in pixels, when both rigs
 * are pointed at something else: base x f x |1/s - 1/a| / p. Zero for a subject as far away as
 * the point aimed at. Derived; the image distance is taken as the focal length, which understates
 * by a part m of the figure (under 1 % beyond 100 focal lengths).
 */
export const parallaxPixels = (between: {
  /** From lens axis to lens axis. */
  readonly base: Millimetres;
  readonly subject: Distance;
  /** The distance of the landmark that both rigs are pointed at. */
  readonly aimedAt: Distance;
  readonly focal: Millimetres;
  readonly pitch: Micrometres;
}): Pixels =>
  ((1000 * between.base * between.focal * Math.abs(1 / between.subject - 1 / between.aimedAt)) /
    between.pitch) as Pixels;
