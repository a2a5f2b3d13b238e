import { DEFAULT_REST } from '../../src/plan/newPlan.ts';
import { restOwed } from '../../src/plan/rest.ts';
import { averageAreas } from '../../src/science/areaAverage.ts';
import { areaStopsAtAspect } from '../../src/science/aspect.ts';
import * as darkCurrent from '../../src/science/darkCurrent.ts';
import * as drift from '../../src/science/drift.ts';
import * as dynamicRange from '../../src/science/dynamicRange.ts';
import * as electrons from '../../src/science/electrons.ts';
import * as heat from '../../src/science/heat.ts';
import * as heatFit from '../../src/science/heatFit.ts';
import * as intervals from '../../src/science/intervals.ts';
import { qFactor } from '../../src/science/metering.ts';
import { mulberry32, seed as seedOf } from '../../src/science/mulberry32.ts';
import * as noise from '../../src/science/noise.ts';
import * as noiseComparison from '../../src/science/noiseComparison.ts';
import * as photonTransfer from '../../src/science/photonTransfer.ts';
import * as quantiles from '../../src/science/quantiles.ts';
import { isRefusal, must, type Refusal } from '../../src/science/refusal.ts';
import * as repeats from '../../src/science/repeats.ts';
import * as rest from '../../src/science/sensorRest.ts';
import * as sensor from '../../src/science/sensorUnits.ts';
import * as thermalRange from '../../src/science/thermalRange.ts';
import { type Plane, TILE_SIDE, tiledNoise } from '../../src/science/tiles.ts';
import * as toneCurve from '../../src/science/toneCurve.ts';
import * as units from '../../src/science/units.ts';
import * as leaks from '../../src/science/varianceLeaks.ts';
import {
  type AdapterSet,
  adapter,
  number,
  type Outcome,
  optional,
  type Reader,
  text,
} from './adapter.ts';
import type { Entry } from './entry.ts';
import { blurred, camera, normal, type Sensor, withMover } from './simulation.ts';

const s = number('s', units.parseSeconds);
const span = number('s', units.parseDuration);
const minutes = number('min', (value) => units.parseDuration(60 * value));
const ratio = number('1', units.parseRatio);
const share = number('1', units.parseTransmittance);
const stops = number('stops', units.parseStops);
const mm = number('mm', units.parseMillimetres);
const count = number('1', units.parsePixels);
const area = number('mm2', sensor.parseSquareMillimetres);
const celsius = number('degC', units.parseCelsius);
const kelvins = number('K', sensor.parseKelvinDifference);
const doubling = number('K', sensor.parseDoublingTemperature);
const heatY = number('doublings', sensor.parseDoublings);
const eV = number('eV', sensor.parseElectronVolts);
const e = number('e', sensor.parseElectrons);
const darkRate = number('e/s', sensor.parseElectronsPerSecond);
const lxs = number('lx s', units.parseLuxSeconds);
const gain = number('DN/e', sensor.parseGain);
const deviation = number('DN', sensor.parseDeviation);
const variance = number('DN2', sensor.parseDnVariance);
const gradient = number('DN2/px2', sensor.parseDnVariance);
const codes = number('codes', sensor.parseCodes);
const srgb = number('1', toneCurve.parseSrgb);
const probability = number('1', quantiles.parseProbability);
const dof = number('1', quantiles.parseDegreesOfFreedom);
const snr = number('1', sensor.parseSnr);
const plain = number('1', (value) => value);
const plainElectrons = number('e', (value) => value);
const shift = number('px', sensor.parseShift);
const none = units.duration(0);

/** A list, each element through the reader of one. */
const list = <T>({ unit, read }: Reader<T>): Reader<readonly T[]> => ({
  unit,
  read: (raw) => {
    if (!Array.isArray(raw)) throw new Error(`${JSON.stringify(raw)} is no list`);
    const values = raw.map(read);
    return values.find(isRefusal) ?? (values as T[]);
  },
});

/** Goes on with a value, or hands its refusal on. */
const then = <T>(value: T | Refusal, use: (value: T) => Outcome): Outcome =>
  isRefusal(value) ? value : use(value);

/** The lowest and highest of a stated range. */
const ends = <T extends number>(unit: string, parse: (value: number) => T | Refusal) =>
  list(number(unit, parse));

/** The sheet's own names for the modes. */
const MODES: Readonly<Record<string, heat.HeatMode>> = {
  off: 'off',
  idle: 'idle',
  exp: 'exposing',
  live: 'live-view',
};

const segments: Reader<readonly heat.HeatSegment[]> = {
  unit: '[mode, s]',
  read: (raw) =>
    (raw as readonly (readonly [string, number])[]).map(([name, lasts]) => {
      const mode = MODES[name];
      if (mode === undefined) throw new Error(`unknown mode ${name}`);
      return { mode, lasts: must(units.parseSeconds(lasts)) };
    }),
};

/** A model with the plateaus that the sheet gives; the others at none. */
const modelOf = (
  tau: units.Seconds,
  plateaus: Partial<Record<heat.HeatMode, sensor.Doublings>>,
): heat.ThermalModel => ({
  tau,
  plateaus: {
    off: sensor.doublings(0),
    idle: sensor.doublings(0),
    exposing: sensor.doublings(0),
    'live-view': sensor.doublings(0),
    ...plateaus,
  },
});

/** What is stated of a body with the ranges of the sheet in place of its own. */
function rangeOf(of: {
  readonly tau: readonly units.Seconds[];
  readonly X_exp: readonly sensor.KelvinDifference[];
  readonly X_idle?: readonly sensor.KelvinDifference[];
  readonly Td: readonly sensor.KelvinDifference[];
}): thermalRange.ThermalRange {
  const within = <T extends number>(
    stated: thermalRange.Ranged<T>,
    [least, most]: readonly T[],
  ): thermalRange.Ranged<T> =>
    least === undefined || most === undefined ? stated : { ...stated, least, most };
  const { UNMEASURED } = thermalRange;
  return {
    ...UNMEASURED,
    tau: within(UNMEASURED.tau, of.tau),
    exposing: within(UNMEASURED.exposing, of.X_exp),
    idle: within(UNMEASURED.idle, of.X_idle ?? []),
    doubling: within(UNMEASURED.doubling, of.Td),
  };
}

const bounds = ({ least, most }: thermalRange.Ranged<number>): Outcome => [least, most];

const frame = { t: s, tau: s, y0: heatY, Y: heatY } as const;
const rhythm = { Y: heatY, t_exp: s, t_rest: span, tau: s } as const;
const rhythmOf = (i: {
  readonly Y: sensor.Doublings;
  readonly t_exp: units.Seconds;
  readonly t_rest: units.Seconds;
  readonly tau: units.Seconds;
}) => ({ exposing: i.Y, t: i.t_exp, rest: i.t_rest, tau: i.tau });
const resting = { y_end: heatY, Y_rest: heatY, Y_exp: heatY, t_next: s, tau: s } as const;
const three = { y1: heatY, y2: heatY, y3: heatY, dt: s } as const;
const threeOf = (i: {
  readonly y1: sensor.Doublings;
  readonly y2: sensor.Doublings;
  readonly y3: sensor.Doublings;
}) => ({ first: i.y1, second: i.y2, third: i.y3 });

const pixel = { S: e, dark: e, read: e } as const;
const counts = (i: {
  readonly S: sensor.Electrons;
  readonly dark: sensor.Electrons;
  readonly read: sensor.Electrons;
}): noise.PixelCounts => ({ signal: i.S, dark: i.dark, read: i.read });

/** The orders of the sheets, with spaces or without. */
const order = text('order', (raw): readonly drift.PairSide[] =>
  [...raw.replaceAll(' ', '')].map((side) => {
    if (side !== 'A' && side !== 'B') throw new Error(`unknown side ${side}`);
    return side;
  }),
);

/** The drifts of the sheet: c t, c t + d t², or one that settles with 4 min. */
const driftText = text('stops, t in min', (raw): ((at: units.Seconds) => units.Stops) => {
  if (raw === '1 - exp(-t/4)') return (at) => (1 - Math.exp(-at / 60 / 4)) as units.Stops;
  const terms = /^(-?[\d.]+) t(?: ([+-]) ([\d.]+) t\^2)?$/.exec(raw);
  if (!terms) throw new Error(`unknown drift ${raw}`);
  const linear = Number(terms[1]);
  const square = Number(`${terms[2] ?? ''}${terms[3] ?? 0}`);
  return (at) => (linear * (at / 60) + square * (at / 60) ** 2) as units.Stops;
});

const generator = text('text', (raw) => {
  if (!raw.startsWith('mulberry32(')) throw new Error(`unknown generator ${raw}`);
  return raw;
});
const words = text('text', (raw) => raw);
const mover = text('text', (raw) => {
  const found = /^add (\d+) DN to frame 1 in rows (\d+)\.\.(\d+), columns (\d+)\.\.(\d+)$/.exec(
    raw,
  );
  if (!found) throw new Error(`unknown mover ${raw}`);
  const [add, top, bottom, left, right] = found.slice(1).map(Number) as [
    number,
    number,
    number,
    number,
    number,
  ];
  return { add, rows: [top, bottom], columns: [left, right] } as const;
});
const seeded = {
  generator,
  seed: plain,
  mu: plainElectrons,
  read: plainElectrons,
  K: number('DN/e', (value) => value),
  offset: number('DN', (value) => value),
} as const;
interface Seeded {
  readonly seed: number;
  readonly mu: number;
  readonly read: number;
  readonly K: number;
  readonly offset: number;
}
const sensorOf = (i: Omit<Seeded, 'seed' | 'mu'>): Sensor => ({
  read: i.read,
  gain: i.K,
  offset: i.offset,
  rounded: false,
});

/** Two frames from one stream; the pattern's numbers are drawn first. */
const pairInputs = {
  ...seeded,
  pixels: optional(plain, null),
  frames: optional(plain, 2),
  mu2: optional(plainElectrons, null),
  prnu: optional(plain, null),
  prnu_order: optional(words, null),
  width: optional(plain, null),
  height: optional(plain, null),
  mover: optional(mover, null),
  tile: optional(
    number('px', (value) => value),
    TILE_SIDE,
  ),
} as const;

interface PairInputs extends Seeded {
  readonly pixels: number | null;
  readonly mu2: number | null;
  readonly prnu: number | null;
  readonly width: number | null;
  readonly height: number | null;
  readonly mover: Parameters<typeof withMover>[2] | null;
  readonly tile: number;
}

function framesOf(i: PairInputs): readonly [Float64Array, Float64Array] {
  if (i.tile !== TILE_SIDE) throw new Error(`tiles of ${i.tile}, ours have ${TILE_SIDE}`);
  const pixels = i.pixels ?? (i.width ?? 0) * (i.height ?? 0);
  const from = camera(i.seed);
  const pattern = i.prnu === null ? undefined : from.pattern(pixels, i.prnu);
  const first = from.frame(pixels, i.mu, sensorOf(i), pattern);
  const second = from.frame(pixels, i.mu2 ?? i.mu, sensorOf(i), pattern);
  return [i.mover && i.width ? withMover(first, i.width, i.mover) : first, second];
}

const planesOf = (i: PairInputs): readonly [Plane, Plane] => {
  const [first, second] = framesOf(i);
  if (i.width === null) throw new Error('a plane needs its width');
  return [
    { values: first, width: i.width },
    { values: second, width: i.width },
  ];
};

const levelOf = (first: Float64Array, second: Float64Array): photonTransfer.Level => ({
  mean: must(repeats.pairMean(first, second)),
  variance: must(repeats.twoFrameVariance(first, second)),
});

const transferInputs = {
  generator,
  seed: plain,
  pixels: plain,
  levels: list(plainElectrons),
  read: plainElectrons,
  K: number('DN/e', (value) => value),
  offset: number('DN', (value) => value),
  rounded: {
    unit: '1',
    read: (raw: unknown) => raw === true,
  },
  order: text('text', (raw) => {
    if (raw !== 'dark, dark, then each level twice') throw new Error(`unknown order ${raw}`);
    return raw;
  }),
} as const;

/** The levels of a photon transfer from one stream: dark, dark, then each level twice. */
function transferOf(i: {
  readonly seed: number;
  readonly pixels: number;
  readonly levels: readonly number[];
  readonly read: number;
  readonly K: number;
  readonly offset: number;
  readonly rounded: boolean;
}): { readonly dark: photonTransfer.Level; readonly gain: sensor.Gain | Refusal } {
  const from = camera(i.seed);
  const at = (mu: number) => {
    const taken = () => from.frame(i.pixels, mu, { ...sensorOf(i), rounded: i.rounded });
    const first = taken();
    return levelOf(first, taken());
  };
  const dark = at(0);
  return { dark, gain: photonTransfer.systemGain(dark, i.levels.map(at)) };
}

const LEVEL_95 = must(quantiles.parseProbability(0.95));

/** Where a name stands in the app. */
const PARAMETERS: Readonly<Record<string, { readonly unit: string; readonly value: number }>> = {
  tau: { unit: 's', value: thermalRange.UNMEASURED.tau.usual },
  Td: { unit: 'K', value: thermalRange.UNMEASURED.doubling.usual },
  X_exp: { unit: 'K', value: thermalRange.UNMEASURED.exposing.usual },
  X_live: { unit: 'K', value: thermalRange.UNMEASURED.liveView.usual },
  X_idle: { unit: 'K', value: thermalRange.UNMEASURED.idle.usual },
  D_20: { unit: 'e/s', value: thermalRange.DARK_CURRENT_AT_20.usual },
  e_per_um2_lxs: { unit: 'e/(um2 lx s)', value: electrons.USUAL_RESPONSE },
};

function parameterOf({ inputs }: Entry): { readonly unit: string; readonly value: number } {
  const name = String(inputs['name']?.value);
  const parameter = Object.hasOwn(PARAMETERS, name) ? PARAMETERS[name] : undefined;
  if (!parameter) throw new Error(`unknown parameter ${name}`);
  return parameter;
}

export const adapters: AdapterSet['adapters'] = {
  // Dark current against temperature
  dark_current: adapter({
    unit: 'e/s',
    inputs: { I_ref: darkRate, T_ref: celsius, T: celsius, Td: doubling },
    run: (i) => darkCurrent.darkCurrentAt({ rate: i.I_ref, at: i.T_ref }, i.T, i.Td),
  }),
  dark_current_ratio: adapter({
    unit: '1',
    inputs: { dT: kelvins, Td: doubling },
    run: (i) => darkCurrent.darkCurrentRatio(i.dT, i.Td),
  }),
  temperature_difference_for_ratio: adapter({
    unit: 'K',
    inputs: { ratio, Td: doubling },
    run: (i) => darkCurrent.differenceForRatio(i.ratio, i.Td),
  }),
  doubling_temperature_arrhenius: adapter({
    unit: 'K',
    inputs: { T: celsius, Ea: eV, n: plain },
    run: (i) => darkCurrent.doublingTemperature(i.T, i.Ea, i.n),
  }),
  doubling_temperature_depletion_shape: adapter({
    unit: 'K',
    inputs: { T: celsius },
    run: (i) => darkCurrent.depletionDoublingTemperature(i.T),
  }),
  silicon_band_gap: adapter({
    unit: 'eV',
    inputs: { T: number('K', sensor.parseKelvin) },
    run: (i) => darkCurrent.siliconBandGap(i.T),
  }),
  activation_energy_from_doubling: adapter({
    unit: 'eV',
    inputs: { T: celsius, Td: doubling },
    run: (i) => darkCurrent.activationEnergy(i.T, i.Td),
  }),
  dark_current_ratio_arrhenius: adapter({
    unit: '1',
    inputs: { T1: celsius, T2: celsius, Ea: eV },
    run: (i) => darkCurrent.arrheniusRatio(i.T1, i.T2, i.Ea),
  }),
  dark_stops_from_ambient: adapter({
    unit: 'stops',
    inputs: { rate: number('K/h', sensor.parseKelvinPerHour), dt: minutes, Td: doubling },
    run: (i) => darkCurrent.darkStopsFromAir(i.rate, i.dt, i.Td),
  }),
  in_camera_dark_residual: adapter({
    unit: 'e',
    inputs: { h_light: ratio, h_dark: ratio, dark_rate_cold: darkRate, t: s },
    run: (i) =>
      darkCurrent.inCameraDarkResidual(
        { factor: i.h_light },
        { factor: i.h_dark },
        i.dark_rate_cold,
        i.t,
      ),
  }),

  // Heat of one sensor
  heat_step: adapter({
    unit: 'doublings',
    inputs: { y0: heatY, Y: heatY, dt: span, tau: s },
    run: (i) => heat.heatAfter(i.y0, i.Y, i.dt, i.tau),
  }),
  heat_step_composition_gap: adapter({
    unit: 'doublings',
    inputs: { y0: heatY, Y: heatY, dt1: s, dt2: s, tau: s },
    run: (i) => {
      const model = modelOf(i.tau, { exposing: i.Y });
      const [twice, once] = [[i.dt1, i.dt2], [must(units.parseSeconds(i.dt1 + i.dt2))]].map(
        (steps) =>
          heat.heatThrough(
            model,
            i.y0,
            steps.map((lasts) => ({ mode: 'exposing', lasts })),
          ).end,
      );
      return must(heat.pairHeat([once as sensor.Doublings], [twice as sensor.Doublings]));
    },
  }),
  mid_exposure_heat: adapter({
    unit: 'doublings',
    inputs: frame,
    run: (i) => heat.midExposureHeat(i.y0, i.Y, i.t, i.tau),
  }),
  heat_factor: adapter({
    unit: '1',
    inputs: { y: heatY },
    run: (i) => heat.heatFactor(i.y),
  }),
  mean_heat_factor_over_exposure: adapter({
    unit: '1',
    inputs: frame,
    run: (i) => heat.meanHeatFactor(i.y0, i.Y, i.t, i.tau),
  }),
  mean_heat_factor_simpson: adapter({
    unit: '1',
    inputs: frame,
    run: (i) => heat.meanHeatFactorBySimpson(i.y0, i.Y, i.t, i.tau),
  }),
  settling_time_constants: adapter({
    unit: 's',
    inputs: { settled_after: s, remaining: share as Reader<units.Transmittance> },
    run: (i) => heat.settlingTimeConstant(i.settled_after, i.remaining as number as units.Share),
  }),
  cyclic_start_heat: adapter({
    unit: 'doublings',
    inputs: { ...rhythm, Y_rest: heatY },
    run: (i) => heat.cyclicStartHeat({ ...rhythmOf(i), resting: i.Y_rest }),
  }),
  heat_stops_first_to_settled: adapter({
    unit: 'stops',
    inputs: rhythm,
    run: (i) => heat.firstToSettled({ ...rhythmOf(i), resting: sensor.doublings(0) }),
  }),
  mid_exposure_heat_sequence: adapter({
    unit: 'doublings',
    inputs: {
      y0: heatY,
      segments,
      tau: s,
      Y_exp: heatY,
      Y_live: heatY,
      Y_idle: heatY,
      Y_off: heatY,
    },
    run: (i) =>
      heat.heatThrough(
        modelOf(i.tau, {
          exposing: i.Y_exp,
          'live-view': i.Y_live,
          idle: i.Y_idle,
          off: i.Y_off,
        }),
        i.y0,
        i.segments,
      ).mids,
  }),
  pair_heat_stops: adapter({
    unit: 'stops',
    inputs: { y_A: list(heatY), y_B: list(heatY) },
    run: (i) => heat.pairHeat(i.y_A, i.y_B),
  }),
  pair_heat_stops_range: adapter({
    unit: 'stops',
    inputs: {
      segments,
      tau: ends('s', units.parseSeconds),
      X_exp: ends('K', sensor.parseKelvinDifference),
      X_idle: ends('K', sensor.parseKelvinDifference),
      Td: ends('K', sensor.parseDoublingTemperature),
    },
    run: (i) =>
      bounds(
        thermalRange.overCorners(rangeOf(i), (model) => {
          const [first, second] = heat.heatThrough(model, sensor.doublings(0), i.segments).mids;
          return must(heat.pairHeat([first as sensor.Doublings], [second as sensor.Doublings]));
        }),
      ),
  }),
  rest_time_range: adapter({
    unit: 's',
    inputs: {
      t: s,
      ratio,
      tau: ends('s', units.parseSeconds),
      X_exp: ends('K', sensor.parseKelvinDifference),
      Td: ends('K', sensor.parseDoublingTemperature),
    },
    run: (i) =>
      bounds(
        thermalRange.overCorners(rangeOf(i), (model) =>
          must(rest.restAfterRested(model, { t: i.t, leadIn: [] }, i.ratio)),
        ),
      ),
  }),
  default_parameter: {
    unit: (entry) => parameterOf(entry).unit,
    run: (entry) => parameterOf(entry).value,
  },

  // Rests
  rest_time: adapter({
    unit: 's',
    inputs: { ...resting, y_mid_max: heatY },
    run: (i) =>
      rest.restNeeded(
        modelOf(i.tau, { exposing: i.Y_exp, off: i.Y_rest }),
        i.y_end,
        'off',
        { t: i.t_next, leadIn: [] },
        i.y_mid_max,
      ),
  }),
  rest_time_before_lead_in: adapter({
    unit: 's',
    inputs: { ...resting, Y_idle: heatY, t_idle: s, y_mid_max: heatY },
    run: (i) =>
      rest.restNeeded(
        modelOf(i.tau, { exposing: i.Y_exp, off: i.Y_rest, idle: i.Y_idle }),
        i.y_end,
        'off',
        { t: i.t_next, leadIn: [{ mode: 'idle', lasts: i.t_idle }] },
        i.y_mid_max,
      ),
  }),
  mid_exposure_heat_after_rest: adapter({
    unit: 'doublings',
    inputs: { ...resting, t_rest: span },
    run: (i) =>
      rest.midHeatAfterRest(
        modelOf(i.tau, { exposing: i.Y_exp, off: i.Y_rest }),
        i.y_end,
        'off',
        i.t_rest,
        { t: i.t_next, leadIn: [] },
      ),
  }),
  rest_common_practice: adapter({
    unit: 's',
    inputs: { t: s },
    run: (i) => restOwed({ ...DEFAULT_REST, offUpToS: none }, i.t, none),
  }),
  rest_common_practice_live_view: adapter({
    unit: 's',
    inputs: { min: s },
    run: (i) => {
      if (i.min !== rest.LEAST_REST_AFTER_LIVE_VIEW) throw new Error('another least rest');
      return rest.LEAST_REST_AFTER_LIVE_VIEW;
    },
  }),

  // A body's own heat
  heat_fit_time_constant: adapter({
    unit: 's',
    inputs: three,
    run: (i) => heatFit.fittedTimeConstant(threeOf(i), i.dt),
  }),
  heat_fit_plateau: adapter({
    unit: 'doublings',
    inputs: three,
    run: (i) => heatFit.fittedPlateau(threeOf(i)),
  }),
  quantisation_std: adapter({
    unit: 'K',
    inputs: { step: kelvins },
    run: (i) => heatFit.steppedUncertainty(i.step),
  }),

  // Light to electrons
  photons_per_lux_second: adapter({
    unit: '1/(um2 lx s)',
    inputs: { lambda: number('nm', (nm) => units.parseMicrometres(nm / 1000)) },
    run: (i) => electrons.photonsPerLuxSecond(i.lambda),
  }),
  photons_per_lux_second_blackbody: adapter({
    unit: '1/(um2 lx s)',
    inputs: {
      T: number('K', sensor.parseKelvin),
      from: number('nm', (nm) => units.parseMicrometres(nm / 1000)),
      to: number('nm', (nm) => units.parseMicrometres(nm / 1000)),
    },
    run: (i) => electrons.photonsPerLuxSecondOfBlackBody(i.T, i.from, i.to),
  }),
  exposure_constant_q: adapter({
    unit: '1',
    inputs: { T: share, v: share, theta: number('deg', units.parseDegrees) },
    run: (i) => qFactor(i.T, i.v, i.theta),
  }),
  midgrey_fraction_of_saturation: adapter({
    unit: '1',
    inputs: { k_mid: lxs, k_sat: lxs },
    run: (i) => electrons.midtoneShare(i.k_mid, i.k_sat),
  }),
  electrons_per_pixel: adapter({
    unit: 'e',
    inputs: {
      H: lxs,
      pixel_area: number('um2', units.parseSquareMicrometres),
      e_per_um2_lxs: number('e/(um2 lx s)', sensor.parseResponse),
    },
    run: (i) => electrons.electronsPerPixel(i.H, i.pixel_area, i.e_per_um2_lxs),
  }),

  // Predicted noise
  snr_per_pixel: adapter({
    unit: '1',
    inputs: pixel,
    run: (i) => noise.snrPerPixel(counts(i)),
  }),
  snr_at_output: adapter({
    unit: '1',
    inputs: { ...pixel, pixels: count, output_pixels: count },
    run: (i) => noise.snrAtOutput(counts(i), i.pixels, i.output_pixels),
  }),
  snr_loss_stops_when_pushed: adapter({
    unit: 'stops',
    inputs: { ...pixel, push: stops },
    run: (i) => noise.snrLostByPushing(counts(i), i.push),
  }),
  noise_change_from_dark_ratio: adapter({
    unit: 'stops',
    inputs: { ...pixel, ratio },
    run: (i) => noise.noiseFromDarkRatio(counts(i), i.ratio),
  }),
  dark_ratio_limit_for_noise: adapter({
    unit: '1',
    inputs: { phi: share, eps: number('stops', sensor.parseTolerance) },
    run: (i) => noise.darkRatioLimit(i.phi as number as units.Share, i.eps),
  }),
  in_camera_dark_noise_stops: adapter({
    unit: 'stops',
    inputs: pixel,
    run: (i) => noise.noiseOfDarkFrame(counts(i)),
  }),
  signal_for_snr: adapter({
    unit: 'e',
    inputs: { snr, dark: e, read: e, n: ratio },
    run: (i) => noise.signalForSnr(i.snr, i, i.n),
  }),
  exposure_advantage_stops: adapter({
    unit: 'stops',
    inputs: {
      S_A: e,
      dark_A: e,
      read_A: e,
      pixels_A: count,
      S_B: e,
      dark_B: e,
      read_B: e,
      pixels_B: count,
      output_pixels: count,
    },
    run: (i) =>
      noise.exposureAdvantage(
        { signal: i.S_A, dark: i.dark_A, read: i.read_A, pixels: i.pixels_A },
        { signal: i.S_B, dark: i.dark_B, read: i.read_B, pixels: i.pixels_B },
        i.output_pixels,
      ),
  }),
  area_gain_stops: adapter({
    unit: 'stops',
    inputs: { area_A: area, area_B: area },
    run: (i) => noise.areaGain(i.area_A, i.area_B),
  }),
  area_gain_stops_common_aspect: adapter({
    unit: 'stops',
    inputs: {
      w_A: mm,
      h_A: mm,
      w_B: mm,
      h_B: mm,
      aspect: text('w:h', (raw) => {
        const [w, h] = raw.split(':').map(Number);
        return units.parseRatio((w as number) / (h as number));
      }),
    },
    run: (i) =>
      areaStopsAtAspect({ width: i.w_B, height: i.h_B }, { width: i.w_A, height: i.h_A }, i.aspect),
  }),
  snr_gain_stops_shot_limited: adapter({
    unit: 'stops',
    inputs: { area_A: area, area_B: area },
    run: (i) => noise.snrGainOfArea(i.area_A, i.area_B),
  }),

  // Dynamic range
  emva_absolute_threshold: adapter({
    unit: 'photons',
    inputs: { sigma_y_dark: deviation, K: gain, QE: share },
    run: (i) => dynamicRange.absoluteThreshold(i.sigma_y_dark, i.K, i.QE as number as units.Share),
  }),
  emva_dynamic_range_stops: adapter({
    unit: 'stops',
    inputs: { sat: e, sigma_y_dark: deviation, K: gain },
    run: (i) => dynamicRange.pixelDynamicRange(i.sat, i.sigma_y_dark, i.K),
  }),
  emva_dark_noise_electrons: adapter({
    unit: 'e',
    inputs: { s2_y_dark: variance, K: gain },
    run: (i) => dynamicRange.darkNoise(i.s2_y_dark, i.K),
  }),
  emva_snr_max_db: adapter({
    unit: 'dB',
    inputs: { sat: e },
    run: (i) => dynamicRange.bestSnr(i.sat),
  }),
  dynamic_range_at_output: adapter({
    unit: 'stops',
    inputs: { sat: e, dark: e, read: e, pixels: count, output_pixels: count, snr_min: snr },
    run: (i) =>
      dynamicRange.outputDynamicRange(
        { saturation: i.sat, dark: i.dark, read: i.read },
        i.pixels,
        i.output_pixels,
        i.snr_min,
      ),
  }),
  first_excellent_snr_for_print: adapter({
    unit: '1',
    inputs: { P: number('pixels/cm', units.parseRatio) },
    run: (i) => dynamicRange.firstExcellentSnr(i.P),
  }),

  // Statistics
  chi_square_quantile: adapter({
    unit: '1',
    inputs: { p: probability, dof },
    run: (i) => quantiles.chiSquareQuantile(i.p, i.dof),
  }),
  f_quantile: adapter({
    unit: '1',
    inputs: { p: probability, dof1: dof, dof2: dof },
    run: (i) => quantiles.fQuantile(i.p, i.dof1, i.dof2),
  }),
  t_quantile: adapter({
    unit: '1',
    inputs: { p: probability, dof },
    run: (i) => quantiles.tQuantile(i.p, i.dof),
  }),
  relative_uncertainty_of_sd: adapter({
    unit: '1',
    inputs: { n: plain },
    run: (i) => intervals.deviationUncertainty(i.n),
  }),
  sd_interval_factors: adapter({
    unit: '1',
    inputs: { dof, level: probability },
    run: (i) => {
      const { low, high } = intervals.deviationFactors(i.dof, i.level);
      return [low, high];
    },
  }),
  sd_ratio_half_width_stops: adapter({
    unit: 'stops',
    inputs: { dof_A: dof, dof_B: dof, level: probability },
    run: (i) => intervals.deviationRatioHalfWidth(i.dof_A, i.dof_B, i.level),
  }),
  mean_interval_stops: adapter({
    unit: 'stops',
    inputs: { values: list(stops), level: probability },
    run: (i) =>
      then(intervals.meanInterval(i.values, i.level), ({ mean, low, high }) => [mean, low, high]),
  }),
  median_over_mean_of_tile_variance: adapter({
    unit: '1',
    inputs: { dof },
    run: (i) => intervals.medianOverMean(i.dof),
  }),
  sd_from_median_absolute_deviation: adapter({
    unit: 'DN',
    inputs: { mad: deviation },
    run: (i) => intervals.deviationFromMad(i.mad),
  }),

  // What is no noise
  variance_left_after_linear_shift: adapter({
    unit: '1',
    inputs: { fx: shift, fy: shift },
    run: (i) => leaks.varianceLeftAfterShift(i.fx, i.fy),
  }),
  registration_leak_variance: adapter({
    unit: 'DN2',
    inputs: {
      dx: shift,
      dy: shift,
      gx2: gradient,
      gy2: gradient,
    },
    run: (i) => leaks.shiftLeak({ across: i.dx, down: i.dy }, { across: i.gx2, down: i.gy2 }),
  }),
  brightness_leak_variance: adapter({
    unit: 'DN2',
    inputs: { g: ratio, texture_var: variance },
    run: (i) => leaks.brightnessLeak(i.g, i.texture_var),
  }),
  box_blur_then_reduce_sd: adapter({
    unit: '1',
    inputs: { blur: plain, reduce: plain },
    run: (i) => leaks.deviationAfterBlur(i.blur, i.reduce),
  }),

  // Rendered pictures
  srgb_to_linear: adapter({
    unit: '1',
    inputs: { V: srgb },
    run: (i) => toneCurve.srgbToLinear(i.V),
  }),
  srgb_slope: adapter({ unit: '1', inputs: { V: srgb }, run: (i) => toneCurve.srgbSlope(i.V) }),
  linear_relative_noise: adapter({
    unit: '1',
    inputs: { V: srgb, sigma_codes: codes },
    run: (i) => toneCurve.linearRelativeNoise(i.V, i.sigma_codes),
  }),
  input_referred_snr: adapter({
    unit: '1',
    inputs: { v1: codes, v2: codes, dH: stops, sigma: codes },
    run: (i) => toneCurve.inputReferredSnr(i.v1, i.v2, i.dH, i.sigma),
  }),

  // The comparison
  noise_of_A_relative_to_B: adapter({
    unit: 'stops',
    inputs: { sigma_A: deviation, mu_A: deviation, sigma_B: deviation, mu_B: deviation },
    run: (i) =>
      noiseComparison.noiseRelative(
        { deviation: i.sigma_A, mean: i.mu_A },
        { deviation: i.sigma_B, mean: i.mu_B },
      ),
  }),

  // Orders that cancel drift
  order_residual: adapter({
    unit: 'stops',
    inputs: { order, times: list(minutes), drift: driftText },
    run: (i) => drift.orderResidual(i.order, i.times, i.drift),
  }),
  order_residual_exponential_closed: adapter({
    unit: 'stops',
    inputs: { D: stops, q: ratio, order },
    run: (i) => drift.settlingResidual(i.order, i.D, i.q),
  }),
  order_residual_linear_average: adapter({
    unit: 'stops',
    inputs: { order, step: number('stops per frame', units.parseStops) },
    run: (i) => drift.linearAverageResidual(i.order, i.step),
  }),
  drift_free_weights: adapter({
    unit: '1',
    inputs: { order, times: list(minutes), degree: plain },
    run: (i) => drift.driftFreeWeights(i.order, i.times, i.degree),
  }),
  fade_within_frame_gain: adapter({
    unit: '1',
    inputs: { fade: number('stops/min', units.parseStopsPerMinute), t: minutes },
    run: (i) => drift.fadeWithinFrame(i.fade, i.t),
  }),

  // Simulated
  mulberry32_first: adapter({
    unit: '1',
    inputs: { seed: plain, count: plain },
    run: (i) => {
      const random = mulberry32(seedOf(i.seed));
      return Array.from({ length: i.count }, random);
    },
  }),
  box_muller_first: adapter({
    unit: '1',
    inputs: { seed: plain, count: plain },
    run: (i) => {
      const random = mulberry32(seedOf(i.seed));
      return Array.from({ length: i.count }, () => normal(random));
    },
  }),
  two_frame_variance: adapter({
    unit: 'DN2',
    inputs: pairInputs,
    run: (i) => repeats.twoFrameVariance(...framesOf(i)),
  }),
  two_frame_variance_scaled: adapter({
    unit: 'DN2',
    inputs: pairInputs,
    run: (i) => repeats.twoFrameVarianceScaled(...framesOf(i)),
  }),
  single_frame_variance: adapter({
    unit: 'DN2',
    inputs: pairInputs,
    run: (i) => repeats.singleFrameVariance(framesOf(i)[0]),
  }),
  pair_mean: adapter({
    unit: 'DN',
    inputs: pairInputs,
    run: (i) => repeats.pairMean(...framesOf(i)),
  }),
  tile_median_variance: adapter({
    unit: 'DN2',
    inputs: pairInputs,
    run: (i) => then(tiledNoise(...planesOf(i)), ({ medianVariance }) => medianVariance),
  }),
  tiles_kept: adapter({
    unit: 'tiles',
    inputs: pairInputs,
    run: (i) => then(tiledNoise(...planesOf(i)), ({ kept }) => kept),
  }),
  read_noise_estimate: adapter({
    unit: 'e',
    inputs: { ...pairInputs, K_known: number('1', sensor.parseGain) },
    run: (i) =>
      then(repeats.twoFrameVariance(...framesOf(i)), (dark) =>
        photonTransfer.readNoise(dark, i.K_known, false),
      ),
  }),
  system_gain_two_points: adapter({
    unit: 'DN/e',
    inputs: { ...pairInputs, dark_seed: plain },
    run: (i) =>
      photonTransfer.systemGain(levelOf(...framesOf({ ...i, seed: i.dark_seed, mu: 0 })), [
        levelOf(...framesOf(i)),
      ]),
  }),
  photon_transfer_gain: adapter({
    unit: 'DN/e',
    inputs: transferInputs,
    run: (i) => transferOf(i).gain,
  }),
  photon_transfer_read_noise: adapter({
    unit: 'e',
    inputs: transferInputs,
    run: (i) => {
      const transfer = transferOf(i);
      return then(transfer.gain, (of) =>
        photonTransfer.readNoise(transfer.dark.variance, of, i.rounded),
      );
    },
  }),
  sd: adapter({
    unit: '1',
    inputs: { generator, seed: plain, reduce: plain },
    run: (i) => {
      const side = 128;
      const values = blurred(camera(i.seed).normals(side ** 2), side);
      return then(averageAreas({ values, width: side }, i.reduce), (reduced) =>
        repeats.singleFrameDeviation(reduced.values),
      );
    },
  }),
  noise_of_A_relative_to_B_output: adapter({
    unit: 'stops',
    inputs: {
      generator,
      seed: plain,
      pixels: plain,
      order,
      mu_A: plainElectrons,
      read_A: plainElectrons,
      K_A: number('DN/e', (value) => value),
      n_A: number('sensor pixels per output pixel', units.parseRatio),
      mu_B: plainElectrons,
      read_B: plainElectrons,
      K_B: number('DN/e', (value) => value),
      n_B: number('sensor pixels per output pixel', units.parseRatio),
    },
    run: (i) => {
      const from = camera(i.seed);
      const rigs = {
        A: { mu: i.mu_A, read: i.read_A, K: i.K_A, offset: 0 },
        B: { mu: i.mu_B, read: i.read_B, K: i.K_B, offset: 0 },
      };
      const taken = i.order.map((side) => ({
        side,
        frame: from.frame(i.pixels, rigs[side].mu, sensorOf(rigs[side])),
      }));
      const measured = (side: drift.PairSide, perOutput: units.Ratio) => {
        const [first, second] = taken.filter((each) => each.side === side);
        if (!first || !second) throw new Error('two frames of each');
        return must(noiseComparison.measuredNoise(first.frame, second.frame, perOutput));
      };
      const { mean, low, high } = noiseComparison.noiseRelativeAtOutput(
        measured('A', i.n_A),
        measured('B', i.n_B),
        LEVEL_95,
      );
      return [mean, low, high];
    },
  }),
  interval_coverage_count: adapter({
    unit: 'of 400',
    inputs: {
      ...seeded,
      seed: optional(plain, 0),
      seeds: text('text', (raw) => raw.split('..').map(Number)),
      pixels: plain,
      level: probability,
    },
    run: (i) => {
      const [first, last] = i.seeds;
      const runs = Array.from({ length: 1 + (last as number) - (first as number) }, (_, index) =>
        camera((first as number) + index),
      );
      const held = intervals.deviationFactors(
        must(quantiles.parseDegreesOfFreedom(i.pixels - 1)),
        i.level,
      );
      return runs.filter((from) => {
        const one = from.frame(i.pixels, i.mu, sensorOf(i));
        const other = from.frame(i.pixels, i.mu, sensorOf(i));
        const measured = Math.sqrt(must(repeats.twoFrameVariance(one, other)));
        const truth = i.K * i.read;
        return measured * held.low <= truth && truth <= measured * held.high;
      }).length;
    },
  }),
};

export const withoutUse: AdapterSet['withoutUse'] = {};
