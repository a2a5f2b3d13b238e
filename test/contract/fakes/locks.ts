import type { OutingLocks } from '../../../src/device/locks.ts';

const nobody = () => () => undefined;

/** The locks of the only window there is: whatever it wants it has, and nobody ever asks. */
export const onlyWindow: OutingLocks = {
  claim: async () => 'owner',
  release: () => undefined,
  ask: async () => 'owner',
  steal: async () => 'owner',
  tellWritten: () => undefined,
  onWritten: nobody,
  onAsked: nobody,
  onStolen: nobody,
};
