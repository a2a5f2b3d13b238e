import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyGear, anySettings } from '../../test/arbitraries/gear.ts';
import { millimetres, pixels } from '../science/units.ts';
import { BODY_DEFAULTS, COMMON_FORMATS, newBody, newLens } from './defaults.ts';
import type { BodyId, LensId } from './ids.ts';
import { bodyFields, lensFields, readBody, readGear, readLens, readSettings } from './parse.ts';
import { PRACTICE_GEAR } from './practice.ts';
import { isFault } from './read.ts';

type Json = Record<string, unknown>;

const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** A copy of a value in which one place, named as faults name it, holds something else. */
function withAt(value: unknown, path: string, put: unknown): unknown {
  const copy = json(value) as Json;
  const keys = path.split(/[.[\]]+/).filter((key) => key !== '');
  const last = keys.pop() ?? '';
  const holder = keys.reduce<Json>((place, key) => place[key] as Json, copy);
  holder[last] = put;
  return copy;
}

const body = newBody('b1' as BodyId, {
  name: 'Mine',
  sign: 'A',
  widthMm: millimetres(36),
  heightMm: millimetres(24),
  pixelsWide: pixels(6000),
  pixelsHigh: pixels(4000),
});
const lens = newLens('l1' as LensId, {
  name: 'Mine 35',
  focalMm: millimetres(35),
  widest: '2',
  narrowest: '16',
});

describe('gear that is whole', () => {
  it('reads the practice gear and the stated defaults as they are', () => {
    expect(readGear(json(PRACTICE_GEAR))).toEqual(PRACTICE_GEAR);
    expect(readBody(json(body))).toEqual(body);
    expect(readLens(json(lens))).toEqual(lens);
  });

  it('accepts every common format with pixels of its shape', () => {
    for (const { widthMm, heightMm } of COMMON_FORMATS) {
      const pixelsHigh = Math.round((6000 * heightMm) / widthMm);
      const one = { ...body, ...BODY_DEFAULTS, widthMm, heightMm, pixelsHigh };
      expect(readBody(json(one))).toEqual(one);
    }
  });

  it('comes back from JSON as it went in', () => {
    fc.assert(
      fc.property(anyGear, (gear) => {
        expect(readGear(json(gear))).toEqual(gear);
      }),
    );
  });

  it('takes a measured figure with its range and source, each by itself', () => {
    const from = 'capped series of 2027-02-12';
    const heat = { ...body.heat, tau: { usual: 510, least: 460, most: 570, from } };
    expect(readBody(json({ ...body, heat }))).toEqual({ ...body, heat });
  });

  it('reads settings back', () => {
    fc.assert(
      fc.property(anySettings, (settings) => {
        expect(readSettings(json(settings))).toEqual(settings);
      }),
    );
  });
});

describe('nothing absurd is stored', () => {
  const TAU = { usual: 500, least: 400, most: 600, from: 'capped series of 2027-02-12' };

  const cases: [string, string, unknown, string?][] = [
    ['length-not-positive', 'widthMm', 0],
    ['length-not-positive', 'heightMm', -24],
    ['out-of-range', 'widthMm', 3600],
    ['sensor-upright', 'heightMm', 37],
    ['not-a-number', 'widthMm', '36'],
    ['not-a-number', 'widthMm', null],
    ['not-whole', 'pixelsWide', 6000.5],
    ['pixels-not-of-this-sensor', 'pixelsHigh', 9000],
    ['text-empty', 'name', '  '],
    ['text-too-long', 'name', 'x'.repeat(61)],
    ['text-unprintable', 'name', 'two\nlines'],
    ['text-unprintable', 'name', '\ud800'],
    ['not-among', 'sign', 'E'],
    ['not-a-mark', 'iso.lowest', 'low'],
    ['not-a-mark', 'iso.lowest', 100],
    ['dial-ends-upside-down', 'iso.highest', '50', 'iso'],
    ['dial-end-off-series', 'iso.lowest', '123', 'iso'],
    ['dial-ends-upside-down', 'iso.extendedLowest', '200', 'iso'],
    ['not-among', 'iso.step', 'quarter'],
    ['not-a-mark', 'iso.missing[0]', 'none'],
    ['dial-ends-upside-down', 'time.longest', '1/8000', 'time'],
    ['not-a-mark', 'time.shortest', '1/0'],
    ['not-among', 'bulb.kind', 'magic'],
    ['out-of-range', 'bulb.longestS', 100_000],
    ['timer-not-among-choices', 'selfTimer.usedS', 5],
    ['field-missing', 'darkFrame', { kind: 'from' }, 'darkFrame.fromS'],
    ['counter-past-its-digits', 'files.rollsOverAfter', 10_000],
    ['not-in-file-names', 'files.prefix', 'A/B'],
    ['out-of-range', 'heat.tau', { ...TAU, most: 7201 }, 'heat.tau.most'],
    ['time-not-positive', 'heat.tau', { ...TAU, least: 0 }, 'heat.tau.least'],
    ['value-outside-its-range', 'heat.tau', { ...TAU, usual: 601 }],
    ['text-empty', 'heat.tau', { ...TAU, from: ' ' }, 'heat.tau.from'],
    ['field-missing', 'heat.tau', { usual: 500, least: 400, most: 600 }, 'heat.tau.from'],
    [
      'doubling-temperature-not-positive',
      'heat.doubling',
      { ...TAU, usual: 0 },
      'heat.doubling.usual',
    ],
    ['out-of-range', 'heat.idle', { ...TAU, usual: -1 }, 'heat.idle.usual'],
    ['field-missing', 'heat', { tau: null }, 'heat.doubling'],
    ['not-an-id', 'id', 'constructor'],
    ['not-an-id', 'id', '__proto__'],
    ['not-yes-or-no', 'invented', 'false'],
    ['field-unknown', 'colour', 'red', ''],
  ];

  it.each(cases)('refuses by %s: %s = %j', (rule, path, put, place = path) => {
    expect(readBody(withAt(body, path, put))).toMatchObject({ refused: true, rule, path: place });
  });

  it('refuses a lens with its range upside down or light from nowhere', () => {
    expect(readLens(withAt(lens, 'fNumber.widest', '22'))).toMatchObject({
      rule: 'dial-ends-upside-down',
      path: 'fNumber',
    });
    expect(readLens(withAt(lens, 'transmissionStops', 0.2))).toMatchObject({
      rule: 'out-of-range',
      params: { least: -5, most: 0 },
    });
  });

  it('takes a dial with missing positions, but not one with none left', () => {
    expect(bodyFields.iso({ ...body.iso, missing: ['125', '160'] })).toMatchObject({
      missing: ['125', '160'],
    });
    const only = { ...lens.fNumber, narrowest: '2', missing: ['2'] };
    expect(lensFields.fNumber(only)).toMatchObject({ refused: true, rule: 'dial-empty' });
  });

  it('reads no hostile key', () => {
    const hostile = JSON.parse(
      `{"__proto__": {"name": "x"}, "bodies": [], "lenses": [], "rigs": []}`,
    );
    expect(readGear(hostile)).toMatchObject({
      rule: 'field-unknown',
      params: { field: '__proto__' },
    });
    expect(Object.prototype).not.toHaveProperty('name');
  });
});

describe('gear whose things belong together', () => {
  it('names the rig that stands on nothing', () => {
    expect(readGear(withAt(PRACTICE_GEAR, 'rigs[1].lensId', 'gone'))).toMatchObject({
      rule: 'lens-gone',
      path: 'rigs[1].lensId',
    });
    expect(readGear(withAt(PRACTICE_GEAR, 'rigs[2].bodyId', 'gone'))).toMatchObject({
      rule: 'body-gone',
      path: 'rigs[2].bodyId',
    });
  });

  it('names the id that stands twice, even across kinds', () => {
    const alder = 'practice-alder-44';
    expect(readGear(withAt(PRACTICE_GEAR, 'lenses[0].id', alder))).toMatchObject({
      rule: 'id-twice',
      path: 'lenses[0].id',
      params: { id: alder },
    });
  });

  it.each(['2027-02-29', '2027-13-01', '27-02-12', '2027-02-12T20:00', 20_270_212])(
    'refuses an offset found on %j',
    (date) => {
      const offset = { isoMark: null, stops: 0.1, date, how: 'wall' };
      expect(readGear(withAt(PRACTICE_GEAR, 'rigs[0].offsets', [offset]))).toMatchObject({
        rule: 'not-a-date',
        path: 'rigs[0].offsets[0].date',
      });
    },
  );
});

describe('gear from a damaged file', () => {
  it('is refused with a place, and never throws, whatever stands in one field', () => {
    const strange = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom(undefined, Number.NaN, Number.POSITIVE_INFINITY, 1e308, -1, '', [], {}),
    );
    const place = fc.constantFrom(
      'bodies',
      'bodies[0]',
      'bodies[0].iso',
      'bodies[0].iso.missing',
      'bodies[0].bulb',
      'bodies[0].widthMm',
      'lenses[1].fNumber.step',
      'lenses[1].transmissionStops',
      'rigs[2].offsets',
      'rigs[2].letter',
    );
    fc.assert(
      fc.property(place, strange, (path, put) => {
        const read = readGear(withAt(PRACTICE_GEAR, path, put));
        if (isFault(read)) {
          // A missing body is missed by its rig; everything else is found where it stands.
          const found =
            read.rule === 'body-gone' || read.path.startsWith(path) || path.startsWith(read.path);
          expect(found, `${read.rule} at ${read.path}`).toBe(true);
        } else {
          // Then it was a value that may stand there.
          expect(readGear(json(read))).toEqual(read);
        }
      }),
      { numRuns: 500 },
    );
  });
});
