import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { faultSentences } from './faults.en.ts';

test('every rule that gear or a file of gear can break has its sentence', () => {
  const sources = ['gear/parse', 'gear/read', 'exchange/anyFile', 'exchange/json'].map((file) =>
    readFileSync(new URL(`../../${file}.ts`, import.meta.url), 'utf8'),
  );
  const rules = sources.flatMap((text) =>
    Array.from(text.matchAll(/fault\(\s*'([a-z0-9-]+)'/g), ([, rule]) => rule ?? ''),
  );
  expect(rules).toContain('pixels-not-of-this-sensor');
  const unsaid = rules.filter((rule) => !(rule in faultSentences));
  expect(unsaid).toEqual([]);
});
