import { mulberry32, seed } from '../../../src/science/mulberry32.ts';

/** A stream of chance. */
export interface Chance {
  /** Evenly between two values. */
  between(low: number, high: number): number;
  /** Normal, mean 0, deviation 1. */
  normal(): number;
  /** Whether a thing happens that does so once in so many times, on average. */
  onceIn(times: number): boolean;
  oneOf<T>(list: readonly [T, ...T[]]): T;
}

/** Spreads a text over 32 bits (FNV-1a, public domain). */
function spread(text: string): number {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193);
  return hash;
}

/**
 * The chance of one evening for one purpose. Each purpose has a stream of its own, so that what is
 * drawn for the hands never moves the clouds.
 */
export function chanceOf(evening: number, purpose: string): Chance {
  const next = mulberry32(seed(spread(`${purpose} ${evening}`)));
  return {
    between: (low, high) => low + (high - low) * next(),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    onceIn: (times) => next() * times < 1,
    oneOf: (list) => list[Math.floor(next() * list.length)] ?? list[0],
  };
}
