import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { faultSentences } from './faults.en.ts';

const SOURCES = [
  'gear/parse',
  'gear/read',
  'plan/parse',
  'light/parse',
  'exchange/anyFile',
  'exchange/events',
  'exchange/readJson',
  'exchange/restore',
];

test('every rule that a field or a file can break has its sentence', () => {
  const sources = SOURCES.map((file) =>
    readFileSync(new URL(`../../${file}.ts`, import.meta.url), 'utf8'),
  );
  const rules = sources.flatMap((text) =>
    Array.from(text.matchAll(/fault\(\s*'([a-z0-9-]+)'/g), ([, rule]) => rule ?? ''),
  );
  expect(rules).toContain('pixels-not-of-this-sensor');
  const unsaid = rules.filter((rule) => !(rule in faultSentences));
  expect(unsaid).toEqual([]);
});
