import type { RunState } from './state.ts';

/**
 * Works something out once for a state, when it is first asked for: a state never changes, and the
 * clock is looked at several times a second.
 */
export function perState<T>(work: (state: RunState) => T): (state: RunState) => T {
  const known = new WeakMap<RunState, { readonly found: T }>();
  return (state) => {
    const { found } = known.get(state) ?? { found: work(state) };
    known.set(state, { found });
    return found;
  };
}
