/**
 * Whether two stored values say the same. The order of fields does not count, nor
 * do a field that is absent and one that is undefined, nor the sign of zero:
 * files that went out and came back must compare equal.
 */
export function sameContent(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null)
    return Number.isNaN(a) && Number.isNaN(b);
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const left = new Map(fields(a));
  const right = new Map(fields(b));
  return (
    left.size === right.size &&
    [...left].every(([key, value]) => right.has(key) && sameContent(value, right.get(key)))
  );
}

const fields = (value: object): [string, unknown][] =>
  Object.entries(value).filter(([, field]) => field !== undefined);
