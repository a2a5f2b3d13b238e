import { type Ev, ev } from './units.ts';

/**
 * EV at ISO 100 that exposure guides give for a subject, from and to. The sunset rows face the sky.
 * Source: ANSI PH2.7-1973 / PH2.7-1986, as reprinted in an encyclopedia's table.
 */
const EXPOSURE_GUIDE = {
  'sunset-just-before': [ev(12), ev(14)],
  'sunset-at': [ev(12), ev(12)],
  'sunset-just-after': [ev(9), ev(11)],
  'bright-street': [ev(8), ev(8)],
  'night-traffic': [ev(5), ev(5)],
  'floodlit-buildings': [ev(3), ev(5)],
  'distant-lighted-buildings': [ev(2), ev(2)],
  'moonlight-full-high': [ev(-3), ev(-2)],
  'moonlight-gibbous-high': [ev(-4), ev(-4)],
  'moonlight-quarter-high': [ev(-6), ev(-6)],
  'aurora-bright': [ev(-4), ev(-3)],
} as const satisfies Readonly<Record<string, readonly [Ev, Ev]>>;

export type GuideSubject = keyof typeof EXPOSURE_GUIDE;

export const GUIDE_SUBJECTS = Object.keys(EXPOSURE_GUIDE) as readonly GuideSubject[];

/** The EV at ISO 100 of a subject by the exposure guides, lowest and highest. */
export const guideEv = (subject: GuideSubject): readonly [Ev, Ev] => EXPOSURE_GUIDE[subject];
