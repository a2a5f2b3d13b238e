import { ev100 } from './exposure.ts';
import { isRefusal, type Refusal } from './refusal.ts';
import { cos4Loss } from './transmission.ts';
import {
  type CandelasPerM2,
  type Degrees,
  type Ev,
  type FNumber,
  type IncidentConstant,
  type Iso,
  incidentConstant,
  type Lux,
  type LuxSeconds,
  type Magnification,
  type Ratio,
  type ReflectedConstant,
  reflectedConstant,
  type Seconds,
  type Transmittance,
} from './units.ts';

/*
 * EV100 is not luminance: state K or C beside any figure derived here. Source of the meter
 * equations: ISO 2720:1974, of speeds and q: ISO 12232:2006, both through the colour-hdri
 * documentation.
 */

/** K of most meters, cd s ISO/m² (ISO 2720 recommends 10.6 to 13.4). */
export const USUAL_K: ReflectedConstant = reflectedConstant(12.5);

/** C of a flat receptor, lx s ISO (ISO 2720 recommends 240 to 400). */
export const USUAL_C: IncidentConstant = incidentConstant(250);

/** The luminance in cd/m² for which a setting would be nominal, K N² / (t S). */
export const luminanceForSettings = (
  n: FNumber,
  t: Seconds,
  s: Iso,
  k: ReflectedConstant,
): CandelasPerM2 => luminanceFromEv100(ev100(n, t, s), k);

/** The illuminance in lx for which a setting would be nominal, C N² / (t S). */
export const illuminanceForSettings = (n: FNumber, t: Seconds, s: Iso, c: IncidentConstant): Lux =>
  illuminanceFromEv100(ev100(n, t, s), c);

/** The luminance in cd/m² of a scene at an EV100, (K/100) 2^EV100. */
export const luminanceFromEv100 = (scene: Ev, k: ReflectedConstant): CandelasPerM2 =>
  ((k / 100) * 2 ** scene) as CandelasPerM2;

/** The illuminance in lx of a scene at an EV100, (C/100) 2^EV100. */
export const illuminanceFromEv100 = (scene: Ev, c: IncidentConstant): Lux =>
  ((c / 100) * 2 ** scene) as Lux;

/** The setting EV that a luminance asks for at a speed, log2(L S / K). */
export const evFromLuminance = (l: CandelasPerM2, s: Iso, k: ReflectedConstant): Ev =>
  (Math.log2(l) + Math.log2(s / k)) as Ev;

/** The setting EV that an illuminance asks for at a speed, log2(E S / C). */
export const evFromIlluminance = (e: Lux, s: Iso, c: IncidentConstant): Ev =>
  (Math.log2(e) + Math.log2(s / c)) as Ev;

/**
 * The part q of the scene's luminance that reaches the sensor at f/1, (pi/4) tau v cos⁴(theta).
 * ISO 12232 takes tau 0.9, v 0.98, theta 10 degrees: 0.65. Refuses a field angle outside
 * 0 to 90 degrees ('field-angle-out-of-range').
 */
export function qFactor(
  tau: Transmittance,
  vignetting: Transmittance,
  theta: Degrees,
): Ratio | Refusal {
  const loss = cos4Loss(theta);
  return isRefusal(loss) ? loss : (((Math.PI / 4) * tau * vignetting * 2 ** -loss) as Ratio);
}

/**
 * The photometric exposure on the sensor in lx s, q L t / (N (1 + m/P))² + flare.
 */
export const focalPlaneExposure = (light: {
  readonly luminance: CandelasPerM2;
  readonly n: FNumber;
  readonly t: Seconds;
  readonly q: Ratio;
  readonly flare: LuxSeconds;
  readonly magnification: Magnification;
  readonly pupil: Ratio;
}): LuxSeconds => {
  const effective = light.n * (1 + light.magnification / light.pupil);
  return ((light.q * light.luminance * light.t) / effective ** 2 + light.flare) as LuxSeconds;
};

/** The exposure index of an arithmetic mean exposure on the sensor, 10 / H. */
export const exposureIndex = (h: LuxSeconds): Iso => (10 / h) as Iso;

/** The speed by highlight clipping, 78 / H at saturation. Source: ISO 12232, from memory. */
export const saturationSpeed = (h: LuxSeconds): Iso => (78 / h) as Iso;

/** The luminance in cd/m² that clips at a nominal setting, 78 / (100 q) 2^EV100. */
export const saturationLuminance = (scene: Ev, q: Ratio): CandelasPerM2 =>
  ((78 / (100 * q)) * 2 ** scene) as CandelasPerM2;

/**
 * The exposure on the sensor in lx s that a meter gives the mid-tone, q K / S. It is not 10/S:
 * with K 12.5 and q 0.65 the two are 0.30 stop apart.
 */
export const meteredMidtone = (s: Iso, k: ReflectedConstant, q: Ratio): LuxSeconds =>
  ((q * k) / s) as LuxSeconds;
