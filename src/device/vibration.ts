import type { CueKind } from './tones.ts';

/** The phone's motor. Only works while the page is visible. */
export interface Vibration {
  readonly supported: boolean;
  /** @returns whether the phone took it. */
  vibrate(kind: CueKind): boolean;
}

/** Milliseconds on, off, on ...; same counts as the tones. */
const PATTERNS: Readonly<Record<CueKind, number[]>> = {
  'lead-in': [80],
  'near-end': [120, 120, 120],
  end: [900],
};

export function phoneVibration(navigator: { vibrate?(pattern: number[]): boolean }): Vibration {
  return {
    supported: navigator.vibrate !== undefined,
    vibrate: (kind) => navigator.vibrate?.(PATTERNS[kind]) ?? false,
  };
}
