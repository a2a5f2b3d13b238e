import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  A,
  B,
  dialled,
  Evening,
  frame,
  gear,
  held,
  planOf,
  twoSets,
} from '../../test/evenings/evening.ts';
import { isFault } from '../gear/read.ts';
import {
  EVENT_VERSION,
  type EventData,
  type EventKind,
  type OutingEvent,
} from '../outing/events.ts';
import type { EventId } from '../outing/ids.ts';
import type { FrameKey } from '../plan/ids.ts';
import { duration, ev, fNumber, iso, seconds, stops } from '../science/units.ts';
import { readEvent, readEvents } from './events.ts';

const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

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

/** Every kind in every shape it can take; a kind without one does not compile. */
const SAMPLES: { readonly [K in EventKind]: readonly EventData[K][] } = {
  'outing-started': [
    { plan, gear, frames },
    {
      gear,
      frames: [],
      plan: {
        ...plan,
        nearestSubjectMm: null,
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
  replanned: [{ remaining: frames, reason: 'next-two-swapped' }],
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
};

const [started] = new Evening(twoSets()).events;
if (!started) throw new Error('the evening has not begun');

const cases = Object.entries(SAMPLES).flatMap(([kind, datas]) =>
  datas.map((data) => ({ ...started, kind, data }) as OutingEvent),
);

describe('every kind of event', () => {
  it.each(cases.map((event) => [event.kind, event] as const))(
    '%s comes back as it was',
    (_kind, event) => {
      expect(readEvent(json(event))).toEqual(event);
    },
  );

  it('is refused with a place when any one of its fields is missing', () => {
    for (const event of cases) {
      for (const field of Object.keys(event)) {
        const { [field]: _gone, ...rest } = json(event) as Record<string, unknown>;
        expect(readEvent(rest)).toMatchObject({ rule: 'field-missing', path: field });
      }
      for (const field of Object.keys(event.data)) {
        const { [field]: _gone, ...rest } = json(event.data) as Record<string, unknown>;
        expect(readEvent({ ...event, data: rest })).toMatchObject({
          refused: true,
          path: expect.stringContaining('data') as string,
        });
      }
    }
  });

  it('is refused when a field stands there that nobody knows', () => {
    for (const event of cases) {
      expect(readEvent({ ...event, data: { ...event.data, extra: 1 } })).toMatchObject({
        rule: 'field-unknown',
        params: { field: 'extra' },
      });
    }
  });
});

describe('events that are not ours to read', () => {
  it('refuses one that a newer version wrote, before looking at its data', () => {
    expect(
      readEvent({ ...started, v: EVENT_VERSION + 1, kind: 'tomorrow', data: 7 }),
    ).toMatchObject({
      rule: 'event-newer',
      path: 'v',
      params: { version: EVENT_VERSION + 1, known: EVENT_VERSION },
    });
  });

  it.each([
    ['kind', 'tomorrow', 'not-among'],
    ['seq', 0, 'out-of-range'],
    ['seq', 1.5, 'not-whole'],
    ['wallMs', null, 'not-a-number'],
    ['wallMs', 1e300, 'out-of-range'],
    ['offsetMin', 100_000, 'out-of-range'],
    ['id', '__proto__', 'not-an-id'],
    ['outing', 'a/b', 'not-an-id'],
    ['data', { refused: true, rule: 'forged', path: '', params: {} }, 'field-unknown'],
  ])('refuses %s = %j', (field, value, rule) => {
    expect(readEvent({ ...started, [field]: value })).toMatchObject({ refused: true, rule });
  });

  it('names the event in a list', () => {
    expect(readEvents([started, { ...started, seq: -1 }])).toMatchObject({
      rule: 'out-of-range',
      path: '[1].seq',
    });
  });

  it('never throws, and reads nothing but what it would write again', () => {
    const value = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom(undefined, Number.NaN, Number.NEGATIVE_INFINITY, -0, 1e308, [], {}),
    );
    fc.assert(
      fc.property(fc.constantFrom(...cases), value, fc.nat(), (event, put, at) => {
        const data = json(event.data) as Record<string, unknown>;
        const names = Object.keys(data);
        const name = names[at % Math.max(1, names.length)] ?? 'any';
        const read = readEvent({ ...event, data: { ...data, [name]: put } });
        if (!isFault(read)) expect(readEvent(json(read))).toEqual(read);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('a whole evening', () => {
  it('comes back event for event', () => {
    const evening = new Evening(twoSets()).setUp().shootAll();
    evening.tap({ tap: 'end' });
    expect(evening.events.length).toBeGreaterThan(15);
    expect(readEvents(json(evening.events))).toEqual(evening.events);
  });
});
