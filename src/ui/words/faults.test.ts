import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fault } from '../../gear/read.ts';
import { faultSentences, faults } from './faults.en.ts';

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

test('bounds are spelled as figures are, in their unit', () => {
  const said = (params: Record<string, string | number>) =>
    faults.fault(fault('out-of-range', params));
  expect(said({ least: -10, most: 0.5, unit: 'stop' })).toBe(
    'This must lie between \u221210 and 0.5\u00a0stop.',
  );
  expect(said({ least: 0.000001, most: 86_400, unit: 's' })).toBe(
    'This must lie between 0.000001 and 86\u00a0400\u00a0s.',
  );
  expect(said({ least: 0, most: 60, unit: '°' })).toBe('This must lie between 0 and 60°.');
  expect(said({ least: 1, most: 20 })).toBe('This must lie between 1 and 20.');
});
