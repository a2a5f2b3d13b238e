import type { FirstValues } from '../science/heatFit.ts';
import { type KelvinDifference, kelvins } from '../science/sensorUnits.ts';
import type { Ranged } from '../science/thermalRange.ts';
import { seconds } from '../science/units.ts';
import type { MeasuredHeat } from './body.ts';

/** The same of a value and both ends of its range. */
const each = <A extends number, B extends number>(
  { usual, least, most }: Ranged<A>,
  change: (value: A) => B,
): Ranged<B> => ({ usual: change(usual), least: change(least), most: change(most) });

/**
 * What the first values of a fit make of a body's heat: the time constant to a second, the plateau
 * over the air to a tenth of a K. The plateau is measured in doublings of the dark current and
 * becomes a temperature by the doubling that the body works with.
 */
export const firstHeat = (
  { tau, plateau }: FirstValues,
  doubling: KelvinDifference,
  from: string,
): Pick<MeasuredHeat, 'tau' | 'exposing'> => ({
  tau: { ...each(tau, (value) => seconds(Math.round(value))), from },
  exposing: { ...each(plateau, (value) => kelvins(Math.round(value * doubling * 10) / 10)), from },
});
