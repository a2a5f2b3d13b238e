import { useState } from 'preact/hooks';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { useWords } from '../../words/words.ts';
import { Cost } from './laterCost.tsx';
import { settingsLine } from './marks.ts';
import { RigName, rigText } from './RigName.tsx';
import { useRun } from './useRun.ts';

/** Settings by which the set comes out right again, for all its rigs; one tap takes them. */
export function RematchSheet({ onClose }: { readonly onClose: () => void }) {
  const { desk, state, tap } = useRun();
  const words = useWords();
  const { format } = words;
  const { light } = words.outing;
  // As they stood when the sheet was opened: what is read must not change under the thumb.
  const [offers] = useState(() => desk.light.rematches());
  const set = desk.light.inHand.value?.set;
  const line = (settings: Parameters<typeof settingsLine>[1]) => settingsLine(words, settings);
  return (
    <Sheet title={light.rematch} onClose={onClose}>
      <p>{set?.intent}</p>
      <p>{offers.length > 0 ? light.rematchHint : light.noRematch}</p>
      <div class="rematches">
        {offers.map(({ dial, miss, rigs }) => (
          <section key={dial} aria-label={light.dials[dial]}>
            <h3>{light.dials[dial]}</h3>
            <ul>
              {rigs.map(({ rig, settings }) => (
                <li key={rig}>
                  <RigName gear={state.gear} rig={rig} />{' '}
                  <span class="marks">{line(settings)}</span>
                </li>
              ))}
            </ul>
            {set && <Cost.Content tap={{ tap: 'rematch', set: set.id, rigs }} />}
            <Button
              field
              name={light.takeNamed(
                light.dials[dial],
                rigs.map(({ rig, settings }) => `${rigText(state.gear, rig)} ${line(settings)}`),
              )}
              onPress={() => {
                onClose();
                if (set) void tap({ tap: 'rematch', set: set.id, rigs });
              }}
            >
              {light.take(format.stops(miss))}
            </Button>
          </section>
        ))}
      </div>
    </Sheet>
  );
}
