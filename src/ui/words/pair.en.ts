import type { Cause, Estimate, WhyUnknown } from '../../plan/causes.ts';
import type { Framing } from '../../plan/plan.ts';

/** Words for how two rigs differ, planned or made. Figures come in as they are written. */
export const pair = {
  /* A soft hyphen: where three columns of figures need the room, the word may break. */
  difference: 'Differ\u00adence',
  target: 'Target',
  residual: 'Residual',
  framings: {
    width: 'Width',
    height: 'Height',
    diagonal: 'Diagonal',
    'pixels-per-degree': 'Pixels per degree',
  } satisfies Record<Framing, string>,
  against: (other: string, reference: string) => `${other} against ${reference}`,
  fromMeter: (stops: string) => `${stops} stop against the meter`,
  byCause: 'Difference by cause, in stops',
  cause: 'Cause',
  causes: {
    time: 'Time',
    aperture: 'Aperture',
    iso: 'ISO',
    offset: 'Offset',
    transmission: 'Trans\u00admission',
    fade: 'Fade',
  } satisfies Record<Cause, string>,
  /** 'Offset, transmission, fade' */
  inRow: (causes: readonly string[]) =>
    causes.map((cause, at) => (at === 0 ? cause : cause.toLowerCase())).join(', '),
  inOffset: 'in the offset',
  sum: 'Sum',
  plusIs: 'Plus renders brighter than the reference.',
  evenUpIs: (stops: string) => `Even-up ${stops} stop.`,
  fadeFrom: {
    readings: 'Fade from the meter readings; its ± holds nine times in ten.',
    model: 'Fade by the clear-sky model, no reading in it; its ± holds nine times in ten.',
  } satisfies Record<Estimate['from'], string>,
  whyUnknown(why: WhyUnknown, causes: string): string {
    return {
      'neither-stated': `${causes}: stated for neither rig.`,
      'reference-not-stated': `${causes}: not stated for the reference.`,
      'other-not-stated': `${causes}: not stated for this rig.`,
      'no-sky': `${causes}: the sky over these frames is not known.`,
      'not-modelled': `${causes}: a wall lit by hand has none of the sky’s.`,
    }[why];
  },
  light: 'Light against the reference, in stops',
  perArea: 'Per area',
  rendered: 'As rendered, with ISO',
  whole: 'Whole sensor',
  crop: 'Common crop',
  without: (causes: string) => `without ${causes.toLowerCase()}`,

  besides: 'Besides brightness',
  besidesInShort: (across: string, depth: string) =>
    `Angle of view ${across}° wide, depth of field ${depth} ×`,
  angle: 'Angle of view against the reference',
  angles: (across: string, up: string) => `${across}° wide, ${up}° high`,
  shown: 'Shown by both',
  percent: (figure: string) => `${figure} %`,
  framedBy: (rule: string) => `Framed by ${rule.toLowerCase()}`,
  takesIn: (rig: string, factor: string) => `${rig} takes in ${factor} ×`,
  perDegree: 'Pixels per degree',
  pupil: 'Entrance pupil',
  depth: 'Depth of field',
  factorOf: (factor: string) => `${factor} ×`,
  hyperfocal: 'Hyperfocal distance',
  metresOf: (figure: string) => `${figure} m`,
  airy: 'Diffraction, disc across',
  px: (figure: string) => `${figure} px`,
  motion: 'Motion drawn out',
  parallax: 'Parallax of the nearest subject',
  parallaxUnknown: 'unknown: the plan does not say how near it is and how far apart the axes are',
  overstated: 'Diagonal overstates its light by',
  stops: (figure: string) => `${figure} stop`,
  darkFrame: 'Dark frame in the camera',
  yes: 'yes',
  no: 'no',
  bits: 'Bit depth',
  both: (reference: string, ofReference: string, other: string, ofOther: string) =>
    `${reference} ${ofReference}, ${other} ${ofOther}`,
  parallaxWarns: (px: string) =>
    `The nearest subject shifts by ${px} px between the two lens axes. More than 2 px shows: keep it out of the frame, or put one rig where the other stood.`,
};
