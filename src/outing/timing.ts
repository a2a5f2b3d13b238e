import { duration, type Seconds } from '../science/units.ts';
import type { Instant } from './instant.ts';

/** How far the wall clock may run ahead before the steady one is no longer trusted. */
const AHEAD_WITHIN_MS = 2000;
/** A gap within one evening longer than this is taken for a clock set wrong (our choice). */
const ABSURD_MS = 24 * 3600 * 1000;

/**
 * Time between two instants.
 *
 * `steady`: one page session, and the wall clock is not ahead. `wall`: only the
 * wall clock bridges the gap (a reload, a sleeping phone, a clock that was set
 * forward), so the figure is uncertain. `unknown`: the page was gone, and the wall
 * clock ran backwards or absurdly far; never shown as zero.
 */
export type Elapsed =
  | { readonly certainty: 'steady' | 'wall'; readonly s: Seconds }
  | { readonly certainty: 'unknown' };

/** Time from one instant to a later one, by the better of the two clocks. */
export function elapsedBetween(from: Instant, to: Instant): Elapsed {
  const wall = to.wallMs - from.wallMs;
  if (from.session === to.session) {
    const steady = to.monoMs - from.monoMs;
    // A sleep holds only the steady clock up, so a wall clock that lags behind it was set back.
    if (steady >= 0 && wall - steady <= AHEAD_WITHIN_MS) {
      return { certainty: 'steady', s: duration(steady / 1000) };
    }
  }
  return wall >= 0 && wall <= ABSURD_MS
    ? { certainty: 'wall', s: duration(wall / 1000) }
    : { certainty: 'unknown' };
}

/** The instant `s` seconds later, on both clocks. */
export function later(at: Instant, s: Seconds): Instant {
  return { ...at, wallMs: at.wallMs + s * 1000, monoMs: at.monoMs + s * 1000 };
}
