import { readFileSync } from 'node:fs';

/** One input of a check: a value in the unit that the sheet states. */
export interface Given {
  readonly value: unknown;
  readonly unit: string;
}

/** A value in a unit, with further fields for a few quantities. */
interface ExpectedValue {
  readonly value: unknown;
  readonly unit: string;
  readonly [field: string]: unknown;
}

interface ExpectedRefusal {
  readonly rejects: true;
  readonly reason: string;
}

/** What a check expects. */
export type Expected = ExpectedValue | ExpectedRefusal;

/** Tells an expected refusal from an expected value. */
export const expectsRefusal = (expected: Expected): expected is ExpectedRefusal =>
  'rejects' in expected;

/** One line of a check sheet. */
export interface Entry {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, Given>>;
  readonly expected: Expected;
  /** Absolute, in the unit of the expected value; in seconds for an instant. */
  readonly tolerance: number;
  readonly source: string;
  readonly kind: string;
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What is wrong with a line of a sheet; null if nothing is. */
function flaw(line: unknown): string | null {
  if (!isObject(line)) return 'is no object';
  const { id, quantity, inputs, expected, tolerance, source, kind } = line;
  if (typeof id !== 'string' || id === '') return 'has no id';
  if (typeof quantity !== 'string') return 'has no quantity';
  if (typeof source !== 'string' || source === '') return 'has no source';
  if (typeof kind !== 'string') return 'has no kind';
  if (typeof tolerance !== 'number' || !(tolerance >= 0)) return 'has no tolerance';
  if (!isObject(inputs)) return 'has no inputs';
  for (const [name, given] of Object.entries(inputs)) {
    if (!isObject(given) || !('value' in given) || typeof given['unit'] !== 'string') {
      return `has an input ${name} without value and unit`;
    }
  }
  if (!isObject(expected)) return 'expects nothing';
  const refuses = 'rejects' in expected;
  const gives = 'value' in expected && typeof expected['unit'] === 'string';
  if (refuses && expected['rejects'] !== true) return 'neither rejects nor accepts';
  return refuses === gives ? 'expects neither a refusal nor a value in a unit' : null;
}

/**
 * Reads a check sheet.
 *
 * @throws Error if a line is not of the form, two lines share an id, or there is no line.
 */
export function readSheet(path: string): readonly Entry[] {
  const lines: unknown = JSON.parse(readFileSync(path, 'utf8'));
  if (!Array.isArray(lines) || lines.length === 0) throw new Error(`${path} holds no checks`);
  const ids = new Set<string>();
  return lines.map((line: unknown, index) => {
    const wrong = flaw(line);
    if (wrong !== null) throw new Error(`${path}, check ${index + 1}, ${wrong}`);
    const entry = line as Entry;
    if (ids.has(entry.id)) throw new Error(`${path} holds ${entry.id} twice`);
    ids.add(entry.id);
    return entry;
  });
}
