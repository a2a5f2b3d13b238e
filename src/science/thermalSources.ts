import type { ThermalRange } from './thermalRange.ts';

/** Where the figures of a body that nobody has measured come from. Apart from them: words weigh. */
export const UNMEASURED_FROM: Readonly<Record<keyof ThermalRange, string>> = {
  tau: 'our choice, from dark series of one consumer body that settled by the 5th of 180 s and the 6th of 360 s',
  doubling:
    'measured by a hobbyist on one consumer body; the range is that of the physics of silicon at 20 °C',
  exposing:
    'our choice, from a hobby series (8 to 17 K by the body itself) and a handbook page (a few degrees)',
  liveView: 'from memory, no measurement found',
  idle: 'from memory, no measurement found',
};
