import { useState } from 'preact/hooks';
import { assemble } from '../../../gear/rig.ts';
import {
  type ChangeCost,
  changeCost,
  type ListTap,
  type PairMoved,
} from '../../../outing/changeCost.ts';
import type { RunState } from '../../../outing/state.ts';
import { duration, type Stops } from '../../../science/units.ts';
import { type CostWords, useCostWords } from '../../words/cost.ts';
import { useRun } from './useRun.ts';

/** More would not be read in the dark. */
const MOST_PAIRS = 2;

/** What a change of the list costs against going on, as it stood when it was first shown. */
export function CostLine({ tap }: { readonly tap: ListTap }) {
  const { desk, state } = useRun();
  const words = useCostWords();
  // What is read must not change under the thumb.
  const [cost] = useState(() => changeCost(state, tap, desk.now.peek()));
  return cost && <p class="cost">{costWords(words, state, cost)}</p>;
}

function costWords(
  words: CostWords,
  state: RunState,
  { longerS, swaps, pairs }: ChangeCost,
): string {
  const { format, cost: say } = words;
  const whole = Math.round(longerS);
  const size = duration(Math.abs(whole));
  const parts = [
    whole !== 0 && say[whole > 0 ? 'longer' : 'shorter'](format.duration(size)),
    swaps !== 0 && say[swaps > 0 ? 'moreSwaps' : 'fewerSwaps'](Math.abs(swaps)),
  ].filter((part) => part !== false);
  const said = parts.length > 0 ? say.costs(parts) : say.nothing;
  const moved = pairs
    .filter((pair) => movedBy(pair) >= 0.005)
    .toSorted((a, b) => movedBy(b) - movedBy(a))
    .slice(0, MOST_PAIRS)
    .map((pair) => pairWords(words, state, pair));
  return [said, ...moved].join(' ');
}

/** By how many stops, of either kind, a pair is moved; a pass that is lost counts for more than any. */
function movedBy({ going, changed, isUnderTheSky }: PairMoved): number {
  if (!going && !changed) return 0;
  if (!going || !changed || going.passes !== changed.passes) return Number.POSITIVE_INFINITY;
  return Math.max(
    isUnderTheSky ? Math.abs((changed.fade ?? 0) - (going.fade ?? 0)) : 0,
    Math.abs((changed.heat ?? 0) - (going.heat ?? 0)),
  );
}

function pairWords(
  { format, cost: say }: CostWords,
  { plan, gear }: RunState,
  pair: PairMoved,
): string {
  const { going, changed, isUnderTheSky } = pair;
  const known = changed ?? going;
  if (!known) return '';
  const letter = (rig: typeof known.other) => assemble(gear, rig)?.rig.letter ?? '';
  const set = plan.sets.findIndex(({ id }) => id === known.set) + 1;
  const figure = (of: number | null | undefined): string | null =>
    of === null || of === undefined ? null : format.stopsFine(of as Stops);
  const figures = [
    changed?.passes !== going?.passes && say.passes(changed?.passes ?? 0, going?.passes ?? 0),
    changed && isUnderTheSky && say.fade(figure(changed.fade), figure(going?.fade)),
    changed && say.heat(figure(changed.heat), figure(going?.heat)),
  ].filter((part) => typeof part === 'string');
  return say.pair(letter(known.other), letter(known.reference), set, figures);
}
