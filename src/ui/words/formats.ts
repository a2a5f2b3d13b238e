import type { Settings } from '../../gear/settings.ts';
import type { Seconds, Stops } from '../../science/units.ts';

/** Joins a figure and its unit so that a line never breaks between them. */
const NBSP = '\u00a0';
const MINUS = '\u2212';

/** What differs between languages in how a figure is written. */
export interface FigureHabits {
  readonly decimalPoint: string;
  /** Twelve, January first. */
  readonly months: readonly string[];
  /** Day, name of the month, year. */
  readonly date: (day: number, month: string, year: number) => string;
}

/** How figures, marks and times are written in one language. */
export interface Formats {
  /** With exactly `digits` decimals; from five digits on in groups of three; a real minus. */
  number(value: number, digits: number): string;
  /** As few decimals as the value has, at most `most`. For values that were typed in. */
  plain(value: number, most?: number): string;
  /** Stops on the run screen: one decimal, with sign; zero has none. */
  stops(value: Stops): string;
  /** Stops in the ledger: two decimals, with sign; zero has none. */
  stopsFine(value: Stops): string;
  /** A duration as '1:04' or '1:02:03', rounded to the second; '−0:07' when past. */
  duration(time: Seconds): string;
  /** Local wall time '18:42' of an instant, `offsetMin` minutes ahead of UTC. */
  time(wallMs: number, offsetMin: number): string;
  /** Local wall time '18:42:07'. */
  timeFine(wallMs: number, offsetMin: number): string;
  /** The local date of an instant. */
  date(wallMs: number, offsetMin: number): string;
  /** A calendar date kept as YYYY-MM-DD. */
  calendarDate(iso: string): string;
  /** 'f/6.3' */
  fMark(mark: string): string;
  /** '64 s', '1/10 s' */
  timeMark(mark: string): string;
  /** 'ISO 12 800' */
  isoMark(mark: string): string;
  /** A time as it is set: the dial's mark, or a bulb time as a duration. */
  timeChoice(time: Settings['time']): string;
}

const two = (value: number): string => String(value).padStart(2, '0');

/** Groups of three from five digits on: 6400, 12 800. */
const grouped = (whole: string): string =>
  whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, NBSP);

/** Makes the formats of a language. */
export function createFormats({ decimalPoint, months, date }: FigureHabits): Formats {
  const number = (value: number, digits: number): string => {
    const [whole = '', fraction] = Math.abs(value).toFixed(digits).split('.');
    const written =
      fraction === undefined ? grouped(whole) : grouped(whole) + decimalPoint + fraction;
    return value < 0 && /[1-9]/.test(written) ? MINUS + written : written;
  };
  const signed = (value: number, digits: number): string => {
    const written = number(value, digits);
    return value > 0 && /[1-9]/.test(written) ? `+${written}` : written;
  };
  const plain = (value: number, most = 3): string => {
    const shortest = Number(value.toFixed(most));
    return number(shortest, (String(shortest).split('.')[1] ?? '').length);
  };
  const local = (wallMs: number, offsetMin: number): Date => new Date(wallMs + offsetMin * 60_000);
  const time = (wallMs: number, offsetMin: number): string => {
    const at = local(wallMs, offsetMin);
    return `${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`;
  };
  const dateOf = (at: Date): string =>
    date(at.getUTCDate(), months[at.getUTCMonth()] ?? '', at.getUTCFullYear());
  const duration = (seconds: Seconds): string => {
    const whole = Math.abs(Math.round(seconds));
    const hours = Math.floor(whole / 3600);
    const minutes = Math.floor(whole / 60) % 60;
    const written =
      hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
    return seconds < 0 && whole > 0 ? MINUS + written : written;
  };
  const timeMark = (mark: string): string => `${mark}${NBSP}s`;
  return {
    number,
    plain,
    stops: (value) => signed(value, 1),
    stopsFine: (value) => signed(value, 2),
    duration,
    time,
    timeFine: (wallMs, offsetMin) =>
      `${time(wallMs, offsetMin)}:${two(local(wallMs, offsetMin).getUTCSeconds())}`,
    date: (wallMs, offsetMin) => dateOf(local(wallMs, offsetMin)),
    calendarDate: (iso) => dateOf(new Date(`${iso}T00:00:00Z`)),
    fMark: (mark) => `f/${mark}`,
    timeMark,
    isoMark: (mark) => `ISO${NBSP}${/^\d+$/.test(mark) ? grouped(mark) : mark}`,
    timeChoice: (choice) =>
      choice.kind === 'dial' ? timeMark(choice.mark) : duration(choice.seconds),
  };
}
