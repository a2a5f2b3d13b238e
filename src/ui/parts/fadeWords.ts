import { nineInTen } from '../../light/forecast.ts';
import type { KnownOrUnknown } from '../../plan/causes.ts';
import type { Differences } from '../../plan/differences.ts';
import type { Words } from '../words/words.ts';

/** A difference with its width where it was worked out and not set: '−0.42 ±0.18'. */
export function widthWords({ format }: Words, value: KnownOrUnknown): string | null {
  if (!value.known || !value.estimate) return null;
  return `±${format.number(nineInTen(value.estimate.sigma), 2)}`;
}

/** The fade of a pair, where it is known. */
export function fadeOf({ lines }: Differences) {
  const fade = lines.find(({ cause }) => cause === 'fade')?.difference;
  return fade?.known && fade.estimate ? { ...fade, estimate: fade.estimate } : null;
}
