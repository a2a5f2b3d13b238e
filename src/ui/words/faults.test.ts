import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { faultSentences } from './faults.en.ts';

/** Rules about the shape of a file. The words of the file exchange say them, with their place. */
const OF_FILES = [
  'field-missing',
  'field-unknown',
  'id-twice',
  'list-too-long',
  'not-a-list',
  'not-an-id',
  'not-an-object',
];

test('every rule that a field of the gear can break has its sentence', () => {
  const sources = ['parse', 'read'].map((file) =>
    readFileSync(new URL(`../../gear/${file}.ts`, import.meta.url), 'utf8'),
  );
  const rules = sources.flatMap((text) =>
    Array.from(text.matchAll(/fault\(\s*'([a-z0-9-]+)'/g), ([, rule]) => rule ?? ''),
  );
  expect(rules).toContain('pixels-not-of-this-sensor');
  const unsaid = rules.filter((rule) => !OF_FILES.includes(rule) && !(rule in faultSentences));
  expect(unsaid).toEqual([]);
});
