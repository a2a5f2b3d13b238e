import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVERY_EVENT } from '../../test/arbitraries/events.ts';
import { anyGear } from '../../test/arbitraries/gear.ts';
import { A, Evening, planOf, twoSets } from '../../test/evenings/evening.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { isFault } from '../gear/read.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import type { Site, SiteId } from '../light/site.ts';
import { SETUP_ITEMS, VERDICTS } from '../outing/events.ts';
import { ev, fNumber, iso, minutesEast, seconds } from '../science/units.ts';
import { readAnyFile } from './anyFile.ts';
import { backupFile } from './backup.ts';
import { gearFile } from './gearFile.ts';
import { journalFile } from './journalFile.ts';
import { journalOf } from './journalOf.ts';

/*
 * The published schemas against files as the app writes them, by a validator that
 * is not ours.
 */

type Json = Record<string, unknown>;

const NAMES = ['gear', 'journal', 'backup'] as const;
type Name = (typeof NAMES)[number];
const VERSIONS: Readonly<Record<Name, number>> = { gear: 2, journal: 3, backup: 3 };
const fileOf = (name: Name): string => `evenfall-${name}.${VERSIONS[name]}.schema.json`;
const published = (name: Name): Json =>
  JSON.parse(readFileSync(`${import.meta.dirname}/../../public/schema/${fileOf(name)}`, 'utf8'));

/** The journal's schema with no room for a column of the log that it does not describe. */
function withFrameClosed(schema: Json): Json {
  const defs = schema['$defs'] as Json | undefined;
  if (!defs?.['frame']) return schema;
  const frame = { ...(defs['frame'] as Json), additionalProperties: false };
  const pair = { ...(defs['pair'] as Json), additionalProperties: false };
  return { ...schema, $defs: { ...defs, frame, pair } };
}

const ajv = new Ajv2020({ allowUnionTypes: true, strictTypes: false, validateFormats: false });
for (const name of NAMES) ajv.addSchema(withFrameClosed(published(name)), fileOf(name));

function faultsOf(name: Name, file: string): string[] {
  const validate = ajv.getSchema(fileOf(name));
  if (!validate) throw new Error(`no schema ${name}`);
  validate(JSON.parse(file));
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

const stamp = { app: '2027.2.12', written: '2027-02-12T21:00:00.000Z' };

function eventfulEvening(): Evening {
  const evening = new Evening(twoSets());
  evening.tap({ tap: 'set-counter', rig: A, next: 41 });
  for (const item of SETUP_ITEMS) evening.tap({ tap: 'tick', rig: A, item, done: true });
  evening.setUp().shoot();
  const [first] = evening.state().made;
  if (!first) throw new Error('no frame was made');
  for (const verdict of VERDICTS) evening.tap({ tap: 'judge', made: first.id, verdict });
  evening.tap({ tap: 'retake', frame: first.planned.key }).shoot();
  evening.tap({ tap: 'discard', made: first.id });
  evening.tap({ tap: 'extra-shot', rig: A }).tap({ tap: 'battery-changed', rig: A }).undo();
  evening.tap({ tap: 'note', text: 'fog', made: null });
  for (const reading of [
    { kind: 'ev', ev100: ev(-1.5) },
    { kind: 'settings', n: fNumber(8), t: seconds(30), s: iso(100) },
    { kind: 'test-frame', n: fNumber(8), t: seconds(30), s: iso(100), thirdsOver: -2 },
  ] as const) {
    evening.tap({ tap: 'reading', meter: 'spot', reading });
  }
  evening.tap({ tap: 'pause' }).tap({ tap: 'resume' }).shootAll();
  const change = { field: 'isoMark', value: '125' } as const;
  evening.tap({ tap: 'correct', made: first.id, change });
  const [body] = PRACTICE_GEAR.bodies;
  if (body) evening.tap({ tap: 'correct-gear', change: { part: 'body', value: body } });
  return evening.tap({ tap: 'end' });
}

const evening = eventfulEvening();
const { events, outing } = evening;
const plan = planOf(twoSets());

/** A clock by hand. */
const hut: Site = {
  ...PRACTICE_SITE,
  id: 'hut' as SiteId,
  zone: { kind: 'fixed', offsetMin: minutesEast(345) },
};
const files: Readonly<Record<Name, string>> = {
  gear: gearFile.write({ gear: PRACTICE_GEAR }, stamp),
  journal: journalFile.write(journalOf(outing, events), stamp),
  backup: backupFile.write(
    {
      gear: PRACTICE_GEAR,
      plans: [plan],
      sites: [PRACTICE_SITE, hut],
      events,
      tombstones: ['gone'],
    },
    stamp,
  ),
};

describe('the published schemas', () => {
  it.each(NAMES)('describe every field of a real %s file', (name) => {
    expect(faultsOf(name, files[name])).toEqual([]);
  });

  it('describe every kind of event', () => {
    for (const event of EVERY_EVENT) {
      const journal = { outing: event.outing, events: [event], frames: [], pairs: [] };
      expect(faultsOf('journal', journalFile.write(journal, stamp))).toEqual([]);
    }
  });

  it('describe gear of any kind', () => {
    fc.assert(
      fc.property(anyGear, (gear) => {
        expect(faultsOf('gear', gearFile.write({ gear }, stamp))).toEqual([]);
      }),
    );
  });

  it('say what every field of a file and of a frame is', () => {
    for (const name of NAMES) {
      const undescribed: string[] = [];
      const walk = (schema: unknown, path: string): void => {
        if (typeof schema !== 'object' || schema === null) return;
        const { properties = {}, ...rest } = schema as { properties?: Json };
        for (const [field, value] of Object.entries(properties)) {
          const said = Object.keys(value as Json);
          if (!['description', '$ref', 'const', 'enum'].some((key) => said.includes(key))) {
            undescribed.push(`${path}.${field}`);
          }
          walk(value, `${path}.${field}`);
        }
        for (const [key, value] of Object.entries(rest)) walk(value, `${path}.${key}`);
      };
      const { $defs, ...root } = published(name);
      walk(root, name);
      for (const [key, value] of Object.entries($defs ?? {})) {
        if (!key.startsWith('data-corrected') && !key.startsWith('event')) walk(value, key);
      }
      expect(undescribed).toEqual([]);
    }
  });

  it.each([
    ['gear', '"widthMm":43.8', '"widthMm":0'],
    ['gear', '"widthMm":43.8', '"widthMm":"43.8"'],
    ['gear', '"lowest":"64"', '"lowest":"low"'],
    ['gear', '"kind":"hold"', '"kind":"none"'],
    ['gear', '"kind":"none"', '"kind":"hold"'],
    ['gear', '"widthMm":', '"colour":"red","widthMm":'],
    ['gear', '"version":2', '"version":3'],
    ['journal', '"kind":"recorded"', '"kind":"mounted"'],
    ['journal', '"item":"hood-on"', '"item":"hat-on"'],
    ['journal', '"v":3', '"v":4'],
    ['journal', '"fileNumber":41', '"fileNumber":-1'],
    ['journal', '"verdict":"soft"', '"verdict":"nice"'],
    ['journal', '"thirdsOver":-2', '"thirds":-2'],
    ['backup', '"order":"forward"', '"order":"backward"'],
    ['backup', '"plans":[', '"plan":['],
  ] as const)('refuse in a %s file %s turned into %s, and so does the app', (name, from, to) => {
    const broken = files[name].replace(from, to);
    expect(broken).not.toBe(files[name]);
    expect(faultsOf(name, broken)).not.toEqual([]);
    expect(readAnyFile(broken)).toMatchObject({ refused: true });
  });

  it('refuse nothing that the app reads', () => {
    const paths: string[][] = [];
    const walk = (value: unknown, path: string[]): void => {
      if (path.length > 0) paths.push(path);
      if (typeof value !== 'object' || value === null) return;
      for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key]);
    };
    walk(JSON.parse(files.backup), []);
    const swap = fc.constantFrom<unknown>(
      null,
      0,
      -1,
      1,
      0.5,
      64,
      1e9,
      '',
      'x',
      '100',
      true,
      [],
      {},
    );
    fc.assert(
      fc.property(fc.constantFrom(...paths), swap, (path, value) => {
        // A file that says it is older is of another schema.
        fc.pre(!(path.join() === 'version' && (value === 1 || value === 2)));
        const json = JSON.parse(files.backup);
        const holder = path.slice(0, -1).reduce((place, key) => place[key], json);
        holder[path.at(-1) ?? ''] = value;
        const changed = JSON.stringify(json);
        if (!isFault(readAnyFile(changed))) expect(faultsOf('backup', changed)).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });
});
