import { MEASURES, type Measure, type Measures, type Span, type WhyUntold } from './measures.ts';

/*
 * What a pair may be used for, in words and by limits that its user can change. Each use names what
 * it needs alike; nothing is weighed against anything else, and nothing is ranked.
 */

export const USES = ['noise', 'sharpness', 'brightness', 'dynamic-range'] as const;
export type Use = (typeof USES)[number];

/** What must be alike for a use, in the order in which it is told. */
export const NEEDS: Readonly<Record<Use, readonly Measure[]>> = {
  // Light decides shot noise; gain and time decide read noise and dark current.
  noise: ['light-per-area', 'heat', 'iso', 'time', 'dark-frame'],
  sharpness: ['depth-of-field', 'diffraction', 'framing', 'time', 'parallax'],
  // As rendered, nothing evened up.
  brightness: ['rendered'],
  // From what just clips to what drowns in noise: the gain sets the one, heat and light the other.
  'dynamic-range': ['light-per-area', 'iso', 'heat', 'dark-frame', 'bit-depth'],
};

/** How far apart a pair may lie, without sign; null = not looked at. */
export type Limits = Readonly<Record<Measure, number | null>>;

/** Where a limit of ours comes from. */
export type LimitFrom =
  /** Our choice: half of it in noise, when photons rule. */
  | 'half-in-noise'
  /** A ratio of dark currents of 1.25, our handbook's default where the light is unknown. */
  | 'dark-ratio'
  /** Half a third stop: what no dial can set. */
  | 'half-a-click'
  /** One third stop: one click of most dials. */
  | 'one-click'
  | 'our-choice'
  | 'must-be-alike';

export const LIMITS: Readonly<
  Record<Measure, { readonly most: number; readonly from: LimitFrom }>
> = {
  'light-per-area': { most: 0.2, from: 'half-in-noise' },
  rendered: { most: 0.1, from: 'our-choice' },
  iso: { most: 0.17, from: 'half-a-click' },
  time: { most: 0.33, from: 'one-click' },
  heat: { most: 0.32, from: 'dark-ratio' },
  'depth-of-field': { most: 0.33, from: 'one-click' },
  diffraction: { most: 0.33, from: 'one-click' },
  framing: { most: 2, from: 'our-choice' },
  parallax: { most: 2, from: 'our-choice' },
  'bit-depth': { most: 0, from: 'must-be-alike' },
  'dark-frame': { most: 0, from: 'must-be-alike' },
};

export const USUAL_LIMITS: Limits = Object.fromEntries(
  MEASURES.map((measure) => [measure, LIMITS[measure].most]),
) as Record<Measure, number>;

/** One measure against its limit. */
export type Finding = { readonly measure: Measure } & (
  | { readonly says: 'within' | 'beyond' | 'across'; readonly span: Span; readonly limit: number }
  | { readonly says: 'untold'; readonly why: WhyUntold }
);

/** What a pair may be used for. */
export interface Verdict {
  readonly use: Use;
  /** `untold`: something it needs is unknown, or its span lies across its limit. */
  readonly fit: 'fit' | 'not-fit' | 'untold';
  /** All that was looked at. */
  readonly findings: readonly Finding[];
}

/** Figures are compared as they are shown: to two decimals. */
const shown = (value: number): number => Math.round(value * 100) / 100;

function finding(measure: Measure, measures: Measures, limit: number): Finding {
  const found = measures[measure];
  if (!found.known) return { measure, says: 'untold', why: found.why };
  const [least, most] = [shown(found.least), shown(found.most)];
  const farthest = Math.max(Math.abs(least), Math.abs(most));
  const nearest = least <= 0 && most >= 0 ? 0 : Math.min(Math.abs(least), Math.abs(most));
  const says = farthest <= limit ? 'within' : nearest > limit ? 'beyond' : 'across';
  return { measure, says, span: found, limit };
}

/**
 * What a pair may be used for: fit where all that a use needs surely lies within its limit; not fit
 * where anything surely lies beyond; else it cannot be told. A use none of whose needs is looked at
 * cannot be told either.
 */
export function verdictsOf(measures: Measures, limits: Limits): readonly Verdict[] {
  return USES.map((use) => {
    const findings = NEEDS[use].flatMap((measure) => {
      const limit = limits[measure];
      return limit === null ? [] : [finding(measure, measures, limit)];
    });
    const any = (...what: Finding['says'][]) => findings.some(({ says }) => what.includes(says));
    const fit = any('beyond')
      ? 'not-fit'
      : findings.length === 0 || any('across', 'untold')
        ? 'untold'
        : 'fit';
    return { use, fit, findings };
  });
}
