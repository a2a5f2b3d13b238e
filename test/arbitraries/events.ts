import { PRACTICE_SITE } from '../../src/light/practice.ts';
import type { CameraFile } from '../../src/outing/cameraFile.ts';
import type { EventData, EventKind, OutingEvent } from '../../src/outing/events.ts';
import type { EventId } from '../../src/outing/ids.ts';
import type { FrameKey } from '../../src/plan/ids.ts';
import { must } from '../../src/science/refusal.ts';
import {
  duration,
  ev,
  fNumber,
  iso,
  millimetres,
  parseCelsius,
  pixels,
  seconds,
  stops,
} from '../../src/science/units.ts';
import { A, B, dialled, Evening, frame, gear, held, planOf, twoSets } from '../evenings/evening.ts';
import { SILENT_FILE } from '../pictures/silentFile.ts';
import { DUSK, EVEN_DUSK } from './sky.ts';

const made = 'phone-00007' as EventId;
const key = 'base/practice-rig-a/1/1' as FrameKey;
const [body] = gear.bodies;
const [lens] = gear.lenses;
const [rig] = gear.rigs;
if (!body || !lens || !rig) throw new Error('the practice gear is empty');

const frames = [
  frame('base', A, dialled('6.3', '64', '100')),
  frame('base', B, held('8', 0.5, '12800'), { pass: 2, repeat: 3, visit: 4 }),
];
const plan = planOf(frames);
const [set] = plan.sets;
if (!set) throw new Error('the plan is empty');

/** A file that says all there is to say. */
const FILE: CameraFile = {
  name: 'ALD_0042.RAW',
  bytes: 104_857_600,
  time: { shownMs: DUSK + 3_600_500, offsetMin: 60, subSecond: true },
  exposureS: seconds(64),
  fNumber: fNumber(6.3),
  iso: iso(100),
  focalMm: millimetres(45),
  make: 'Invented',
  model: 'Alder 44',
  serial: '0001',
  lens: '45 mm f/4',
  pixelsWide: pixels(8272),
  pixelsHigh: pixels(6200),
  temperature: must(parseCelsius(12.5)),
};

/** Every kind in every shape it can take; a kind without one does not compile. */
const SAMPLES: { readonly [K in EventKind]: readonly EventData[K][] } = {
  'outing-started': [
    { plan, gear, frames, site: null, sky: null },
    {
      gear,
      frames: [],
      site: PRACTICE_SITE,
      sky: EVEN_DUSK,
      plan: {
        ...plan,
        nearestSubjectMm: null,
        evening: {
          site: PRACTICE_SITE.id,
          date: '2027-02-12',
          startMs: DUSK,
          cloud: 'average-cloud',
        },
        sets: [
          { ...set, hold: { kind: 'free', settings: { [A]: dialled('8', '1/10', '64') } } },
          { ...set, id: 's2' as never, hold: { kind: 'same-picture' }, kind: 'flat' },
          {
            ...set,
            id: 's3' as never,
            kind: 'capped-dark',
            targetOffset: stops(-2),
            hold: {
              kind: 'same-iso-and-time',
              aperture: { rule: 'same-depth-of-field', plus: stops(0.5) },
            },
          },
        ],
      },
    },
  ],
  'setup-ticked': [{ rig: A, item: 'hood-on', done: false }],
  'setup-finished': [{}],
  'counter-set': [{ rig: A, next: 9999 }],
  mounted: [{ rigs: [A, B] }, { rigs: [] }],
  dialled: [{ rig: A, settings: dialled('6.3', '1/10', '100') }],
  'exposure-started': [{ frame: key, rig: A, leadInS: duration(0) }],
  'exposure-closed': [{ made }],
  recorded: [
    { made, settings: held('6.3', 241.5, '100'), fileNumber: 12 },
    { made, settings: dialled('6.3', '64', '100'), fileNumber: null },
  ],
  'extra-shot': [{ rig: A, count: 1 }],
  judged: [{ made, verdict: 'passer-by-light' }],
  'retake-asked': [{ frame: key }],
  'frame-skipped': [{ frame: key }],
  replanned: [
    { remaining: frames, reason: 'next-two-swapped' },
    { remaining: [], reason: 'set-rematched' },
  ],
  noted: [
    { text: 'wind, \u0007 and \ud800 half a sign\n"quoted"', made: null },
    { text: '', made },
  ],
  'reading-taken': [
    { meter: 'Spot', reading: { kind: 'ev', ev100: ev(-2.3) } },
    { meter: '', reading: { kind: 'settings', n: fNumber(8), t: seconds(30), s: iso(100) } },
    {
      meter: 'A',
      reading: { kind: 'test-frame', n: fNumber(8), t: seconds(30), s: iso(100), thirdsOver: -4 },
    },
  ],
  'battery-changed': [{ rig: A }],
  'lens-touched': [{ rig: A }],
  'powered-off': [{ rig: A }],
  'rest-skipped': [{ rig: A, leftS: duration(12.25) }],
  'cue-late': [{ made, lateS: duration(3) }],
  paused: [{}],
  resumed: [{}],
  ended: [{}],
  undone: [{ target: made }],
  discarded: [{ made }],
  corrected: [
    { frame: made, field: 'isoMark', value: '6400' },
    { frame: made, field: 'fMark', value: '7.1' },
    { frame: made, field: 'time', value: { kind: 'bulb', seconds: seconds(300) } },
    { frame: made, field: 'elapsedS', value: seconds(242) },
    { frame: made, field: 'fileNumber', value: null },
    { frame: made, field: 'verdict', value: 'soft' },
    { frame: made, field: 'verdict', value: null },
    { frame: made, field: 'counts', value: false },
    { frame: made, field: 'note', value: 'fog' },
  ],
  'gear-corrected': [
    { part: 'body', value: body },
    { part: 'lens', value: lens },
    {
      part: 'rig',
      value: {
        ...rig,
        offsets: [{ isoMark: null, stops: stops(-0.2), date: '2027-02-12', how: '' }],
      },
    },
  ],
  'clock-framed': [{ rig: A }],
  'files-matched': [
    {
      files: [
        { made, file: FILE },
        { made, file: SILENT_FILE },
        { made, file: null },
      ],
      clocks: [
        {
          rig: A,
          aheadS: seconds(3600.5),
          sigmaS: duration(0.4),
          gainsSPerHour: duration(0),
          atMs: DUSK,
          from: 'clock-frame',
        },
      ],
    },
    { files: [], clocks: [] },
  ],
  'values-taken': [
    {
      changes: [
        { frame: made, field: 'isoMark', value: '6400' },
        { frame: made, field: 'elapsedS', value: seconds(64) },
      ],
    },
  ],
  'evened-up': [
    {
      set: set.id,
      rig: B,
      pass: null,
      needed: { stops: stops(0.8), sigma: null, by: 'typed' },
    },
    {
      set: set.id,
      rig: B,
      pass: 2,
      needed: { stops: stops(-0.25), sigma: stops(0.05), by: 'region' },
    },
    { set: set.id, rig: B, pass: 1, needed: null },
  ],
};

const [started] = new Evening(twoSets()).events;
if (!started) throw new Error('the evening has not begun');

/** One event of each sample, in the same place of a journal. */
export const EVERY_EVENT: readonly OutingEvent[] = Object.entries(SAMPLES).flatMap(
  ([kind, datas]) => datas.map((data) => ({ ...started, kind, data }) as OutingEvent),
);
