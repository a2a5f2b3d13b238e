import * as apex from '../../src/science/apex.ts';
import { exactFNumber, exactIso, exactTime, parseStep } from '../../src/science/dialSeries.ts';
import { fNumberPositions, nearestPosition, type Step } from '../../src/science/dials.ts';
import * as diffraction from '../../src/science/diffraction.ts';
import * as exif from '../../src/science/exif.ts';
import * as exposure from '../../src/science/exposure.ts';
import * as filters from '../../src/science/filters.ts';
import * as focus from '../../src/science/focus.ts';
import * as formats from '../../src/science/formats.ts';
import * as lightBudget from '../../src/science/lightBudget.ts';
import { wallTime } from '../../src/science/longExposure.ts';
import * as metering from '../../src/science/metering.ts';
import { motionBlur } from '../../src/science/motion.ts';
import { photonsPerPixel } from '../../src/science/photons.ts';
import { must } from '../../src/science/refusal.ts';
import * as stars from '../../src/science/stars.ts';
import * as transmission from '../../src/science/transmission.ts';
import * as units from '../../src/science/units.ts';
import * as view from '../../src/science/view.ts';
import { type AdapterSet, adapter, flag, number, optional, text } from './adapter.ts';

const n = number('1', units.parseFNumber);
const t = number('s', units.parseSeconds);
const s = number('ISO', units.parseIso);
const mm = number('mm', units.parseMillimetres);
const um = number('um', units.parseMicrometres);
const away = number('mm', units.parseDistance);
const deg = number('deg', units.parseDegrees);
const stops = number('stops', units.parseStops);
const ratio = number('1', units.parseRatio);
const crop = number('1', units.parseCropRatio);
const tau = number('1', units.parseTransmittance);
const density = number('1', units.parseDensity);
const reflected = number('cd s ISO/m2', units.parseReflectedConstant);
const incident = number('lx s ISO', units.parseIncidentConstant);
const luminance = number('cd/m2', units.parseLuminance);
const illuminance = number('lx', units.parseLux);
const lxs = number('lx s', units.parseLuxSeconds);
const ev = number('EV', units.parseEv);
const apexValue = number('APEX', units.parseApex);
const px = number('px', units.parsePixels);
const resolution = number('px/unit', units.parseRatio);
const resolutionUnit = number('Exif unit code', exif.parseResolutionUnit);
const magnification = optional(number('1', units.parseMagnification), view.AT_INFINITY);
const pupil = optional(ratio, units.ratio(1));
/** The sheet's own name for steps of a whole stop. */
const series = text('series', (name) => parseStep(name === 'full' ? 'whole' : name));
/** Any length will do: the formula is the same in every unit. */
const hyperfocalUnits = number('H units', units.parseMillimetres);

/** The two formats of a pair. */
const pair = { w1: mm, h1: mm, w2: mm, h2: mm } as const;
type Pair = { readonly [side in keyof typeof pair]: units.Millimetres };
const format1 = ({ w1, h1 }: Pair): formats.SensorFormat => ({ width: w1, height: h1 });
const format2 = ({ w2, h2 }: Pair): formats.SensorFormat => ({ width: w2, height: h2 });

/** The two frames of a budget. The sheet gives the scene as a relative luminance. */
const scene = optional(number('1', units.parseLuminance), must(units.parseLuminance(1)));
const clear = optional(tau, units.transmittance(1));
const noFilter = optional(stops, units.stops(0));
const exposures = {
  N1: n,
  t1: t,
  tau1: clear,
  nd1: noFilter,
  L1: scene,
  N2: n,
  t2: t,
  tau2: clear,
  nd2: noFilter,
  L2: scene,
} as const;
const renderings = { ...exposures, S1: s, S2: s } as const;

const path = (
  f: units.FNumber,
  time: units.Seconds,
  glass: units.Transmittance,
  filter: units.Stops,
): lightBudget.LightPath => ({
  n: f,
  t: time,
  glassLoss: transmission.transmissionLoss(glass),
  filterLoss: filter,
  extensionLoss: units.stops(0),
});

interface Exposures {
  readonly N1: units.FNumber;
  readonly t1: units.Seconds;
  readonly tau1: units.Transmittance;
  readonly nd1: units.Stops;
  readonly L1: units.CandelasPerM2;
  readonly N2: units.FNumber;
  readonly t2: units.Seconds;
  readonly tau2: units.Transmittance;
  readonly nd2: units.Stops;
  readonly L2: units.CandelasPerM2;
}
const path1 = (i: Exposures) => path(i.N1, i.t1, i.tau1, i.nd1);
const path2 = (i: Exposures) => path(i.N2, i.t2, i.tau2, i.nd2);
const fade = ({ L1, L2 }: Exposures): units.Stops =>
  exposure.stopsBetweenScenes(
    metering.evFromLuminance(L1, units.iso(100), metering.USUAL_K),
    metering.evFromLuminance(L2, units.iso(100), metering.USUAL_K),
  );
const rendering = (of: lightBudget.LightPath, speed: units.Iso): lightBudget.Rendering => ({
  ...of,
  s: speed,
  isoOffset: units.stops(0),
});

const commonRegion = { w1: mm, h1: mm, f1: mm, w2: mm, h2: mm, f2: mm } as const;
const framings = (i: Pair & { readonly f1: units.Millimetres; readonly f2: units.Millimetres }) =>
  [
    { format: format1(i), focal: i.f1, magnification: view.AT_INFINITY },
    { format: format2(i), focal: i.f2, magnification: view.AT_INFINITY },
  ] as const;

const focused = { f: mm, N: n, c: mm, s: away, min_focus: optional(away, null) } as const;
const lens = (i: {
  readonly f: units.Millimetres;
  readonly N: units.FNumber;
  readonly c: units.Millimetres;
  readonly s: units.Distance;
  readonly min_focus: units.Distance | null;
}): focus.Focused => ({ focal: i.f, n: i.N, circle: i.c, subject: i.s, closest: i.min_focus });

/** The dial position next to an f-number, on a dial that shows the whole series. */
const nearestOnDial = (wanted: units.FNumber, step: Step): units.FNumber => {
  const dial = must(fNumberPositions({ widest: '1', narrowest: '45', step, missing: [] }));
  const position = nearestPosition(dial, wanted);
  if (position === null) throw new Error('the dial is empty');
  return position.exact;
};

export const adapters: AdapterSet['adapters'] = {
  // Exposure and APEX
  exposure_value: adapter({
    unit: 'EV',
    inputs: { N: n, t },
    run: (i) => exposure.exposureValue(i.N, i.t),
  }),
  ev100: adapter({
    unit: 'EV',
    inputs: { N: n, t, S: s },
    run: (i) => exposure.ev100(i.N, i.t, i.S),
  }),
  exposure_step_difference: adapter({
    unit: 'stops',
    inputs: { t1: t, t2: t },
    run: (i) => exposure.stopsBetweenTimes(i.t1, i.t2),
  }),
  aperture_value: adapter({
    unit: 'APEX',
    inputs: { N: n },
    run: (i) => apex.apertureValue(i.N),
  }),
  time_value: adapter({ unit: 'APEX', inputs: { t }, run: (i) => apex.timeValue(i.t) }),
  speed_value: adapter({ unit: 'APEX', inputs: { S: s }, run: (i) => apex.speedValue(i.S) }),
  f_number_from_aperture_value: adapter({
    unit: '1',
    inputs: { Av: apexValue },
    run: (i) => apex.fNumberFromApertureValue(i.Av),
  }),
  time_from_time_value: adapter({
    unit: 's',
    inputs: { Tv: apexValue },
    run: (i) => apex.timeFromTimeValue(i.Tv),
  }),
  iso_from_speed_value: adapter({
    unit: 'ISO',
    inputs: { Sv: apexValue },
    run: (i) => apex.isoFromSpeedValue(i.Sv),
  }),
  luminance_from_brightness_value: adapter({
    unit: 'cd/m2',
    inputs: { Bv: apexValue },
    run: (i) => apex.luminanceFromBrightnessValue(i.Bv),
  }),
  apex_implied_K: adapter({
    unit: 'cd s ISO/m2',
    inputs: {},
    run: () => apex.APEX_REFLECTED_CONSTANT,
  }),

  // Metering
  luminance_from_settings: adapter({
    unit: 'cd/m2',
    inputs: { N: n, t, S: s, K: reflected },
    run: (i) => metering.luminanceForSettings(i.N, i.t, i.S, i.K),
  }),
  illuminance_from_settings: adapter({
    unit: 'lx',
    inputs: { N: n, t, S: s, C: incident },
    run: (i) => metering.illuminanceForSettings(i.N, i.t, i.S, i.C),
  }),
  ev_from_luminance: adapter({
    unit: 'EV',
    inputs: { L: luminance, S: s, K: reflected },
    run: (i) => metering.evFromLuminance(i.L, i.S, i.K),
  }),
  ev_from_illuminance: adapter({
    unit: 'EV',
    inputs: { E: illuminance, S: s, C: incident },
    run: (i) => metering.evFromIlluminance(i.E, i.S, i.C),
  }),
  luminance_from_ev100: adapter({
    unit: 'cd/m2',
    inputs: { EV100: ev, K: reflected },
    run: (i) => metering.luminanceFromEv100(i.EV100, i.K),
  }),
  illuminance_from_ev100: adapter({
    unit: 'lx',
    inputs: { EV100: ev, C: incident },
    run: (i) => metering.illuminanceFromEv100(i.EV100, i.C),
  }),
  q_factor: adapter({
    unit: '1',
    inputs: { transmittance: tau, vignetting: tau, theta: deg },
    run: (i) => metering.qFactor(i.transmittance, i.vignetting, i.theta),
  }),
  focal_plane_exposure: adapter({
    unit: 'lx s',
    inputs: {
      L: luminance,
      N: n,
      t,
      q: ratio,
      flare: optional(lxs, must(units.parseLuxSeconds(0))),
      m: magnification,
      pupil,
    },
    run: (i) =>
      metering.focalPlaneExposure({
        luminance: i.L,
        n: i.N,
        t: i.t,
        q: i.q,
        flare: i.flare,
        magnification: i.m,
        pupil: i.pupil,
      }),
  }),
  exposure_index_from_exposure: adapter({
    unit: 'ISO',
    inputs: { H: lxs },
    run: (i) => metering.exposureIndex(i.H),
  }),
  saturation_speed: adapter({
    unit: 'ISO',
    inputs: { Hsat: lxs },
    run: (i) => metering.saturationSpeed(i.Hsat),
  }),
  saturation_luminance: adapter({
    unit: 'cd/m2',
    inputs: { EV100: ev, q: ratio },
    run: (i) => metering.saturationLuminance(i.EV100, i.q),
  }),
  metered_midtone_exposure: adapter({
    unit: 'lx s',
    inputs: { S: s, K: reflected, q: ratio },
    run: (i) => metering.meteredMidtone(i.S, i.K, i.q),
  }),

  // Dials
  exact_f_number: adapter({
    unit: '1',
    inputs: { mark: n, series },
    run: (i) => exactFNumber(i.mark, i.series),
  }),
  exact_time: adapter({
    unit: 's',
    inputs: { mark: t, series },
    run: (i) => exactTime(i.mark, i.series),
  }),
  exact_iso: adapter({
    unit: 'ISO',
    inputs: { mark: s, series },
    run: (i) => exactIso(i.mark, i.series),
  }),
  mark_error_time: adapter({
    unit: 'stops',
    inputs: { mark: t, series },
    run: (i) => exposure.stopsBetweenTimes(exactTime(i.mark, i.series), i.mark),
  }),
  // A positive error of an f-number mark understates the light: the order is the other way round.
  mark_error_f_number: adapter({
    unit: 'stops',
    inputs: { mark: n, series },
    run: (i) => exposure.stopsBetweenFNumbers(i.mark, exactFNumber(i.mark, i.series)),
  }),
  mark_error_iso: adapter({
    unit: 'stops',
    inputs: { mark: s, series },
    run: (i) => exposure.stopsBetweenIsos(exactIso(i.mark, i.series), i.mark),
  }),
  nearest_dial_f_number: adapter({
    unit: '1',
    inputs: { N: n, series },
    run: (i) => nearestOnDial(i.N, i.series),
  }),
  dial_residual_f_number: adapter({
    unit: 'stops',
    inputs: { N: n, series },
    run: (i) => exposure.stopsBetweenFNumbers(i.N, nearestOnDial(i.N, i.series)),
  }),

  // Formats. The sheet divides format 1 by format 2: format 2 is our reference.
  diagonal: adapter({
    unit: 'mm',
    inputs: { w: mm, h: mm },
    run: (i) => formats.diagonal({ width: i.w, height: i.h }),
  }),
  crop_diagonal: adapter({
    unit: '1',
    inputs: pair,
    run: (i) => formats.cropRatio(format2(i), format1(i)),
  }),
  crop_area: adapter({
    unit: '1',
    inputs: pair,
    run: (i) => formats.cropRatioByArea(format2(i), format1(i)),
  }),
  crop_width: adapter({
    unit: '1',
    inputs: { w1: mm, w2: mm },
    run: (i) => formats.cropRatioBySide(i.w2, i.w1),
  }),
  crop_height: adapter({
    unit: '1',
    inputs: { h1: mm, h2: mm },
    run: (i) => formats.cropRatioBySide(i.h2, i.h1),
  }),
  area_ratio: adapter({
    unit: '1',
    inputs: pair,
    run: (i) => formats.areaRatio(format2(i), format1(i)),
  }),
  area_stops: adapter({
    unit: 'stops',
    inputs: pair,
    run: (i) => formats.areaStops(format2(i), format1(i)),
  }),
  crop_stops: adapter({ unit: 'stops', inputs: { c: crop }, run: (i) => formats.cropStops(i.c) }),
  equivalent_focal_length: adapter({
    unit: 'mm',
    inputs: { f1: mm, c: crop },
    run: (i) => formats.equivalentFocal(i.f1, formats.reversedCrop(i.c)),
  }),
  equivalent_f_number: adapter({
    unit: '1',
    inputs: { N1: n, c: crop },
    run: (i) => formats.equivalentFNumber(i.N1, formats.reversedCrop(i.c)),
  }),
  equivalent_iso: adapter({
    unit: 'ISO',
    inputs: { S1: s, c: crop },
    run: (i) => formats.equivalentIso(i.S1, formats.reversedCrop(i.c)),
  }),

  // View
  angle_of_view: adapter({
    unit: 'deg',
    inputs: { x: mm, f: mm, m: magnification },
    run: (i) => view.angleOfView(i.x, i.f, i.m),
  }),
  magnification: adapter({
    unit: '1',
    inputs: { f: mm, s: away },
    run: (i) => view.magnificationAt(i.f, i.s),
  }),
  pixel_pitch: adapter({
    unit: 'um',
    inputs: { w: mm, pixels: px },
    run: (i) => view.pixelPitch(i.w, i.pixels),
  }),
  pixels_per_degree: adapter({
    unit: 'px/deg',
    inputs: { f: mm, p: um },
    run: (i) => view.pixelsPerDegree(i.f, i.p),
  }),
  angular_pixel: adapter({
    unit: 'arcsec',
    inputs: { f: mm, p: um },
    run: (i) => view.angleOfPixel(i.f, i.p),
  }),
  common_region_fraction_1: adapter({
    unit: '1',
    inputs: commonRegion,
    run: (i) => view.commonCrop(...framings(i)).ofFirst,
  }),
  common_region_fraction_2: adapter({
    unit: '1',
    inputs: commonRegion,
    run: (i) => view.commonCrop(...framings(i)).ofSecond,
  }),

  // Focus
  circle_of_confusion: adapter({
    unit: 'mm',
    inputs: { w: mm, h: mm, divisor: ratio },
    run: (i) => focus.circleOfConfusion(formats.diagonal({ width: i.w, height: i.h }), i.divisor),
  }),
  hyperfocal: adapter({
    unit: 'mm',
    inputs: { f: mm, N: n, c: mm },
    run: (i) => focus.hyperfocal(i.f, i.N, i.c),
  }),
  hyperfocal_simple: adapter({
    unit: 'mm',
    inputs: { f: mm, N: n, c: mm },
    run: (i) => focus.hyperfocalSimple(i.f, i.N, i.c),
  }),
  near_limit: adapter({ unit: 'mm', inputs: focused, run: (i) => focus.nearLimit(lens(i)) }),
  far_limit: adapter({ unit: 'mm', inputs: focused, run: (i) => focus.farLimit(lens(i)) }),
  near_limit_simple: adapter({
    unit: 'H units',
    inputs: { H: hyperfocalUnits, s: hyperfocalUnits },
    run: (i) => focus.nearLimitSimple(i.H, i.s),
  }),
  far_limit_simple: adapter({
    unit: 'H units',
    inputs: { H: hyperfocalUnits, s: hyperfocalUnits },
    run: (i) => focus.farLimitSimple(i.H, i.s),
  }),
  blur_disc: adapter({
    unit: 'mm',
    inputs: { f: mm, N: n, s: away, x: away },
    run: (i) => focus.blurDisc(i.f, i.N, i.s, i.x),
  }),
  lens_distance_from_sensor_distance: adapter({
    unit: 'mm',
    inputs: { D: away, f: mm },
    run: (i) => focus.distanceFromLens(i.D, i.f),
  }),

  // Diffraction
  airy_first_zero_coefficient: adapter({
    unit: '1',
    inputs: {},
    run: () => diffraction.AIRY_COEFFICIENT,
  }),
  airy_energy_in_first_dark_ring: adapter({
    unit: '1',
    inputs: {},
    run: () => diffraction.LIGHT_IN_FIRST_DARK_RING,
  }),
  airy_diameter: adapter({
    unit: 'um',
    inputs: { wavelength: um, N: n },
    run: (i) => diffraction.airyDiameter(i.wavelength, i.N),
  }),
  diffraction_f_number: adapter({
    unit: '1',
    inputs: { p: um, wavelength: um, k: ratio },
    run: (i) => diffraction.fNumberOfAiryPixels(i.p, i.wavelength, i.k),
  }),
  combined_blur: adapter({
    unit: 'um',
    inputs: { b1: um, b2: um },
    run: (i) => diffraction.combinedBlur(i.b1, i.b2),
  }),
  diffraction_cutoff: adapter({
    unit: 'cycles/mm',
    inputs: { wavelength: um, N: n },
    run: (i) => diffraction.cutoffFrequency(i.wavelength, i.N),
  }),
  nyquist_frequency: adapter({
    unit: 'cycles/mm',
    inputs: { p: um },
    run: (i) => diffraction.nyquistFrequency(i.p),
  }),

  // What the lens takes
  t_number: adapter({
    unit: '1',
    inputs: { N: n, transmittance: tau },
    run: (i) => transmission.tNumber(i.N, i.transmittance),
  }),
  transmission_loss: adapter({
    unit: 'stops',
    inputs: { transmittance: tau },
    run: (i) => transmission.transmissionLoss(i.transmittance),
  }),
  cos4_loss: adapter({
    unit: 'stops',
    inputs: { theta: deg },
    run: (i) => transmission.cos4Loss(i.theta),
  }),
  corner_field_angle: adapter({
    unit: 'deg',
    inputs: { w: mm, h: mm, f: mm },
    run: (i) => transmission.cornerFieldAngle({ width: i.w, height: i.h }, i.f),
  }),
  effective_f_number: adapter({
    unit: '1',
    inputs: { N: n, m: magnification, pupil },
    run: (i) => transmission.effectiveFNumber(i.N, i.m, i.pupil),
  }),
  extension_loss: adapter({
    unit: 'stops',
    inputs: { m: magnification, pupil },
    run: (i) => transmission.extensionLoss(i.m, i.pupil),
  }),

  // The light budget of a pair
  exposure_difference: adapter({
    unit: 'stops',
    inputs: exposures,
    run: (i) => lightBudget.exposureDifference(path1(i), path2(i), fade(i)),
  }),
  rendered_difference: adapter({
    unit: 'stops',
    inputs: renderings,
    run: (i) =>
      lightBudget.renderedDifference(rendering(path1(i), i.S1), rendering(path2(i), i.S2), fade(i)),
  }),
  brightening_of_frame_2: adapter({
    unit: 'stops',
    inputs: renderings,
    run: (i) => lightBudget.evenUp(rendering(path1(i), i.S1), rendering(path2(i), i.S2), fade(i)),
  }),
  total_light_difference: adapter({
    unit: 'stops',
    inputs: { ...exposures, ...pair },
    run: (i) =>
      lightBudget.totalLightDifference(
        { ...path1(i), format: format1(i) },
        { ...path2(i), format: format2(i) },
        fade(i),
      ),
  }),
  snr_change_shot_noise: adapter({
    unit: 'dB (power, 10 log10)',
    inputs: { total_light_stops: stops },
    run: (i) => lightBudget.photonNoiseGain(i.total_light_stops),
  }),
  photons_per_pixel: adapter({
    unit: 'photons',
    inputs: {
      area: number('um2', units.parseSquareMicrometres),
      t: number('ms', units.parseMilliseconds),
      wavelength: um,
      irradiance: number('uW/cm2', units.parseIrradiance),
    },
    run: (i) => photonsPerPixel(i.area, i.t, i.wavelength, i.irradiance),
  }),

  // Filters
  nd_stops: adapter({
    unit: 'stops',
    inputs: { density },
    run: (i) => filters.stopsOfDensity(i.density),
  }),
  nd_stops_from_factor: adapter({
    unit: 'stops',
    inputs: { factor: ratio },
    run: (i) => filters.stopsOfFactor(i.factor),
  }),
  nd_factor: adapter({
    unit: '1',
    inputs: { density },
    run: (i) => filters.factorOfDensity(i.density),
  }),
  nd_transmittance_from_stops: adapter({
    unit: '%',
    inputs: { stops },
    run: (i) => units.percent(filters.transmittanceOfStops(i.stops)),
  }),
  time_with_nd: adapter({
    unit: 's',
    inputs: { t, stops },
    run: (i) => filters.timeWithFilter(i.t, i.stops),
  }),

  // Long exposure
  sidereal_rate: adapter({ unit: 'arcsec/s', inputs: {}, run: () => stars.SKY_RATE }),
  star_trail_length: adapter({
    unit: 'um',
    inputs: { f: mm, t, dec: deg },
    run: (i) => stars.trailLength(i.f, i.t, i.dec),
  }),
  star_trail_pixels: adapter({
    unit: 'px',
    inputs: { f: mm, p: um, t, dec: deg },
    run: (i) => stars.trailPixels(i.f, i.p, i.t, i.dec),
  }),
  star_time_for_trail: adapter({
    unit: 's',
    inputs: { f: mm, p: um, k: ratio, dec: deg },
    run: (i) => stars.timeForTrail(i.f, i.p, i.k, i.dec),
  }),
  star_rule_divide: adapter({
    unit: 's',
    inputs: { rule: ratio, c: crop, f: mm },
    run: (i) => stars.timeByDivision(i.rule, i.c, i.f),
  }),
  star_rule_three_term: adapter({
    unit: 's',
    inputs: { N: n, f: mm, p: um, k: ratio, dec: deg },
    run: (i) => stars.timeByThreeTerms(i.N, i.f, i.p, i.k, i.dec),
  }),
  motion_blur_pixels: adapter({
    unit: 'px',
    inputs: {
      speed: number('m/s', units.parseSpeed),
      s: number('m', units.parseMetres),
      f: mm,
      p: um,
      t,
    },
    run: (i) => motionBlur(i.speed, i.s, i.f, i.p, i.t),
  }),
  wall_time: adapter({
    unit: 's',
    inputs: {
      t,
      frames: number('frames', (frames) => frames),
      settle: number('s', units.parseDuration),
      write: number('s', units.parseDuration),
      dark_frame: flag,
    },
    run: (i) =>
      wallTime({
        t: i.t,
        frames: i.frames,
        settle: i.settle,
        write: i.write,
        darkFrame: i.dark_frame,
      }),
  }),

  // Exif
  exif_tag: adapter({
    unit: 'tag number (decimal)',
    inputs: { name: text('Exif tag name', (name) => name) },
    run: (i) => {
      const tag = exif.exifTag(i.name);
      if (tag === null) throw new Error(`unknown tag ${i.name}`);
      return {
        value: tag.number,
        type: tag.type,
        hex: `0x${tag.number.toString(16).toUpperCase().padStart(4, '0')}`,
      };
    },
  }),
  exif_rational: adapter({
    unit: '1',
    inputs: {
      numerator: number('1', (value) => value),
      denominator: number('1', (value) => value),
    },
    run: (i) => exif.exifFraction(i.numerator, i.denominator),
  }),
  pixel_pitch_from_exif: adapter({
    unit: 'um',
    inputs: { resolution, resolution_unit: resolutionUnit },
    run: (i) => exif.pitchFromResolution(i.resolution, i.resolution_unit),
  }),
  sensor_width_from_exif: adapter({
    unit: 'mm',
    inputs: { pixels: px, resolution, resolution_unit: resolutionUnit },
    run: (i) => exif.widthFromResolution(i.pixels, i.resolution, i.resolution_unit),
  }),
};

export const withoutUse: AdapterSet['withoutUse'] = {};
