import { type Refusal, refuse } from './refusal.ts';
import type {
  CropRatio,
  Degrees,
  FNumber,
  Micrometres,
  Millimetres,
  Pixels,
  Ratio,
  Seconds,
  TimeLimit,
} from './units.ts';

/*
 * Stars drawn into trails by the turning Earth. On a wide frame use the declination nearest the
 * celestial equator that the frame holds.
 */

/** Turns of the Earth against the stars in a day of 86400 s. Source: ERFA eraEra00, to double precision. */
const TURNS_PER_DAY = 1.002737811911354;

/** How fast the sky turns, in arcseconds per second of time: 15.0410672. */
export const SKY_RATE = ((360 * 3600 * TURNS_PER_DAY) / 86400) as Ratio;

const RADIANS_PER_ARCSECOND = Math.PI / (180 * 3600);
const NO_LIMIT = Number.POSITIVE_INFINITY as TimeLimit;

/** The cosine of a declination; zero at the pole. Refuses one beyond the poles. */
function cosine(declination: Degrees): number | Refusal {
  if (Math.abs(declination) > 90) return refuse('declination-out-of-range');
  // The cosine of a rounded right angle is not quite zero; the pole is.
  return Math.abs(declination) === 90 ? 0 : Math.cos((declination * Math.PI) / 180);
}

/**
 * The length of a star's trail on the sensor in µm. Derived. Refuses a declination beyond the
 * poles ('declination-out-of-range').
 */
export function trailLength(
  focal: Millimetres,
  t: Seconds,
  declination: Degrees,
): Micrometres | Refusal {
  const cos = cosine(declination);
  if (typeof cos !== 'number') return cos;
  return (1000 * focal * SKY_RATE * t * cos * RADIANS_PER_ARCSECOND) as Micrometres;
}

/** The length of a star's trail in pixels; refuses like `trailLength`. */
export function trailPixels(
  focal: Millimetres,
  pitch: Micrometres,
  t: Seconds,
  declination: Degrees,
): Pixels | Refusal {
  const length = trailLength(focal, t, declination);
  return typeof length === 'number' ? ((length / pitch) as Pixels) : length;
}

/**
 * The longest time in seconds that keeps a trail within so many pixels; no limit at the pole.
 * Refuses like `trailLength`.
 */
export function timeForTrail(
  focal: Millimetres,
  pitch: Micrometres,
  within: Ratio,
  declination: Degrees,
): TimeLimit | Refusal {
  const cos = cosine(declination);
  if (typeof cos !== 'number') return cos;
  if (cos === 0) return NO_LIMIT;
  return ((within * pitch) / (1000 * focal * SKY_RATE * cos * RADIANS_PER_ARCSECOND)) as TimeLimit;
}

/**
 * The rule that divides a number (500, 400, 300) by the focal length, in seconds. `crop` is the
 * 36 x 24 mm diagonal over the body's. It equalises trails as parts of the frame and allows
 * about six pixels of 6 µm. Common practice, no source.
 */
export const timeByDivision = (rule: Ratio, crop: CropRatio, focal: Millimetres): TimeLimit =>
  (rule / (crop * focal)) as TimeLimit;

/**
 * The rule that adds blur by aperture and focal length to the blur by pixels, in seconds,
 * k (16.9 N + 0.1 f + 13.7 p) / (f cos dec). Common practice, no source. Refuses like
 * `trailLength`.
 */
export function timeByThreeTerms(
  n: FNumber,
  focal: Millimetres,
  pitch: Micrometres,
  k: Ratio,
  declination: Degrees,
): TimeLimit | Refusal {
  const cos = cosine(declination);
  if (typeof cos !== 'number') return cos;
  if (cos === 0) return NO_LIMIT;
  return ((k * (16.9 * n + 0.1 * focal + 13.7 * pitch)) / (focal * cos)) as TimeLimit;
}
