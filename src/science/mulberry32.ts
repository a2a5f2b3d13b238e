declare const seedUnit: unique symbol;

/** What a stream of random numbers starts from: a whole number of 32 bits. */
export type Seed = number & { readonly [seedUnit]: true };

/** Any number as a seed, its fraction and all beyond 32 bits left out. */
export const seed = (value: number): Seed => (value >>> 0) as Seed;

/** The next number of a stream, from 0 to below 1. */
export type Random = () => number;

/**
 * A stream of random numbers that a seed decides: mulberry32, public domain. For searches and
 * simulations that must be repeatable; for nothing secret.
 */
export function mulberry32(from: Seed): Random {
  let state: number = from;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
