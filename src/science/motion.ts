import { isRefusal, type Refusal } from './refusal.ts';
import type {
  Distance,
  MetresPerSecond,
  Micrometres,
  Millimetres,
  Pixels,
  Seconds,
} from './units.ts';
import { magnificationAt } from './view.ts';

/**
 * How far a subject that crosses the view is drawn out during an exposure, in pixels, v t m / p.
 * Derived. Refuses a subject at or inside the focal length ('focus-inside-focal-length').
 */
export function motionBlur(
  speed: MetresPerSecond,
  subject: Distance,
  focal: Millimetres,
  pitch: Micrometres,
  t: Seconds,
): Pixels | Refusal {
  const m = magnificationAt(focal, subject);
  // Metres to micrometres.
  return isRefusal(m) ? m : (((1e6 * speed * t * m) / pitch) as Pixels);
}
