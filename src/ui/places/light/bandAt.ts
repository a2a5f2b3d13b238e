import type { BandName, Night } from '../../../light/night.ts';
import type { UtcMs } from '../../../science/units.ts';

/** The band of a night at an instant. */
export const bandAt = ({ bands }: Night, at: UtcMs): BandName =>
  bands.findLast(({ fromMs }) => fromMs <= at)?.band ?? 'day';
