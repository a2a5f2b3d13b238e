import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVERY_EVENT } from '../../test/arbitraries/events.ts';
import { Evening, twoSets } from '../../test/evenings/evening.ts';
import { isFault } from '../gear/read.ts';
import { EVENT_VERSION } from '../outing/events.ts';
import { readEvent, readEvents } from './events.ts';

const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

const [started] = EVERY_EVENT;
if (!started) throw new Error('there are no samples');

describe('every kind of event', () => {
  it.each(EVERY_EVENT.map((event) => [event.kind, event] as const))(
    '%s comes back as it was',
    (_kind, event) => {
      expect(readEvent(json(event))).toEqual(event);
    },
  );

  it('is refused with a place when any one of its fields is missing', () => {
    for (const event of EVERY_EVENT) {
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
    for (const event of EVERY_EVENT) {
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
      fc.property(fc.constantFrom(...EVERY_EVENT), value, fc.nat(), (event, put, at) => {
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
