import { assemble } from '../../../gear/rig.ts';
import type { Resting } from '../../../outing/rest.ts';
import { duration, type Stops } from '../../../science/units.ts';
import { useWords, type Words } from '../../words/words.ts';
import { rigText } from './RigName.tsx';
import { useRun } from './useRun.ts';

/** Rigs that cool while others work: when each may shoot, and how it will then stand to its reference. */
export function RestReminder() {
  const { state, desk } = useRun();
  const words = useWords();
  const step = desk.step.value;
  // The rest that is waited for has its own countdown.
  const waitedFor = step?.kind === 'rest' ? step.resting.rig : null;
  return (
    <>
      {desk.resting.value
        .filter(({ rig }) => rig !== waitedFor)
        .map((resting) => {
          const { rig, leftS } = resting;
          const time = words.format.duration(duration(Math.ceil(leftS)));
          const ready = words.outing.rest.ready(rigText(state.gear, rig), time);
          const then = thenWords(
            words,
            resting,
            (of) => assemble(state.gear, of)?.rig.letter ?? '',
          );
          return (
            <p key={rig} class="where">
              {then ? `${ready}; ${then}` : ready}
            </p>
          );
        })}
    </>
  );
}

/** 'then +0.12 stop over A (0.03 to 0.30)'; null where there is nothing to stand to yet. */
export function thenWords(
  { format, outing }: Words,
  { against, doubt }: Resting,
  letter: (rig: Resting['rig']) => string,
): string | null {
  if (doubt) return outing.heat.doubt[doubt];
  if (!against) return null;
  const { usual, least, most } = against.heat;
  const range = outing.heat.between(format.number(least, 2), format.number(most, 2));
  return outing.rest.stands(
    format.stopsFine(usual as number as Stops),
    letter(against.reference),
    range,
  );
}
