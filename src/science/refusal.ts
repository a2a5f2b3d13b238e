/**
 * A typed "no": the rule that an input broke.
 *
 * It is returned, never thrown, so that a caller cannot overlook it: the
 * compiler asks for the case. `rule` is a short key for the words on the
 * screen, not wording itself.
 */
export interface Refusal {
  readonly refused: true;
  readonly rule: string;
}

/** Makes a refusal for the rule that was broken. */
export const refuse = (rule: string): Refusal => ({ refused: true, rule });

/** Tells a refusal from a result. */
export const isRefusal = (value: unknown): value is Refusal =>
  typeof value === 'object' && value !== null && 'refused' in value && value.refused === true;

/**
 * Takes the result where a refusal would be our own mistake (a literal, a value
 * parsed before).
 *
 * @throws RangeError with the rule's key if it was a refusal after all.
 */
export function must<T>(value: T | Refusal): T {
  if (isRefusal(value)) throw new RangeError(value.rule);
  return value;
}
