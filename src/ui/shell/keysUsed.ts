import { signal } from '@preact/signals';

/** A key has pressed the one act since the app was loaded: whoever has keys is told of them. */
export const keysUsed = signal(false);
