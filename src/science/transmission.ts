import type { SensorFormat } from './formats.ts';
import { diagonal } from './formats.ts';
import { type Refusal, refuse } from './refusal.ts';
import type {
  Degrees,
  FNumber,
  Magnification,
  Millimetres,
  Ratio,
  Stops,
  Transmittance,
} from './units.ts';

/** What a lens does to the light on its way: glass, field angle, extension. */

/** The T-number, N / sqrt(tau). Use it in place of N, never together with tau. */
export const tNumber = (n: FNumber, tau: Transmittance): FNumber => (n / Math.sqrt(tau)) as FNumber;

/** The light lost in the glass in stops, -log2 tau: zero or more. */
export const transmissionLoss = (tau: Transmittance): Stops => -Math.log2(tau) as Stops;

/**
 * Natural vignetting at a field angle in stops, -4 log2 cos(theta): zero or more. Real lenses
 * differ both ways. Refuses an angle outside 0 to 90 degrees ('field-angle-out-of-range').
 */
export function cos4Loss(theta: Degrees): Stops | Refusal {
  if (theta < 0 || theta >= 90) return refuse('field-angle-out-of-range');
  return (-4 * Math.log2(Math.cos((theta * Math.PI) / 180))) as Stops;
}

/** The field angle in degrees of the frame's corner at infinity, for a symmetric lens. */
export const cornerFieldAngle = (format: SensorFormat, focal: Millimetres): Degrees =>
  ((Math.atan(diagonal(format) / (2 * focal)) * 180) / Math.PI) as Degrees;

/** The f-number that counts for exposure when focused close, N (1 + m/P). */
export const effectiveFNumber = (n: FNumber, m: Magnification, pupil: Ratio): FNumber =>
  (n * (1 + m / pupil)) as FNumber;

/** The light lost by extension in stops, 2 log2(1 + m/P): zero or more. */
export const extensionLoss = (m: Magnification, pupil: Ratio): Stops =>
  (2 * Math.log2(1 + m / pupil)) as Stops;
