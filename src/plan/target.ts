import type { Assembled } from '../gear/rig.ts';
import { addStops, type Stops, stops } from '../science/units.ts';
import type { Hold } from './plan.ts';

/** The settings that a hold ties together. */
export interface Target {
  readonly time: Stops;
  readonly aperture: Stops;
  readonly iso: Stops;
}

/**
 * By how much the other lens must be opened for the reference's entrance pupil, in stops:
 * 2 log2(f1/f2), since f1/N1 = f2/N2.
 *
 * Why equal pupils, and why by the real focal lengths: a point out of focus is seen as a disc whose
 * angle is pupil x |1/s - 1/x|, whatever the format. Two pictures of one scene from one spot,
 * brought to a matched angle (the wider view cropped to the narrower) and viewed at equal size, show
 * equal depth of field exactly when their pupils are equal. The framing rule of a set makes no
 * difference to that: it says which edges are brought together, and a subject drawn at one size is
 * blurred by one angle. F-number x crop ratio says the same only when the focal lengths are true
 * equivalents (f2/f1 = crop ratio): 45 mm on 43.8 x 32.9 against 35 mm on 36 x 24 wants f/7.8 for
 * f/10 by pupil, f/7.9 by diagonal.
 *
 * Derived from the thin lens with pupil magnification 1; as in Jacobson, Photographic Lenses FAQ.
 */
const stopsToEqualPupil = (reference: Assembled, other: Assembled): Stops =>
  stops(2 * Math.log2(reference.lens.focalMm / other.lens.focalMm));

/**
 * What the hold wants the differences between the two rigs to be, in stops; null when the settings
 * are free.
 *
 * 'same-picture' asks for an equal pupil, an equal time, and an ISO lower by what the pupil's
 * f-number brightens: then framing, depth of field, light on the common crop, time and brightness
 * agree. With true equivalents that is N2 = N1/c, S2 = S1/c², c = reference diagonal over this one.
 */
export function targetOf(hold: Hold, reference: Assembled, other: Assembled): Target | null {
  switch (hold.kind) {
    case 'same-exposure':
      return { time: stops(0), aperture: stops(0), iso: stops(0) };
    case 'same-iso-and-time': {
      const { rule, plus } = hold.aperture;
      const aperture =
        rule === 'same-depth-of-field' ? addStops(stopsToEqualPupil(reference, other), plus) : plus;
      return { time: stops(0), aperture, iso: stops(0) };
    }
    case 'same-picture': {
      const aperture = stopsToEqualPupil(reference, other);
      return { time: stops(0), aperture, iso: stops(-aperture) };
    }
    case 'free':
      return null;
  }
}
