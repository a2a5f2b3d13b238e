import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyGear } from '../../test/arbitraries/gear.ts';
import { A, B, dialled, Evening, frame, planOf, twoSets } from '../../test/evenings/evening.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { isFault } from '../gear/read.ts';
import type { Gear } from '../gear/rig.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import type { Site, SiteId } from '../light/site.ts';
import type { OutingId } from '../outing/ids.ts';
import type { Plan } from '../plan/plan.ts';
import { readAnyFile } from './anyFile.ts';
import { type Backup, backupFile, ownOf } from './backup.ts';
import { gearFile } from './gearFile.ts';
import { journalFile } from './journalFile.ts';
import { journalOf } from './journalOf.ts';
import { MOST_BYTES } from './readJson.ts';

const stamp = { app: '2027.2.12', written: '2027-02-12T21:00:00.000Z' };

/** The practice gear as if it were somebody's own. */
const own = (gear: Gear): Gear => ({
  bodies: gear.bodies.map((body) => ({ ...body, invented: false })),
  lenses: gear.lenses.map((lens) => ({ ...lens, invented: false })),
  rigs: gear.rigs.map((rig) => ({ ...rig, invented: false })),
});

const plan: Plan = {
  ...planOf([
    frame('base', A, dialled('6.3', '64', '100')),
    frame('base', B, dialled('8', '60', '100')),
  ]),
  invented: false,
};
const evening = new Evening(twoSets(), { ...planOf(twoSets()), invented: false })
  .setUp()
  .shootAll()
  .tap({ tap: 'note', text: '=fog, "thick"', made: null });
const events = evening.events;
const outing = evening.outing;

const site: Site = { ...PRACTICE_SITE, id: 'site' as SiteId, invented: false };

const backup: Backup = {
  gear: own(PRACTICE_GEAR),
  plans: [plan],
  sites: [site],
  events,
  tombstones: ['old-body', 'old-plan'],
};
const file = backupFile.write(backup, stamp);

describe('files that are whole', () => {
  it('a backup comes back with everything in it', () => {
    expect(readAnyFile(file)).toEqual({
      head: { format: 'evenfall-backup', version: 3, ...stamp },
      content: backup,
    });
  });

  it('a backup of version 1, which knew no heat and named orders only, comes up to today', () => {
    const { gear, plans, ...rest } = JSON.parse(file);
    const then = {
      ...rest,
      version: 1,
      gear: {
        ...gear,
        bodies: gear.bodies.map(({ heat: _, ...body }: { heat: unknown }) => body),
      },
      plans: plans.map(
        ({ oneRigAtATime: _o, arranged: _a, locked: _l, swapWorth: _w, ...old }: Plan) => ({
          ...old,
          allowances: { swapS: 75, dialChangeS: 15, settleS: 5, writeS: 2 },
          rest: { on: true, factor: 2, offUpToS: 10, longestS: 500 },
          sets: old.sets.map(({ restBeforeS: _r, ...set }) => set),
        }),
      ),
    };
    const read = readAnyFile(JSON.stringify(then));
    if (isFault(read)) throw new Error(`${read.rule} at ${read.path}`);
    expect(read.content.gear).toEqual(backup.gear);
    expect(read.content.plans).toEqual([
      {
        ...plan,
        allowances: { swapS: 75, reframeS: 0, dialChangeS: 15, settleS: 5, writeS: 2 },
        rest: { kind: 'thumb', rule: { factor: 2, offUpToS: 10, longestS: 500 } },
      },
    ]);
    const [old] = then.plans;
    const off = { ...then, plans: [{ ...old, rest: { ...old.rest, on: false } }] };
    expect(readAnyFile(JSON.stringify(off))).toMatchObject({
      content: { plans: [{ rest: { kind: 'none' } }] },
    });
  });

  it('gear alone comes back, with or without a byte order mark', () => {
    fc.assert(
      fc.property(anyGear, fc.constantFrom('', '\uFEFF'), (gear, mark) => {
        const read = readAnyFile(mark + gearFile.write({ gear }, stamp));
        expect(read).toMatchObject({ content: { gear, plans: [], sites: [], events: [] } });
      }),
    );
  });

  it('a journal comes back as its events; its frames are for others', () => {
    const text = journalFile.write(journalOf(outing, events), stamp);
    expect(JSON.parse(text).frames).toHaveLength(4);
    expect(readAnyFile(text)).toMatchObject({ content: { events, plans: [] } });
  });

  it('a journal whose frames were tampered with gives the same events', () => {
    const json = JSON.parse(journalFile.write(journalOf(outing, events), stamp));
    json.frames = [{ FNumber: 'nonsense' }];
    expect(readAnyFile(JSON.stringify(json))).toMatchObject({ content: { events } });
  });
});

describe('what belongs in a backup', () => {
  const invented = new Evening(twoSets()).events.map((event) => ({
    ...event,
    outing: 'practice' as OutingId,
  }));

  it('is not the practice outing, its gear, its plan or its site', () => {
    const everything = {
      gear: PRACTICE_GEAR,
      plans: [plan, { ...plan, invented: true }],
      sites: [PRACTICE_SITE, site],
      events: [...invented, ...events],
      tombstones: [],
    };
    expect(ownOf(everything)).toEqual({
      gear: { bodies: [], lenses: [], rigs: [] },
      plans: [plan],
      sites: [site],
      events,
      tombstones: [],
    });
  });

  it('is whole even if a rig of one’s own stands on an invented body', () => {
    const rigs = PRACTICE_GEAR.rigs.map((rig) => ({ ...rig, invented: false }));
    const mixed = ownOf({ ...backup, gear: { ...PRACTICE_GEAR, rigs } });
    expect(mixed.gear.rigs).toEqual([]);
    expect(isFault(readAnyFile(backupFile.write(mixed, stamp)))).toBe(false);
  });
});

describe('files that are not whole, or not ours', () => {
  const altered = (change: (json: Record<string, unknown>) => void): string => {
    const json = JSON.parse(file);
    change(json);
    return JSON.stringify(json);
  };

  it.each([
    ['file-empty', ''],
    ['file-empty', '\uFEFF \n'],
    ['other-format', '[]'],
    ['other-format', 'null'],
    ['other-format', '{"format": "evenfall-tomorrow", "version": 1}'],
    ['other-format', '{"format": {"toString": 1}}'],
    ['not-json', 'P3\n4 4\n'],
    ['not-json', file.slice(0, file.length / 2)],
  ])('%s: %.30j', (rule, text) => {
    expect(readAnyFile(text)).toMatchObject({ refused: true, rule });
  });

  it('says at which line and column a file breaks off', () => {
    expect(readAnyFile('{"format": "evenfall-gear",\n "version": 1,\n "gear": {')).toMatchObject({
      rule: 'not-json',
      params: { line: 3 },
    });
  });

  it('refuses a newer version whole, whatever else is in it', () => {
    expect(readAnyFile('{"format": "evenfall-backup", "version": 4, "x": 1}')).toMatchObject({
      rule: 'file-newer',
      path: 'version',
      params: { version: 4, known: 3 },
    });
  });

  it('names the first fault with its place', () => {
    const text = altered((json) => {
      const { gear } = json as unknown as { gear: { bodies: { widthMm: number }[] } };
      for (const body of gear.bodies.slice(1)) body.widthMm = 0;
    });
    expect(readAnyFile(text)).toMatchObject({
      rule: 'length-not-positive',
      path: 'gear.bodies[1].widthMm',
    });
  });

  it('names the plan that stands twice, and the event of another outing', () => {
    expect(readAnyFile(altered((json) => (json['plans'] = [plan, plan])))).toMatchObject({
      rule: 'id-twice',
      path: 'plans[1].id',
    });
    const journal = JSON.parse(journalFile.write(journalOf(outing, events), stamp));
    journal.events[3].outing = 'elsewhere';
    expect(readAnyFile(JSON.stringify(journal))).toMatchObject({
      rule: 'event-of-other-outing',
      path: 'events[3].outing',
    });
  });

  it('refuses hostile keys and leaves every object as it was', () => {
    const hostile = file.replace('{', '{"__proto__": {"polluted": true},');
    expect(readAnyFile(hostile)).toMatchObject({ rule: 'field-unknown' });
    const inPlan = altered((json) => {
      const [first] = json['plans'] as { sets: { hold: unknown }[] }[];
      const [set] = first?.sets ?? [];
      if (!set) throw new Error('the plan is empty');
      set.hold = JSON.parse('{"kind": "free", "settings": {"__proto__": {"polluted": true}}}');
    });
    expect(readAnyFile(inPlan)).toMatchObject({
      rule: 'not-an-id',
      path: 'plans[0].sets[0].hold.settings.__proto__',
    });
    expect({}).not.toHaveProperty('polluted');
  });

  it('refuses figures that are none', () => {
    for (const figure of ['1e999', '-1e999', '"64"', 'null', '[]', '1e300']) {
      const text = file.replace('"widthMm":43.8', `"widthMm":${figure}`);
      expect(text).not.toBe(file);
      expect(readAnyFile(text)).toMatchObject({ refused: true, path: 'gear.bodies[0].widthMm' });
    }
    expect(readAnyFile(file.replace('"widthMm":43.8', '"widthMm":NaN'))).toMatchObject({
      rule: 'not-json',
    });
  });

  it('survives nesting without end', () => {
    for (const depth of [1000, 1_000_000]) {
      const nested = `${'['.repeat(depth)}${']'.repeat(depth)}`;
      expect(readAnyFile(file.replace('"plans":', `"plans":${nested},"x":`))).toMatchObject({
        refused: true,
      });
    }
  });

  it('refuses more than 50 MB before it parses', () => {
    const huge = ' '.repeat(MOST_BYTES + 1);
    expect(readAnyFile(huge)).toMatchObject({ rule: 'file-too-large' });
  });
});

describe('a damaged file', () => {
  const text = backupFile.write({ ...backup, events: events.slice(0, 6) }, stamp);

  it('cut anywhere is refused', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: text.length - 1 }), (length) => {
        expect(readAnyFile(text.slice(0, length))).toMatchObject({ refused: true });
      }),
    );
  });

  it('with any character changed is refused, or read as something that reads again', () => {
    const place = fc.integer({ min: 0, max: text.length - 1 });
    const put = fc.constantFrom(...'{}[]",:0-9e.tfn\\x\u0000');
    fc.assert(
      fc.property(place, put, (at, character) => {
        const read = readAnyFile(text.slice(0, at) + character + text.slice(at + 1));
        if (isFault(read)) expect(read.rule).not.toBe('');
        else expect(readAnyFile(backupFile.write(read.content, read.head))).toEqual(read);
      }),
      { numRuns: 500 },
    );
  });

  it('with any one value of another type is refused, or read as something that reads again', () => {
    const paths: (string | number)[][] = [];
    const walk = (value: unknown, path: (string | number)[]): void => {
      if (path.length > 0) paths.push(path);
      if (typeof value !== 'object' || value === null) return;
      for (const key of Object.keys(value)) {
        walk((value as Record<string, unknown>)[key], [...path, key]);
      }
    };
    walk(JSON.parse(text), []);
    const swap = fc.constantFrom<unknown>(null, 0, -1, 0.5, 1e308, '', 'x', true, [], {}, [[]]);
    fc.assert(
      fc.property(fc.constantFrom(...paths), swap, (path, value) => {
        const json = JSON.parse(text);
        const holder = path.slice(0, -1).reduce((place, key) => place[key], json);
        holder[path.at(-1) ?? ''] = value;
        const read = readAnyFile(JSON.stringify(json));
        if (isFault(read)) expect(read.rule).not.toBe('');
        else expect(readAnyFile(backupFile.write(read.content, read.head))).toEqual(read);
      }),
      { numRuns: 1000 },
    );
  });
});
