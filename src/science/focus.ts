import { isRefusal, type Refusal, refuse } from './refusal.ts';
import {
  type Distance,
  distance,
  type FNumber,
  type Micrometres,
  type Millimetres,
  type Ratio,
  ratio,
} from './units.ts';

/*
 * Thin lens, pupil magnification 1, distances from the lens (principal plane); exact within that
 * model. Derived from image-side conjugates; the same forms are attributed to Greenleaf (1950)
 * pp. 25-27, from memory.
 */

const INFINITY: Distance = distance(Number.POSITIVE_INFINITY);

/** A subject distance within this part of the hyperfocal distance counts as at it. */
const AT_HYPERFOCAL = 1e-9;

/**
 * The share of the diagonal that still looks sharp at the usual viewing size: the diagonal over
 * 1500, or over 1730 on a stricter view. Common practice, no source.
 */
export const CIRCLE_DIVISOR: Readonly<Record<'usual' | 'strict', Ratio>> = {
  usual: ratio(1500),
  strict: ratio(1730),
};

/**
 * The circle of confusion in mm as a share of the diagonal. Equal depth of field across formats
 * needs one divisor for all of them. Common practice, no source.
 */
export const circleOfConfusion = (diagonal: Millimetres, divisor: Ratio): Millimetres =>
  (diagonal / divisor) as Millimetres;

/**
 * The circle of confusion in mm as a number of pixels (2 is usual, 1.5 to 3 are seen), for
 * comparing at pixel level; it breaks equivalence between formats. Common practice, no source.
 */
export const circleFromPixels = (pitch: Micrometres, pixelsAcross: Ratio): Millimetres =>
  ((pitch * pixelsAcross) / 1000) as Millimetres;

/** The entrance pupil in mm: focal length over f-number. */
export const entrancePupil = (focal: Millimetres, n: FNumber): Millimetres =>
  (focal / n) as Millimetres;

/** The f-number that gives an entrance pupil at a focal length. */
export const fNumberOfPupil = (focal: Millimetres, pupil: Millimetres): FNumber =>
  (focal / pupil) as FNumber;

/** The hyperfocal distance in mm from the lens, f²/(N c) + f. */
export const hyperfocal = (focal: Millimetres, n: FNumber, circle: Millimetres): Millimetres =>
  (hyperfocalSimple(focal, n, circle) + focal) as Millimetres;

/**
 * The hyperfocal distance in mm for subjects much farther than the focal length, f²/(N c).
 * Source: Smith, Modern Optical Engineering, p. 187, eq. 9.11.
 */
export const hyperfocalSimple = (
  focal: Millimetres,
  n: FNumber,
  circle: Millimetres,
): Millimetres => (focal ** 2 / (n * circle)) as Millimetres;

/** A lens focused on a subject. */
export interface Focused {
  readonly focal: Millimetres;
  readonly n: FNumber;
  /** The circle of confusion; name its convention beside every figure. */
  readonly circle: Millimetres;
  /** From the lens; infinity allowed. */
  readonly subject: Distance;
  /** The lens's closest focus, measured like `subject`; null = unknown. */
  readonly closest: Distance | null;
}

/** Refuses a subject that the lens cannot be focused on. */
function unreachable({ focal, subject, closest }: Focused): Refusal | null {
  if (subject <= focal) return refuse('focus-inside-focal-length');
  if (closest !== null && subject < closest) return refuse('focus-inside-closest');
  return null;
}

/**
 * The near limit of depth of field in mm from the lens, s(H - f)/(H + s - 2f); H - f at infinity.
 * Refuses a subject inside the focal length ('focus-inside-focal-length') or the lens's closest
 * focus ('focus-inside-closest').
 */
export function nearLimit(lens: Focused): Millimetres | Refusal {
  const refusal = unreachable(lens);
  if (refusal) return refusal;
  const { focal, n, circle, subject } = lens;
  const h = hyperfocal(focal, n, circle);
  if (subject === INFINITY) return (h - focal) as Millimetres;
  return ((subject * (h - focal)) / (h + subject - 2 * focal)) as Millimetres;
}

/**
 * The far limit of depth of field in mm from the lens, s(H - f)/(H - s); infinite from the
 * hyperfocal distance on. Refuses like the near limit.
 */
export function farLimit(lens: Focused): Distance | Refusal {
  const refusal = unreachable(lens);
  if (refusal) return refusal;
  const { focal, n, circle, subject } = lens;
  const h = hyperfocal(focal, n, circle);
  // Rounding at the hyperfocal distance itself would turn infinity into a huge finite number.
  if (subject >= h * (1 - AT_HYPERFOCAL)) return INFINITY;
  return ((subject * (h - focal)) / (h - subject)) as Millimetres;
}

/** Both limits and the hyperfocal distance in mm from the lens; refuses like the near limit. */
export function depthOfField(
  lens: Focused,
):
  | { readonly near: Millimetres; readonly far: Distance; readonly hyperfocal: Millimetres }
  | Refusal {
  const near = nearLimit(lens);
  const far = farLimit(lens);
  if (isRefusal(near)) return near;
  if (isRefusal(far)) return far;
  return { near, far, hyperfocal: hyperfocal(lens.focal, lens.n, lens.circle) };
}

/**
 * The near limit for subjects much farther than the focal length, H s/(H + s), in mm.
 * Source: Jacobson, Photographic Lenses FAQ.
 */
export const nearLimitSimple = (h: Millimetres, subject: Millimetres): Millimetres =>
  ((h * subject) / (h + subject)) as Millimetres;

/**
 * The far limit for subjects much farther than the focal length, H s/(H - s), in mm; infinite
 * from the hyperfocal distance on. Source: Jacobson, Photographic Lenses FAQ.
 */
export const farLimitSimple = (h: Millimetres, subject: Millimetres): Distance =>
  subject >= h * (1 - AT_HYPERFOCAL) ? INFINITY : (((h * subject) / (h - subject)) as Millimetres);

/**
 * The blur disc of a point at `point` with the lens focused at `subject`, in mm on the sensor:
 * f²|x - s| / (N x (s - f)). Zero in focus. Refuses a subject at or inside the focal length
 * ('focus-inside-focal-length').
 */
export function blurDisc(
  focal: Millimetres,
  n: FNumber,
  subject: Distance,
  point: Distance,
): Millimetres | Refusal {
  if (subject <= focal) return refuse('focus-inside-focal-length');
  // |x - s| / (x (s - f)) as |1 - s/x| / (s - f), and f²/(N x) in the limit of infinite s.
  const perFocal =
    subject === INFINITY ? 1 / point : Math.abs(1 - subject / point) / (subject - focal);
  return ((focal ** 2 / n) * perFocal) as Millimetres;
}

/**
 * The subject distance from the lens in mm for one read from the sensor plane (a focus scale, a
 * stated closest focus), (D + sqrt(D² - 4 f D)) / 2; thin lens without hiatus. Refuses less than
 * four focal lengths ('sensor-distance-too-short'), where no lens can focus.
 */
export function distanceFromLens(fromSensor: Distance, focal: Millimetres): Distance | Refusal {
  if (fromSensor < 4 * focal) return refuse('sensor-distance-too-short');
  if (fromSensor === INFINITY) return INFINITY;
  return ((fromSensor + Math.sqrt(fromSensor ** 2 - 4 * focal * fromSensor)) / 2) as Millimetres;
}
