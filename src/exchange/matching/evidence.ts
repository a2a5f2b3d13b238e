/*
 * What the model of a match costs. A cost is minus twice the logarithm of a likelihood, as far as
 * it differs between answers: near the middle a squared standardised residual, far out only its
 * logarithm or a cap, because hands tap late and write down wrong. All figures are our choice; the
 * generated evenings of matching.test.ts hold them to no silent error.
 */

/** A frame whose file is gone, and a file that no frame logged. A pair is taken below their sum. */
export const FRAME_LEFT = 12;
export const FILE_LEFT = 9;
/** A frame whose file is gone where the files' own numbers leave a gap for it. */
export const FRAME_IN_GAP = 4;

/** Every other choice must cost so much more: some 150 times less likely. */
export const SURE_MARGIN = 10;
/** And the pair itself must not cost more, or something about it is odd enough to be looked at. */
export const SURE_PAIR = 5;

/** A file without a frame that lies farther off is not that of a frame without a file. */
export const FREE_WITHIN_S = 600;

/** How far a tap and the shutter lie apart, one standard deviation in seconds. */
export const TAP_SIGMA_S = 2;
/** One tap said 'taken' when all was over. */
export const TAKEN_SIGMA_S = 4;
/** Two taps nearer together than the exposure between them: one at least came late. */
export const LATE_SIGMA_S = 15;
/** The clock on the screen and the shutter. */
export const CLOCK_FRAME_SIGMA_S = 1;

/** Degrees of freedom of the Student distribution of times: now and then a tap comes very late. */
const TIME_FREEDOM = 4;

/** What a time that lies `z` standard deviations off costs. */
export const timeCost = (z: number): number =>
  (TIME_FREEDOM + 1) * Math.log1p((z * z) / TIME_FREEDOM);

/** The farthest off, in standard deviations, that a time may lie to cost no more. */
export const farthestFor = (cost: number): number =>
  Math.sqrt(TIME_FREEDOM * Math.expm1(cost / (TIME_FREEDOM + 1)));

/** How much a residual of `z` standard deviations counts in a fit, against one of none. */
export const timeWeight = (z: number): number => (TIME_FREEDOM + 1) / (TIME_FREEDOM + z * z);

/** One setting in a file and in the log: rounding, and 60 beside 64 s. */
const SETTING_SIGMA = 0.15;
/** A setting that was logged wrong: this, and a little for each stop. */
export const WRONG_SETTING = 10;
export const UNKNOWN_SETTING = 2;

/** What a setting that lies `stops` off costs; NaN where either side is silent. */
export function settingCost(stops: number, recorded: boolean): number {
  if (Number.isNaN(stops)) return UNKNOWN_SETTING;
  const away = Math.abs(stops);
  const cost = Math.min((away / SETTING_SIGMA) ** 2, WRONG_SETTING + away);
  // Planned and never recorded: it may well have been something else.
  return recorded ? cost : cost / 2;
}

/** File numbers that were logged: the same, another, or one of them not known. */
export const NUMBER_COST = { same: 0, unknown: 3, other: 10 } as const;
/** That logged numbers say nothing: one that was forgotten or set wrong shifts all after it. */
export const NUMBERS_IGNORED = 8;

/** One standard deviation of what a clock gains, in seconds an hour; cold makes quartz slow. */
export const GAIN_SIGMA_S_PER_HOUR = 1.5;

/** How well a clock is set, where it is set at all, in seconds. */
const SET_WITHIN_S = 20;
const HALF_HOUR_S = 1800;
const DAY_S = 86_400;
/** A clock on another zone or summer time; on another day; anywhere at all. */
const WRONG_HOUR = 4;
const WRONG_DAY = 8;
const WRONG_ANYHOW = 32;
const MOST_HALF_HOURS = 28;

const nearZero = (s: number): number => 2 * Math.log1p((s / SET_WITHIN_S) ** 2);

/** What it costs that a clock is ahead by so much, before any picture is looked at. */
export function clockCost(aheadS: number): number {
  const halfHours = Math.round(aheadS / HALF_HOUR_S);
  const hourless = aheadS - halfHours * HALF_HOUR_S;
  const days = Math.round(aheadS / DAY_S);
  const dayless = aheadS - days * DAY_S;
  return Math.min(
    nearZero(aheadS),
    Math.abs(halfHours) <= MOST_HALF_HOURS
      ? WRONG_HOUR + nearZero(hourless)
      : Number.POSITIVE_INFINITY,
    WRONG_DAY + Math.log1p(Math.abs(days)) + nearZero(dayless),
    WRONG_ANYHOW,
  );
}
