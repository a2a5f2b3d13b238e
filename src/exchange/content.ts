/**
 * A value as text that is the same whenever the content is: fields in one order,
 * absent and undefined alike.
 */
export function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, field: unknown) =>
    typeof field === 'object' && field !== null && !Array.isArray(field)
      ? Object.fromEntries(Object.entries(field).sort(([a], [b]) => (a < b ? -1 : 1)))
      : field,
  );
}

const OFFSET_BASIS = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;

/**
 * A short name for content: FNV-1a, 64 bits, in hexadecimal, over the characters
 * of its canonical text. It tells things apart; it protects against nobody.
 * Constants and method: Fowler, Noll and Vo, from memory.
 */
export function contentHash(value: unknown): string {
  let hash = OFFSET_BASIS;
  for (const unit of canonical(value)) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(unit.codePointAt(0) ?? 0)) * PRIME);
  }
  return hash.toString(16).padStart(16, '0');
}
