import type { PositionAnswer } from '../../app/light.ts';
import type { Fault } from '../../gear/read.ts';
import type { BandName } from '../../light/night.ts';
import type { Contradiction } from '../../light/scene.ts';
import type { SkyCondition } from '../../science/cloud.ts';
import type { SunEventName } from '../../science/skyEvents.ts';
import { faults } from './faults.en.ts';

const minutes = (count: number): string => (count === 1 ? '1 minute' : `${count} minutes`);

/** Words of the Light place. */
export const light = {
  title: 'Light',
  chooseHint: 'Choose a site to see its light.',
  gone: 'This site is not here any more.',
  toSites: 'Back to all sites',

  /* Sites. */
  sites: 'Sites',
  noSite:
    'No site yet. Add one where you stand, or by its coordinates: the app then knows sunset, the twilights and how fast the light falls. Everything else works without it.',
  addSite: 'Add a site',
  onlyInvented: 'This site is invented, for practice. Add one of your own for a real evening.',
  newSite: 'New site',
  saveSite: 'Save the site',
  name: 'Name',
  nameHint: 'As you will know it in the field.',
  position: 'From the phone',
  positionWhy:
    'The place decides when the sun sets and how fast the light falls. The phone is asked once; the answer stays on it.',
  askPosition: 'Use where I am',
  asking: 'Asking the phone. You can type the coordinates meanwhile.',
  positioned: (within: string) => `Taken, to within ${within} m.`,
  noPosition: {
    refused:
      'The phone does not give its position to this app. Nothing else depends on it. Type the coordinates instead.',
    absent: 'This browser knows no position. Type the coordinates instead.',
    'not-found':
      'The phone did not find its position. Try under open sky, or type the coordinates.',
    timeout: 'The phone has not answered. Try again, or type the coordinates.',
  } satisfies Record<Exclude<PositionAnswer['kind'], 'here'>, string>,
  coordinates: 'Latitude and longitude',
  coordinatesHint:
    'Decimal or in degrees, minutes and seconds: 54.90 N 3.60 W, or 54 54 0 N 3 36 0 W.',
  coordinatesFirst:
    'Not saved: the coordinates are missing. Nothing is lost. Enter them, then save.',
  nameFirst: 'Not saved: the name is missing. Nothing is lost. Write a name, then save.',
  restFollows: 'Time zone, height and ridge follow on the next screen, where each can be changed.',
  where: 'Where it is',
  height: 'Height above the sea',
  metres: 'm',
  zone: 'Time zone',
  zoneHint: 'From the coordinates, and coarse near borders. Change it if the clocks there differ.',
  zoneProposed: (zone: string) => `For these coordinates it would be ${zone}.`,
  takeZone: 'Take it',
  fixedZone: 'A fixed offset',
  offset: 'Ahead of UTC',
  offsetHint: 'Hours and minutes, with a minus west of Greenwich: 5:45, -3:30.',
  offsetUnreadable:
    'This is not an offset. Write hours and minutes between -14:00 and 14:00, as in 5:45.',
  ridge: 'Ridge toward the setting sun',
  ridgeHint: 'How high the land stands there, in degrees. A fist at arm’s length is about 10.',
  degrees: '°',
  note: 'Note',
  noteHint: 'Access, tide, where to stand.',
  siteActs: 'This site',
  copy: 'Copy',
  copyOf: (name: string) => `${name}, copy`,
  delete: 'Delete',
  about: 'About this site',
  latitude: (figure: string, north: boolean) => `${figure}° ${north ? 'N' : 'S'}`,
  longitude: (figure: string, east: boolean) => `${figure}° ${east ? 'E' : 'W'}`,
  fault: (fault: Fault): string => LIGHT_FAULTS[fault.rule]?.(fault.params) ?? faults.fault(fault),

  /* The night. */
  evening: 'Evening',
  dayBefore: 'The day before',
  dayAfter: 'The day after',
  otherDate: (date: string) => `Evening of ${date}. Choose another`,
  chooseDate: 'Another evening',
  date: 'Date',
  dateHint: 'Year, month, day: 2027-02-12.',
  showDate: 'Show it',
  tonight: 'Tonight',
  practiceEvening: 'Its own evening',
  movedFrom: (date: string) => `The evening of ${date}, at the time of the practice outing.`,
  computing: 'Working out sun and moon.',
  failed:
    'The part that knows sun and moon is not on the device. Your data is safe. Open the app once with a network, then try again.',
  tryAgain: 'Try again',

  cloud: 'Sky',
  cloudNotStated: (within: string | null) =>
    `Cloud: not stated.${within === null ? '' : ` Nine times in ten the scene lies within ${within} stops.`}`,
  clouds: [
    { value: 'unknown', label: 'Not stated' },
    { value: 'clear', label: 'Clear' },
    { value: 'thin-cloud-over-sun', label: 'Thin cloud' },
    { value: 'average-cloud', label: 'Average cloud' },
    { value: 'dark-stratus', label: 'Dark stratus' },
  ] satisfies readonly { readonly value: SkyCondition | 'unknown'; readonly label: string }[],

  curve: 'Scene EV against the clock',
  cursor: 'Instant on the curve',
  cursorHint: 'Touch the curve, or use the arrow keys; Page Up and Page Down go by ten minutes.',
  shown: 'Shown',
  views: { dusk: 'Dusk', night: 'Noon to noon', dawn: 'Dawn' },
  ev: 'EV',
  atClock: 'At',
  sceneEv: 'Scene EV',
  evWithin: (within: string) => `9 in 10: ±${within}`,
  fade: 'Fade',
  perMinute: 'stop/min',
  unknown: 'unknown',
  now: 'now',
  readout: (clock: string, band: string, ev: string, within: string, fade: string) =>
    `${clock}, ${band}. EV ${ev}, nine times in ten within ${within} stops. Fade ${fade} stops a minute.`,
  bands: {
    day: 'day',
    civil: 'civil twilight',
    nautical: 'nautical twilight',
    astronomical: 'astronomical twilight',
    night: 'night',
  } satisfies Record<BandName, string>,
  asTable: 'The curve as a table',
  everyTen: 'Every ten minutes',
  tableCaption: (zone: string) => `Scene EV, times in ${zone}`,
  columns: { clock: 'Time', band: 'Light', ev: 'EV, 9 in 10' },
  evCell: (ev: string, within: string) => `${ev} ±${within}`,

  modelAlone:
    'Clear-sky estimate. The real scene can be two stops brighter or darker. Take a reading.',
  modelUnderCloud:
    'Estimate for the stated cloud. The real scene can be two stops brighter or darker. Take a reading.',
  fromReading: (age: number, now: string, later: string) =>
    `From your reading ${age < 1 ? 'just now' : `${minutes(age)} ago`}; 9 in 10 within ${now} stops now, ${later} in half an hour.`,
  fromReadings: (count: number) =>
    `The curve follows ${count === 1 ? 'your reading' : `your ${count} readings`} of this evening.`,
  contradiction: (found: Contradiction, figure: (value: number) => string): string => {
    switch (found.code) {
      case 'scale-far-from-one':
        return `The light changes ${figure(found.scale)} times as fast as under a clear sky. Cloud, or something before the glow: take readings often.`;
      case 'scattered':
        return `Your readings scatter by ${figure(found.stops)} stops. Point the meter at the same spot each time.`;
      case 'two-disagree':
        return `Two readings differ by ${figure(found.stops)} stops, and nobody can tell which is right. Take a third.`;
      case 'sky-changed':
        return `Your last readings are ${figure(Math.abs(found.stops))} stops ${found.stops < 0 ? 'below' : 'above'} the curve of those before: cloud, or something before the glow. The forecast uses them alone.`;
      case 'lamps':
        return `The readings stop falling at EV ${figure(found.ev100)}: lamps are lighting this scene. The sky no longer decides.`;
    }
  },

  caution:
    'Caution: never look at the sun through an optical finder, and never point a long lens at it.',

  sun: 'Sun',
  sunTimes: 'When the sun passes each limit',
  times: (zone: string) =>
    `Times in ${zone}. Weather at the horizon moves a real sunset by minutes.`,
  zoneWithOffset: (zone: string, offset: string) => `${zone}, ${offset}`,
  utc: (sign: string, hours: number, mins: string) =>
    `UTC${sign}${hours}${mins === '00' ? '' : `:${mins}`}`,
  nextDay: (clock: string) => `${clock} next day`,
  onDate: (clock: string, date: string) => `${clock}, ${date}`,
  what: 'What',
  when: 'When',
  events: {
    sunset: 'Sunset',
    'civil-dusk': 'Civil twilight ends',
    'nautical-dusk': 'Nautical twilight ends',
    'astronomical-dusk': 'Astronomical twilight ends',
    'astronomical-dawn': 'Astronomical twilight begins',
    'nautical-dawn': 'Nautical twilight begins',
    'civil-dawn': 'Civil twilight begins',
    sunrise: 'Sunrise',
  } satisfies Record<SunEventName, string>,
  lines: {
    sunset: 'sunset',
    'civil-dusk': 'civil dusk',
    'nautical-dusk': 'nautical dusk',
    'astronomical-dusk': 'astronomical dusk',
    'astronomical-dawn': 'astronomical dawn',
    'nautical-dawn': 'nautical dawn',
    'civil-dawn': 'civil dawn',
    sunrise: 'sunrise',
  } satisfies Record<SunEventName, string>,
  behindRidge: 'Behind the ridge',
  lowestSun: (altitude: string, clock: string) => `The sun is lowest at ${clock}: ${altitude}°.`,
  alwaysUp: 'Midnight sun: it does not set between these noons.',
  alwaysDown: 'Polar night: it does not rise between these noons.',
  neverBelow: {
    civil: 'It is never below −6°: civil twilight lasts all night.',
    nautical: 'It is never below −12°: nautical twilight lasts all night.',
    astronomical: 'It is never below −18°: astronomical twilight lasts all night.',
  },

  fades: 'Fade',
  fadeNow: 'Now',
  fadeFastest: 'Fastest this evening',
  fadeAt: (clock: string) => `at ${clock}`,
  noFall: 'The light does not fall this evening.',
  notNow: 'not this evening',

  moon: 'Moon',
  moonLit: (percent: string, waxing: boolean) =>
    `${percent} % lit, ${waxing ? 'waxing' : 'waning'}.`,
  moonUp: (spans: readonly string[]) => `Above the horizon ${spans.join(' and ')}.`,
  moonSpan: (from: string | null, to: string | null) => {
    if (from === null) return to === null ? 'throughout' : `until ${to}`;
    return to === null ? `from ${from}` : `from ${from} to ${to}`;
  },
  moonDown: 'Below the horizon throughout.',

  planned: (plan: string) => `The marks under the curve are the frames of ${plan}.`,
};

/** Rules that only places and zones have. */
const LIGHT_FAULTS: Readonly<Record<string, (params: Fault['params']) => string>> = {
  'coordinates-unreadable': () =>
    'These coordinates cannot be read. Write latitude, then longitude, as in 54.90 N 3.60 W.',
  'wrong-axis': () => 'Latitude comes first, with N or S; then longitude, with E or W.',
  'sign-and-letter': () => 'A coordinate takes a minus or a letter, not both. Leave one out.',
  'latitude-out-of-range': () => 'A latitude lies between 90 S and 90 N.',
  'longitude-out-of-range': () => 'A longitude lies between 180 W and 180 E.',
  'zone-unknown': () =>
    'This browser does not know that time zone. Choose another or a fixed offset.',
};
