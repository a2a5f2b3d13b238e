import { signal } from '@preact/signals';
import type { Step } from '../../outing/step.ts';

/** The steps whose one act may be pressed from a pocket: none that ends something or gives it up. */
const FROM_A_POCKET: readonly Step['kind'][] = [
  'mount',
  'focus',
  'dial',
  'expose',
  'open',
  'paused',
];

/** Whether keys may press the one act of this step. */
export const mayPress = (step: Step | null): boolean =>
  step !== null && FROM_A_POCKET.includes(step.kind);

/** A key has pressed the one act since the app was loaded: whoever has keys is told of them. */
export const keysUsed = signal(false);
