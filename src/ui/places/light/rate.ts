import type { Stops, StopsPerMinute } from '../../../science/units.ts';

/** What a fade comes to in one minute. */
export const inOneMinute = (rate: StopsPerMinute): Stops => (rate * 1) as Stops;
