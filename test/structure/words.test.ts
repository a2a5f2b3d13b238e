import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { LANGUAGES } from '../../src/app/preferences.ts';
import { LANGUAGE_NAMES } from '../../src/ui/words/languageNames.ts';

/*
 * Every dictionary in every language, by its files: what the compiler cannot see. Each test was seen
 * to fail with the mutation that its comment names.
 */

const FOLDER = join(import.meta.dirname, '../../src/ui/words');

/** The parts of a dictionary are one file per language: 'outing' of `outing.en.ts`. */
const filesOf = (language: string): string[] =>
  readdirSync(FOLDER)
    .filter((file) => file.endsWith(`.${language}.ts`))
    .map((file) => file.slice(0, -`.${language}.ts`.length))
    .sort();

/** Two dictionaries share these sentences of the storage; in English they stand in the Log's. */
const GERMAN_ALONE = ['storageWhy'];

/** Figures are no sentences; `formats.test.ts` holds them. */
const dictionaries = filesOf('en').filter((name) => name !== 'figures');

type Node = unknown;
interface Pair {
  readonly path: string;
  readonly en: Node;
  readonly other: Node;
}

const isRecord = (node: Node): node is Record<string, Node> =>
  typeof node === 'object' && node !== null;

/** Every sentence with its like in the other language, functions as they are. */
function* pairsOf(path: string, en: Node, other: Node): Generator<Pair> {
  if (isRecord(en) && isRecord(other)) {
    for (const key of new Set([...Object.keys(en), ...Object.keys(other)])) {
      // The value of a choice is what it stands for, and no word.
      if (key !== 'value') yield* pairsOf(`${path}.${key}`, en[key], other[key]);
    }
  } else yield { path, en, other };
}

async function readPairs(language: string): Promise<Pair[]> {
  const pairs: Pair[] = [];
  for (const name of dictionaries) {
    const read = async (tag: string) =>
      (await import(join(FOLDER, `${name}.${tag}.ts`))) as Record<string, Node>;
    pairs.push(...pairsOf(name, await read('en'), await read(language)));
  }
  return pairs;
}

/**
 * Arguments for a sentence, each a kind of thing that sentences take. What a sentence reads of a
 * thing is made up by the thing itself, so that none is forgotten; an enumeration is given by name.
 */
const SAMPLES: Readonly<Record<string, readonly (readonly unknown[])[]>> = {
  'parts.parts.deed': [
    [{ act: 'order-replaced' }],
    [{ act: 'deleted', thing: 'rig', name: 'A' }],
    [{ act: 'deleted', thing: 'site', name: '' }],
  ],
  'log.log.lastLeft': [['1', '2', 'table']],
  'gear.gear.taken': [
    [{ bodies: 0, lenses: 0, rigs: 0, copies: 0, deletedHere: 0 }],
    [{ bodies: 1, lenses: 2, rigs: 1, copies: 2, deletedHere: 3 }],
  ],
  'gear.gear.from': [['64', '25600', 'third']],
  'gear.gear.bulbUpTo': [
    ['none', '5'],
    ['hold', '5'],
    ['press-press', '5'],
  ],
  'gear.gear.selfTimerStated': [
    [null, true],
    ['2', false],
  ],
  'gear.gear.darkFrameStated': [
    ['never', '1'],
    ['from', '1'],
    ['always', '1'],
  ],
  'light.light.fault': [[{ rule: 'wrong-axis', params: {} }]],
  'light.light.contradiction': [
    [{ code: 'scale-far-from-one', scale: 2 }, String],
    [{ code: 'scattered', stops: 2 }, String],
    [{ code: 'two-disagree', stops: 2 }, String],
    [{ code: 'sky-changed', stops: -2 }, String],
    [{ code: 'lamps', ev100: 2 }, String],
  ],
  'light.light.moonUp': [[['1', '2']]],
  'light.light.utc': [
    ['+', 1, '00'],
    ['+', 5, '45'],
  ],
  'logDesk.logDesk.zoneOf': [['+1', 'x']],
  'pair.pair.whyUnknown': [['no-sky', 'a']],
  'pair.pair.inRow': [[['One', 'Two']]],
  'plan.plan.inRow': [[['One', 'Two']]],
  'plan.plan.whyUnknown': [['no-sky', 'a']],
  'plan.plan.holdInWords': [
    [{ kind: 'free' }, '1'],
    [{ kind: 'same-iso-and-time', aperture: { rule: 'same-f-number', plus: 1 } }, '1'],
  ],
  'plan.plan.unreached': [['time-beyond-dial', '240 s', '60 s', false, '1']],
  'plan.plan.inLight.mendBy': [[[]], [['a', 'b']]],
  'plan.plan.inLight.swapHelp': [[['a', 'b']]],
  'plan.plan.inLight.rightBy': [['f-number', 'f/8', '1']],
  'planLight.planLight.mendBy': [[[]], [['a', 'b']]],
  'planLight.planLight.swapHelp': [[['a', 'b']]],
  'planLight.planLight.rightBy': [['f-number', 'f/8', '1']],
  'cost.cost.costs': [[['a', 'b']]],
  'cost.cost.pair': [['B', 'A', 2, ['a']]],
  'logDesk.logDesk.unpaired': [[[1]], [[1, 2, 3]]],
  'outing.outing.light.takeNamed': [['a', ['A', 'B']]],
  'outing.outing.refused': [['note-empty'], ['anything-else']],
  'faults.faults.fault': [
    [{ rule: 'text-empty', params: {} }],
    [{ rule: 'unheard-of', params: {} }],
  ],
  'faults.faults.notTaken': [
    [{ how: 'refused', fault: { rule: 'not-json', params: { line: 1, column: 2 }, path: 'a.b' } }],
    [{ how: 'unsaved' }],
    [{ how: 'store', fault: { kind: 'full' } }],
    [{ how: 'not', why: 'gone' }],
  ],
};

/** Plain arguments fit all other sentences: as figures, as words, with yes and no, with nothing. */
const plainSamples = (count: number): readonly (readonly unknown[])[] =>
  [1, 2, 'x', true, false, null].map((each) =>
    Array.from({ length: Math.max(count, 6) }, () => each),
  );

const PARAMS = {
  most: 5,
  least: 1,
  unit: 's',
  choices: 'a',
  digits: 4,
  field: 'f',
  id: 'i',
  mostMegabytes: 9,
  line: 1,
  column: 2,
};

const isWhole = (said: unknown): said is string =>
  typeof said === 'string' && !/undefined|NaN|\[object|=>/.test(said);

/** The sentence with these arguments; of a kind that it does not take, nothing. */
function said(
  sentence: (...given: readonly unknown[]) => unknown,
  given: readonly unknown[],
): unknown {
  try {
    return sentence(...given);
  } catch {
    return undefined;
  }
}

type Sentence = (...given: readonly unknown[]) => unknown;
const isSentence = (node: Node): node is Sentence => typeof node === 'function';

/** Both languages side by side: with every sample that is named, else with each that the English one takes. */
function saidBoth({ path, en, other }: Pair): (readonly [string, unknown])[] {
  if (typeof en === 'string') return [[en, other]];
  if (!isSentence(en) || !isSentence(other)) return [];
  const named = path.startsWith('faults.faultSentences') ? [[PARAMS]] : SAMPLES[path];
  const samples = named ?? plainSamples(en.length);
  const both = samples.map((given) => [said(en, given), said(other, given)] as const);
  const taken = named ? both : both.filter(([english]) => isWhole(english));
  if (taken.length === 0) throw new Error(`${path} needs a sample`);
  return taken.map(([english, like]) => [String(english), like]);
}

/** Words that are the same in both languages. */
const SAME_WORDS =
  'Evenfall Plan ISO Bulb EV Wind Journal Name Sensor Version Start Minute Transmission Fairer Unfair unfair Vibration UTC N E S W K s m mm px min x µm'.split(
    ' ',
  );
/** What samples bring in. */
const BROUGHT = ['true', 'false', 'null', 'x', 'a', 'b', 'A', 'B'];

const wordsIn = (text: string): string[] => text.replaceAll('\u00ad', '').match(/[\p{L}]+/gu) ?? [];

const isShared = (text: string): boolean =>
  wordsIn(text).every((word) => SAME_WORDS.includes(word) || BROUGHT.includes(word));

describe.each(LANGUAGES.filter((language) => language !== 'en'))('the dictionary of %s', (tag) => {
  /** Mutation: a file `more.en.ts` alone. */
  test('has a file wherever the English one has', () => {
    expect(filesOf('en').length).toBeGreaterThan(15);
    expect(filesOf(tag).filter((name) => !GERMAN_ALONE.includes(name))).toEqual(filesOf('en'));
  });

  /** Mutation: a sentence taken out of a list (`phoneHints`), which the compiler lets pass. */
  test('has every sentence and no other, of the same kind', async () => {
    const pairs = await readPairs(tag);
    expect(pairs.length).toBeGreaterThan(900);
    const unlike = pairs.filter(({ en, other }) => typeof en !== typeof other);
    expect(unlike.map(({ path }) => path)).toEqual([]);
  });

  /** Mutations: `title: ''`; a sentence that says 'NaN undefined'; an exclamation mark in `parts.needed`. */
  test('says something with every sentence, without gaps and without raising its voice', async () => {
    const pairs = await readPairs(tag);
    const bad = pairs.flatMap((pair) =>
      saidBoth(pair).flatMap(([english, like]) => {
        const fine =
          isWhole(english) &&
          isWhole(like) &&
          (english === '') === (like === '') &&
          !/!/.test(english + like);
        return fine ? [] : [`${pair.path}: ${english} / ${String(like)}`];
      }),
    );
    expect(bad).toEqual([]);
  });

  /** Mutation: one sentence left in English. */
  test('differs from the English one but for words that both share', async () => {
    const pairs = await readPairs(tag);
    const left = pairs.flatMap((pair) => {
      const both = saidBoth(pair);
      return both.length > 0 &&
        both.every(([english, like]) => english === like) &&
        !both.every(([english]) => isShared(english))
        ? [`${pair.path}: ${both[0]?.[0]}`]
        : [];
    });
    expect(left).toEqual([]);
  });
});

/** Mutation: a language without its name would not compile; two with one name would not be told apart. */
test('every language has a name of its own', () => {
  expect(new Set(LANGUAGES.map((language) => LANGUAGE_NAMES[language])).size).toBe(
    LANGUAGES.length,
  );
});
