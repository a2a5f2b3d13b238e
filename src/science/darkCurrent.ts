import type {
  Doublings,
  ElectronDifference,
  ElectronsPerSecond,
  ElectronVolts,
  Kelvin,
  KelvinDifference,
  KelvinPerHour,
} from './sensorUnits.ts';
import type { Celsius, Ratio, Seconds } from './units.ts';

/*
 * Dark current against temperature. It doubles every so many K, and that doubling temperature is no
 * constant of nature: diffusion in the bulk goes with the whole band gap and doubles in 4.3 K at
 * 20 °C, generation in the depletion layer with half of it and doubles in 8.6 K; real sensors are a
 * mixture (Widenhorn et al. 2002, SPIE 4669, abstract; title and volume from memory).
 */

/** The Boltzmann constant in eV/K; SI, exact to the digits given. */
const BOLTZMANN = 8.617333262e-5;
const ZERO_CELSIUS = 273.15;

const kelvinOf = (at: Celsius): Kelvin => (at + ZERO_CELSIUS) as Kelvin;

/** The dark current at another temperature over the one at this, 2^(difference / doubling). */
export const darkCurrentRatio = (difference: KelvinDifference, doubling: KelvinDifference): Ratio =>
  (2 ** (difference / doubling)) as Ratio;

/**
 * The dark current at a temperature, from the one at a reference temperature. The same law as in
 * the camera simulator of the EMVA 1288 reference implementation, which takes 8 K.
 */
export const darkCurrentAt = (
  reference: { readonly rate: ElectronsPerSecond; readonly at: Celsius },
  at: Celsius,
  doubling: KelvinDifference,
): ElectronsPerSecond =>
  (reference.rate *
    darkCurrentRatio((at - reference.at) as KelvinDifference, doubling)) as ElectronsPerSecond;

/** The difference of temperatures that makes a ratio of dark currents, doubling x log2(ratio). */
export const differenceForRatio = (ratio: Ratio, doubling: KelvinDifference): KelvinDifference =>
  (doubling * Math.log2(ratio)) as KelvinDifference;

/**
 * The doubling temperature of an Arrhenius law with a prefactor T^power, ln 2 / (E/(k T²) +
 * power/T), in K. Derived.
 */
export const doublingTemperature = (
  at: Celsius,
  activation: ElectronVolts,
  power: number,
): KelvinDifference => {
  const kelvin = kelvinOf(at);
  return (Math.LN2 / (activation / (BOLTZMANN * kelvin ** 2) + power / kelvin)) as KelvinDifference;
};

/** The activation energy that a doubling temperature means without a prefactor. Derived. */
export const activationEnergy = (at: Celsius, doubling: KelvinDifference): ElectronVolts =>
  ((Math.LN2 * BOLTZMANN * kelvinOf(at) ** 2) / doubling) as ElectronVolts;

/** The ratio of dark currents from one temperature to another by an Arrhenius law. Derived. */
export const arrheniusRatio = (from: Celsius, to: Celsius, activation: ElectronVolts): Ratio =>
  Math.exp((activation / BOLTZMANN) * (1 / kelvinOf(from) - 1 / kelvinOf(to))) as Ratio;

/** Constants of the band gap of silicon in eV, eV/K and K, as four public detector codes have them. */
const GAP = { atZero: 1.1557, slope: 7.021e-4, offset: 1108 };

/** The band gap of silicon, in Varshni's form. */
export const siliconBandGap = (at: Kelvin): ElectronVolts =>
  (GAP.atZero - (GAP.slope * at ** 2) / (GAP.offset + at)) as ElectronVolts;

/**
 * The doubling temperature of generation in the depletion layer with a gap that falls with
 * temperature, from the slope of ln(T^1.5 exp(-gap / 2 k T)). Derived.
 */
export const depletionDoublingTemperature = (at: Celsius): KelvinDifference => {
  const t = kelvinOf(at);
  const gapSlope = (-GAP.slope * t * (2 * GAP.offset + t)) / (GAP.offset + t) ** 2;
  const slope =
    1.5 / t + siliconBandGap(t) / (2 * BOLTZMANN * t ** 2) - gapSlope / (2 * BOLTZMANN * t);
  return (Math.LN2 / slope) as KelvinDifference;
};

/** What a change of the air does to the dark current in a time, once the body has followed it. */
export const darkStopsFromAir = (
  rate: KelvinPerHour,
  over: Seconds,
  doubling: KelvinDifference,
): Doublings => ((rate * over) / 3600 / doubling) as Doublings;

/**
 * What an in-camera dark frame leaves of the dark signal, in e: negative where the later, warmer
 * dark frame takes away too much. Derived.
 *
 * @param rested the dark current of the rested body.
 */
export const inCameraDarkResidual = (
  light: { readonly factor: Ratio },
  dark: { readonly factor: Ratio },
  rested: ElectronsPerSecond,
  t: Seconds,
): ElectronDifference => ((light.factor - dark.factor) * rested * t) as ElectronDifference;
