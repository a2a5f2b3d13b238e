import type { StoreFault } from './contract.ts';

/** A StoreFault that can be thrown and carries its stack. */
export class StoreFailure extends Error implements StoreFault {
  override readonly name = 'StoreFailure';
  readonly kind: StoreFault['kind'];
  readonly detail: string;

  constructor(kind: StoreFault['kind'], detail: string) {
    super(`${kind}: ${detail}`);
    this.kind = kind;
    this.detail = detail;
  }
}

/** What the platform calls it, and what it means for the photographer. */
const KINDS: Readonly<Record<string, StoreFault['kind']>> = {
  QuotaExceededError: 'full',
  VersionError: 'newer',
  ConstraintError: 'refused',
  DataError: 'refused',
  DataCloneError: 'refused',
};

/**
 * The fault behind anything that was thrown.
 *
 * Exceptions of the platform that are not listed count as a lost connection:
 * InvalidStateError and AbortError when the browser ends it, UnknownError when its
 * files fail. Anything else is a mistake in what was asked, which no retry mends.
 */
export function toFault(cause: unknown): StoreFailure {
  if (cause instanceof StoreFailure) return cause;
  if (!(cause instanceof Error)) return new StoreFailure('refused', String(cause));
  const kind = KINDS[cause.name] ?? (cause instanceof DOMException ? 'closed' : 'refused');
  return new StoreFailure(kind, `${cause.name}: ${cause.message}`);
}

/** Whether another try on a fresh connection may succeed. */
export const isPassing = (fault: StoreFault): boolean =>
  fault.kind === 'closed' || fault.kind === 'timeout';
