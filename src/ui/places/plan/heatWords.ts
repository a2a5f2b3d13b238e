import type { RigId } from '../../../gear/ids.ts';
import type { SetId } from '../../../plan/ids.ts';
import type { Doublings } from '../../../science/sensorUnits.ts';
import type { Ranged } from '../../../science/thermalRange.ts';
import type { HeatWords } from '../../words/planHeat.ts';
import type { PlanView } from './usePlanView.ts';

/** Stops of dark current with their sign; nothing has none. */
export function signedHeat({ format }: HeatWords, heat: Doublings): string {
  const written = format.number(heat, 2);
  return heat > 0 && /[1-9]/.test(written) ? `+${written}` : written;
}

/** '0.02 to 0.21' */
export const heatRange = (
  { format, heat }: HeatWords,
  { least, most }: Pick<Ranged<Doublings>, 'least' | 'most'>,
): string => heat.between(format.number(least, 2), format.number(most, 2));

/** '+0.09 stop of dark current (0.02 to 0.21)' */
export const heatFigure = (words: HeatWords, heat: Ranged<Doublings>): string =>
  words.heat.figure(signedHeat(words, heat.usual), heatRange(words, heat));

/** The heat line of a rig against its set's reference; null for the reference itself. */
export function pairHeatWords(
  words: HeatWords,
  view: PlanView,
  set: SetId,
  other: RigId,
): string | null {
  const pair = view.heat.pairs.find((each) => each.set === set && each.other === other);
  if (!pair) return null;
  const letter = (rig: RigId) => view.rig(rig)?.rig.letter ?? '';
  const { reference, byHistory } = pair;
  return words.heat.pair(
    letter(other),
    signedHeat(words, byHistory.usual),
    letter(reference),
    heatRange(words, byHistory),
  );
}
