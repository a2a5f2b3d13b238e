import { DEFAULT_HOLD } from '../../../plan/newPlan.ts';
import type { ApertureRule, Hold, PlanSet } from '../../../plan/plan.ts';
import type { Stops } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { usePlanWords } from '../../words/plan.ts';
import { Dials } from './Dials.tsx';
import { options, optionsWithNotes } from './options.ts';
import { rigWords } from './sentences.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import type { PlanView } from './usePlanView.ts';
import { useRefusal } from './useRefusal.tsx';

interface Props {
  readonly view: PlanView;
  readonly set: PlanSet;
  readonly change: (part: Partial<PlanSet>) => string | null;
}

/** What a set keeps equal between its rigs, and how. */
export function HoldFields({ view, set, change }: Props) {
  const plans = usePlanDesk();
  const words = usePlanWords();
  const { plan } = words;
  const { hold } = set;
  const { rigs, id } = view.plan;
  const { refusal, done } = useRefusal();
  const byHand = () => done(plans.setFree(id, set.id));
  const choose = (kind: Hold['kind']) => {
    if (kind === 'free') byHand();
    else change({ hold: kind === 'same-iso-and-time' ? DEFAULT_HOLD : { kind } });
  };
  return (
    <>
      <Choice
        label={plan.holdHint}
        as="list"
        options={optionsWithNotes(plan.holds)}
        value={hold.kind}
        onChange={choose}
      />
      {refusal}
      {hold.kind === 'same-iso-and-time' && (
        <>
          <Choice<ApertureRule['rule']>
            label={plan.apertureRule}
            options={options(plan.apertureRules)}
            value={hold.aperture.rule}
            onChange={(rule) => change({ hold: { ...hold, aperture: { ...hold.aperture, rule } } })}
          />
          <NumberField
            label={plan.plus}
            hint={plan.plusHint}
            unit={plan.stop}
            value={hold.aperture.plus}
            onCommit={(plus) =>
              change({ hold: { ...hold, aperture: { ...hold.aperture, plus: plus as Stops } } })
            }
          />
        </>
      )}
      {hold.kind === 'free' &&
        rigs
          .filter((rig) => rig !== set.reference)
          .map((rig) => {
            const assembled = view.rig(rig);
            const settings = hold.settings[rig];
            return (
              <div key={rig} class="by-hand">
                <h3>{rigWords(words, view, rig)}</h3>
                {assembled && settings && (
                  <Dials
                    assembled={assembled}
                    settings={settings}
                    onTurn={(turned) =>
                      change({ hold: { ...hold, settings: { ...hold.settings, [rig]: turned } } })
                    }
                  />
                )}
                {assembled && !settings && <Button onPress={byHand}>{plan.setByHand}</Button>}
              </div>
            );
          })}
    </>
  );
}
