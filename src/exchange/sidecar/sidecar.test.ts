import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { strFromU8, unzipSync } from 'fflate';
import { RdfXmlParser } from 'rdfxml-streaming-parser';
import { describe, expect, it } from 'vitest';
import { EVERY_EVENT } from '../../../test/arbitraries/events.ts';
import { A, B, Evening, twoSets } from '../../../test/evenings/evening.ts';
import type { CameraFile } from '../../outing/cameraFile.ts';
import type { RunState } from '../../outing/state.ts';
import { frameRecords } from '../frameTable.ts';
import { NAMESPACE, rational, xmpOf } from './xmp.ts';
import { sidecarsOf } from './zip.ts';

const STAMP = { app: '2027.2.12', written: '2027-02-12T21:00:00.000Z' };
const EXIF = 'http://ns.adobe.com/exif/1.0/';
const RDF = 'http://www.w3.org/1999/02/22-rdf-syntax-ns#';

/** All statements of a packet by a general reader of RDF/XML, by predicate. */
function statements(xmp: string): Promise<Map<string, string>> {
  // The packet's wrapper is XMP's own; what lies in it is RDF.
  const rdf = /<rdf:RDF[\s\S]*<\/rdf:RDF>/.exec(xmp)?.[0] ?? '';
  return new Promise((done, fail) => {
    const found = new Map<string, string>();
    const parser = new RdfXmlParser({ baseIRI: 'urn:picture' });
    parser.on('data', ({ predicate, object }) => found.set(predicate.value, object.value));
    parser.on('error', fail);
    parser.on('end', () => done(found));
    parser.write(rdf);
    parser.end();
  });
}

const file = EVERY_EVENT.flatMap(({ kind, data }) =>
  kind === 'files-matched' ? data.files.flatMap((each) => each.file ?? []) : [],
)[0] as CameraFile;

function evening(): Evening {
  const walked = new Evening(twoSets())
    .tap({ tap: 'set-counter', rig: A, next: 41 })
    .tap({ tap: 'set-counter', rig: B, next: 41 })
    .setUp()
    .shootAll();
  const [first] = walked.state().made;
  if (!first) throw new Error('no frame');
  return walked.tap({ tap: 'note', text: 'fog & <ice> "here"', made: first.id });
}
const matched = (walked: Evening, place: number, name: string): Evening =>
  walked.tap({
    tap: 'match-files',
    files: [{ made: walked.state().made[place]?.id as never, file: { ...file, name } }],
    clocks: [],
  });
const unzipped = (run: RunState, existing: readonly string[] = []) => {
  const sidecars = sidecarsOf(run, STAMP, existing);
  return { ...sidecars, entries: unzipSync(sidecars.zip) };
};

describe('a sidecar', () => {
  it('says to a general reader what the log says', async () => {
    const run = evening().state();
    const records = frameRecords(run);
    const { entries, names } = unzipped(run);
    expect(names).toHaveLength(4);
    for (const [place, name] of names.entries()) {
      const found = await statements(strFromU8(entries[name] as Uint8Array));
      const record = records[place] ?? {};
      for (const [column, cell] of Object.entries(record)) {
        const text = typeof cell === 'boolean' ? (cell ? 'True' : 'False') : String(cell ?? '');
        expect(found.get(NAMESPACE + column) ?? '', column).toBe(text);
      }
      const [above, below] = (found.get(`${EXIF}ExposureTime`) ?? '').split('/').map(Number);
      expect((above ?? 0) / (below ?? 1)).toBeCloseTo(Number(record['ExposureTime']), 6);
    }
    const first = await statements(strFromU8(entries[names[0] ?? ''] as Uint8Array));
    expect(first.get(`${EXIF}FNumber`)).toBe('6300000/1000000');
    expect(first.get(`${EXIF}DateTimeOriginal`)).toMatch(/^2027-02-12T17:.*\+00:00$/);
    expect([...first.values()]).toContain('fog & <ice> "here"');
    expect(first.get(`${RDF}_1`)).toBeDefined();
  });

  it('writes nothing that our description does not describe', () => {
    const described = JSON.parse(
      readFileSync(`${import.meta.dirname}/../../../public/schema/evenfall-xmp.1.json`, 'utf8'),
    );
    expect(described.namespace).toBe(NAMESPACE);
    const columns = Object.keys(frameRecords(evening().state())[0] ?? {});
    expect(Object.keys(described.properties).sort()).toEqual([...columns, 'NamedBy'].sort());
  });

  // Seen to fail: with `&` escaped last.
  it('stays well-formed whatever somebody notes', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 40 }), async (notes) => {
        const record = { Notes: notes, Set: 'set' };
        const found = await Promise.race([
          statements(xmpOf({ record, file: null, namedBy: 'log' }, STAMP)),
          new Promise<never>((_, no) => setTimeout(() => no(new Error('hang')), 1500)),
        ]);
        expect(found.has(`${NAMESPACE}Set`)).toBe(true);
        const whole = /^[\t\n\u0020-\uD7FF\uE000-\uFFFD]*$/.test(notes);
        if (whole) expect(found.get(`${NAMESPACE}Notes`) ?? '').toBe(notes);
      }),
      { numRuns: 60 },
    );
  });

  it('has times as Exif has them', () => {
    expect([64, 0.1, 1 / 8000, 1.5, 0.3].map(rational)).toEqual([
      '64/1',
      '1/10',
      '1/8000',
      '1500000/1000000',
      '3000000/10000000',
    ]);
  });
});

describe('the names of sidecars', () => {
  const names = (run: RunState, existing?: readonly string[]) => unzipped(run, existing).names;

  it('are those of the matched files, and else of the log’s numbers', () => {
    const walked = matched(evening(), 0, 'HOLIDAY.0001.JPG');
    const { matched: count, entries } = unzipped(walked.state());
    expect(names(walked.state())[0]).toBe('HOLIDAY.0001.xmp');
    expect(count).toBe(1);
    expect(strFromU8(entries['HOLIDAY.0001.xmp'] as Uint8Array)).toContain('NamedBy>file<');
  });

  // Seen to fail: without `toLowerCase`.
  it('are never taken twice, nor from a sidecar that exists', () => {
    const walked = matched(matched(evening(), 0, 'IMG_1.JPG'), 1, 'img_1.RAW');
    const { names: given, renamed, entries } = unzipped(walked.state(), ['IMG_1.XMP']);
    expect(given.slice(0, 2)).toEqual(['IMG_1.evenfall.xmp', 'img_1.evenfall-2.xmp']);
    expect(renamed).toHaveLength(2);
    expect(Object.keys(entries)).toHaveLength(4);
    expect(new Set(given.map((name) => name.toLowerCase())).size).toBe(4);
  });

  it('are wanting where somebody said that a frame has no file', () => {
    const walked = evening();
    const made = walked.state().made[0]?.id as never;
    walked.tap({ tap: 'match-files', files: [{ made, file: null }], clocks: [] });
    expect(unzipped(walked.state())).toMatchObject({ without: 1 });
    expect(names(walked.state())).toHaveLength(3);
  });
});
