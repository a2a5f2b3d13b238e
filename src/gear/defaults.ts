import { duration, type Millimetres, millimetres, type Pixels, seconds } from '../science/units.ts';
import type { Body } from './body.ts';
import { NOTHING_MEASURED } from './bodyHeat.ts';
import type { BodyId, LensId } from './ids.ts';
import type { Lens } from './lens.ts';
import type { Letter } from './letter.ts';

/*
 * A body or lens from the few figures that nobody can guess; the rest starts from
 * what most bodies do and can be opened and changed. Every default here is common
 * practice, no source. Where bodies differ, the default is the one that does least
 * harm if it is wrong.
 */

/** A sensor's sides in millimetres. */
export interface Format {
  readonly widthMm: Millimetres;
  readonly heightMm: Millimetres;
}

const format = (widthMm: number, heightMm: number): Format => ({
  widthMm: millimetres(widthMm),
  heightMm: millimetres(heightMm),
});

/**
 * Published sensor dimensions to choose from, largest first. Real sensors vary by
 * a few tenths of a millimetre; the profile's own figures count.
 */
export const COMMON_FORMATS: readonly Format[] = [
  format(53.4, 40),
  format(43.8, 32.9),
  format(36, 24),
  format(23.5, 15.6),
  format(17.3, 13),
  format(13.2, 8.8),
];

/** What has a default in a body. */
export type BodyDefaults = Pick<
  Body,
  'iso' | 'time' | 'bulb' | 'selfTimer' | 'darkFrame' | 'bits' | 'files' | 'heat'
>;

export const BODY_DEFAULTS: BodyDefaults = {
  iso: {
    lowest: '100',
    highest: '25600',
    step: 'third',
    // Extended positions are gain or loss in processing, so none until the owner names them.
    extendedLowest: null,
    extendedHighest: null,
    missing: [],
  },
  time: {
    shortest: '1/4000',
    longest: '30',
    step: 'third',
    stepFrom1s: 'third',
    // Counts only once a longer position than 30 s is entered; most dials then read in minutes.
    beyond30s: 'minutes',
    // Powers of two are computed with, and 15 and 30 s carry their doubt until measured.
    longMarks: 'unknown',
    missing: [],
  },
  // The usual bulb stays open while the release is held, here by a cable that locks. Taken for
  // press-press by mistake, a frame would end at once. An hour is about what a battery bears.
  bulb: { kind: 'hold', longestS: seconds(3600) },
  selfTimer: {
    choicesS: [duration(2), duration(10)],
    // Long enough for the hand's shake to die, short enough for a fading sky.
    usedS: duration(2),
    // If wrong this way round, the worst is one look too many at the timer.
    survivesPowerOff: false,
  },
  // The set-up sheet has it switched off on every body, because it doubles the time of a frame.
  darkFrame: { kind: 'never' },
  bits: { depth: 14, loweredBy: '' },
  // Four digits from 0001 to 9999 is the rule for camera file names (DCF), from memory. The
  // prefix is for the owner to enter; until then the log shows the bare number.
  files: { prefix: '', digits: 4, rollsOverAfter: 9999, rawAndJpegShareNumber: true },
  heat: NOTHING_MEASURED,
};

/** A whole body from its name, letter, format and pixels. Parse it before it is stored. */
export const newBody = (
  id: BodyId,
  own: {
    readonly name: string;
    readonly sign: Letter;
    readonly widthMm: Millimetres;
    readonly heightMm: Millimetres;
    readonly pixelsWide: Pixels;
    readonly pixelsHigh: Pixels;
  },
): Body => ({ ...BODY_DEFAULTS, ...own, id, invented: false });

/** A whole lens from its name, focal length and ends of its f-number dial. Parse it before it is stored. */
export const newLens = (
  id: LensId,
  own: {
    readonly name: string;
    readonly focalMm: Millimetres;
    readonly widest: string;
    readonly narrowest: string;
  },
): Lens => ({
  id,
  name: own.name,
  focalMm: own.focalMm,
  fNumber: { widest: own.widest, narrowest: own.narrowest, step: 'third', missing: [] },
  transmissionStops: null,
  closestFocusMm: null,
  // If wrong this way round, the worst is one look too many at the focus.
  focusSurvivesPowerOff: false,
  invented: false,
});
