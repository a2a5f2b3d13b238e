import { readdirSync } from 'node:fs';
import { join, sep } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readModules, sourcesOnDisk } from './modules.ts';
import {
  earlyModules,
  earlyPackages,
  emptyNames,
  forbiddenImports,
  impureSciences,
  lateModules,
  placeOf,
  places,
} from './rules.ts';

describe('the modules of src', () => {
  const modules = readModules(sourcesOnDisk());

  test('are found, in the places of the design and nowhere else', () => {
    // Counted by another way than the modules were found, so that a blind walk can't pass.
    const onDisk = readdirSync(join(import.meta.dirname, '../../src'), { recursive: true })
      .map((path) => String(path).split(sep).join('/'))
      .filter((path) => /\.tsx?$/.test(path) && !/\.test\.tsx?$/.test(path));
    expect([...modules.keys()].sort()).toEqual(onDisk.sort());
    expect(modules.size).toBeGreaterThan(0);
    expect(onDisk.filter((path) => !places.includes(placeOf(path)))).toEqual([]);
  });

  test('import one way only', () => {
    const edges = [...modules.values()].flatMap(({ imports }) => imports);
    expect(edges.filter(({ ours }) => ours).length).toBeGreaterThan(modules.size / 2);
    expect(forbiddenImports(modules)).toEqual([]);
  });

  test('know no clock, chance or time zone in the sciences', () => {
    expect(impureSciences(modules)).toEqual([]);
  });

  test('need no later part while an outing runs', () => {
    expect(lateModules(modules)).toEqual([]);
  });

  test('bring nothing of the desk with the first script', () => {
    expect(emptyNames(modules)).toEqual([]);
    expect(earlyModules(modules)).toEqual([]);
  });

  test('bring no heavy package with the first script', () => {
    expect(earlyPackages(modules)).toEqual([]);
  });
});

describe('the check itself', () => {
  const bad = readModules(
    new Map([
      ['main.tsx', "import './ui/start.tsx'; void import('./store/journal.ts');"],
      ['sw.ts', "import { idb } from 'idb';"],
      ['ui/start.tsx', "import { tap } from '../app/tap.ts'; import '../store/journal.ts';"],
      ['app/tap.ts', "import { fold } from '../outing/fold.ts';"],
      ['outing/fold.ts', "export { late } from '../log/late.ts'; export const at = Date.now();"],
      ['log/late.ts', "type Page = import('../ui/start.tsx').Page; import 'unheard-of/part';"],
      [
        'store/journal.ts',
        "import type { Fold } from '../outing/fold.ts'; import { fold } from '../outing/fold.ts';",
      ],
      [
        'science/sky.ts',
        `const day = new Date(0);
         const now = new Date();
         const zone = day.getHours();
         const of = { performance: 1, crypto: Math.random() };
         setTimeout(() => of.performance, 1);`,
      ],
    ]),
  );

  test('prints the chain that leads to a forbidden import', () => {
    const outing = 'main.tsx -> store/journal.ts -> outing/fold.ts';
    expect(forbiddenImports(bad)).toEqual([
      'sw.ts -> idb',
      'main.tsx -> ui/start.tsx -> store/journal.ts',
      `${outing} -> log/late.ts`,
      `${outing} -> log/late.ts -> ui/start.tsx`,
      `${outing} -> log/late.ts -> unheard-of`,
      outing,
    ]);
  });

  test('finds each impure thing and spares what only bears its name', () => {
    expect(impureSciences(bad)).toEqual([
      'outing/fold.ts:1 uses Date.now',
      'science/sky.ts:2 uses new Date()',
      'science/sky.ts:3 uses getHours',
      'science/sky.ts:4 uses Math.random',
      'science/sky.ts:5 uses setTimeout',
    ]);
  });

  test('finds a part of the outing that loads later', () => {
    const late = readModules(
      new Map([
        ['main.tsx', "void import('./log/frames.ts');"],
        ['log/frames.ts', ''],
      ]),
    );
    expect(lateModules(late)).toEqual(['log/frames.ts']);
    expect(lateModules(bad)).toEqual([]);
  });

  test('finds what only the desk needs in the first script, by the chain that brings it', () => {
    const parsing = (main: string) =>
      readModules(
        new Map([
          ['main.tsx', main],
          ['app/start.ts', "import { readPlan } from '../plan/parse.ts';"],
          ['plan/parse.ts', "import type { Body } from '../gear/parse.ts';"],
          ['gear/parse.ts', ''],
        ]),
      );
    expect(earlyModules(parsing("import './app/start.ts';"))).toEqual([
      'main.tsx -> app/start.ts -> plan/parse.ts',
    ]);
    expect(earlyModules(parsing("void import('./app/start.ts');"))).toEqual([]);
    expect(emptyNames(parsing(''))).toContain('plan/prepare.ts');
    expect(emptyNames(parsing(''))).not.toContain('plan/parse.ts');
  });

  test('finds a heavy package in the first script, and lets a later part have it', () => {
    const heavy = (main: string) =>
      readModules(
        new Map([
          ['main.tsx', main],
          ['light/night.ts', "import { sun } from '../science/ephemeris.ts';"],
          ['science/ephemeris.ts', "import { Body } from 'astronomy-engine';"],
        ]),
      );
    expect(earlyPackages(heavy("import './light/night.ts';"))).toEqual([
      'main.tsx -> light/night.ts -> science/ephemeris.ts -> astronomy-engine',
    ]);
    expect(earlyPackages(heavy("void import('./light/night.ts');"))).toEqual([]);
  });

  test('reports an import that leads nowhere', () => {
    const broken = readModules(new Map([['main.tsx', "import './ui/gone.tsx';"]]));
    expect(forbiddenImports(broken)).toEqual(['main.tsx -> ui/gone.tsx (not there)']);
  });
});
