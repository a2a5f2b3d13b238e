import type { TurnedDial } from '../../light/rightSettings.ts';
import type { SkyCondition } from '../../science/cloud.ts';

const count = (number: number, one: string, more: string): string =>
  `${number} ${number === 1 ? one : more}`;

const DIALS: Readonly<Record<TurnedDial['dial'], string>> = {
  time: 'time',
  iso: 'ISO',
  'f-number': 'aperture',
};

/** Words of a plan in its light. Clock times, stops and marks come in as they are written. */
export const planLight = {
  title: 'The evening',
  where: 'Site, date and sky',
  whereStated: (site: string, date: string, sky: string) => `${site}, ${date}, ${sky}`,
  noEvening: 'not stated, so the light is unknown',
  site: 'Site',
  noSite: 'None',
  siteHint: 'Sites are kept under Light.',
  siteGone: 'The site of this plan is not on this phone. Choose another.',
  date: 'Date',
  dateHint: 'Of the noon before the evening: year, month, day.',
  start: 'Start at',
  startHint: 'Hour and minute by the site’s clock. Empty = worked out from the light.',
  startBad: 'Write the time as hour and minute, as in 17:54.',
  sky: 'Sky',
  skies: {
    clear: 'clear',
    'thin-cloud-over-sun': 'thin cloud',
    'average-cloud': 'average cloud',
    'dark-stratus': 'dark stratus',
  } satisfies Record<SkyCondition, string>,
  skyUnknown: 'sky not stated',
  limits: 'Limits of the light',
  limitsStated: (tolerance: string, fade: string) =>
    `A set may be off by ${tolerance} stop, a pair may fade by ${fade}`,
  tolerance: 'A set may come out off by',
  toleranceHint: 'Either way, and still count as right. Our choice: 1.',
  mostFade: 'The light may change during a swap by',
  mostFadeHint: 'Our choice: a third of a stop, one click of the dial.',

  computing: 'Working out the light.',
  failed: 'The part that works out the light is not on this phone yet. Open the app once online.',
  noLight: 'The sky of that date has no light to lay this list on.',
  startsAt: (clock: string) => `Start at ${clock}.`,
  fitsAll: 'Every set then comes out right.',
  missesLeast: (sets: number) =>
    `No start fits every set. This one misses least: ${count(sets, 'set is', 'sets are')} off.`,
  statedFits: 'Every set comes out right.',
  statedMisses: (sets: number) => `${count(sets, 'set is', 'sets are')} off then.`,
  better: (clock: string, fits: boolean) =>
    fits ? `The latest start that fits every set is ${clock}.` : `${clock} would miss least.`,
  takeBetter: 'Work the start out',
  width: (stops: string) =>
    `By the clear-sky model alone, nine times in ten within ±${stops} stop. A reading at the site moves all of it.`,

  sunUp:
    'The sun is up at the start. Never look at it through an optical finder, and never leave a long lens pointed at it.',

  minutes: (from: string, to: string) => `Right from ${from} to ${to}.`,
  never: 'The evening never has its light.',
  planned: (from: string, to: string) => `Planned ${from} to ${to}.`,
  off: (stops: string, bright: boolean) =>
    `${stops} stop too ${bright ? 'bright' : 'dark'}, beyond the tolerance.`,
  mendBy: (ways: readonly string[]) =>
    ways.length === 0
      ? 'No other start and no one dial mends it: take another evening, or another aim.'
      : `To mend it: ${ways.join(', or ')}.`,
  mendStart: (clock: string, earlier: boolean) =>
    `start ${earlier ? 'earlier' : 'later'}, at ${clock}`,
  mendDial: (mark: string) => `dial ${mark}`,
  fade: (stops: string, within: string) => `Fade ${stops}\u00a0${within} stop in it, predicted`,

  swapTitle: (least: string, most: string) =>
    `While rigs are swapped the light changes by ${least === most ? least : `${least} to ${most}`} stop, in every pair. That is more than the limit.`,
  swapHelp: (ways: readonly string[]) => `What helps: ${ways.join('; ')}.`,
  sideBySide: 'mount the rigs side by side',
  quicker: (time: string) => `swap within ${time}`,
  otherOrder: (orders: string) => `the order ${orders}, whose mean cancels it`,
  slower: (clock: string) => `start from ${clock} on, when the light changes slowly enough`,

  rightAt: 'What would be right at',
  minute: 'Minute',
  rightBy: (dial: TurnedDial['dial'], mark: string, miss: string) =>
    `By the ${DIALS[dial]}: ${mark}, ${miss} stop from what is meant`,
};
