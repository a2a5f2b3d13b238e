import type { StoreFault } from '../../src/store/contract.ts';

/*
 * Assertions that need no test runner: the same cases run in node and, bundled, in
 * a page of a real browser.
 */

/** One thing that a contract promises. */
export interface Case<Subject> {
  readonly name: string;
  readonly run: (subject: Subject) => Promise<void>;
}

/** @throws Error unless both say the same as JSON (sets as sorted arrays). */
export function same(actual: unknown, expected: unknown, what: string): void {
  const [a, b] = [told(actual), told(expected)];
  if (a !== b) throw new Error(`${what}: ${a}, expected ${b}`);
}

/** @throws Error unless the promise rejects with a fault of that kind. */
export async function refuses(
  promise: Promise<unknown>,
  kind: StoreFault['kind'],
  what: string,
): Promise<void> {
  let fault: unknown;
  try {
    await promise;
  } catch (cause) {
    fault = cause;
  }
  same((fault as StoreFault | undefined)?.kind ?? String(fault), kind, what);
}

const told = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) => {
    if (part instanceof Set) return [...part].sort();
    if (part === undefined) return '(undefined)';
    if (typeof part === 'object' && part !== null && !Array.isArray(part))
      return Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)));
    return part;
  });
