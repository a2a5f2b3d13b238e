import type { RigId } from '../../../gear/ids.ts';
import { assemble } from '../../../gear/rig.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useDrafts } from '../../shell/useDrafts.ts';
import { usePlanWords } from '../../words/plan.ts';
import { Cautions } from './Cautions.tsx';
import { optionsWithNotes } from './options.ts';
import { RigTicks } from './RigTicks.tsx';
import { rigWords } from './sentences.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import { useRefusal } from './useRefusal.tsx';

/** A new plan: for which rigs, from which list. */
export function NewPlan() {
  const { gear, navigation } = useApp();
  const plans = usePlanDesk();
  const words = usePlanWords();
  const { plan: say } = words;
  const { current, change, clear } = useDrafts();
  const { list, name, ...draft } = current.value.newPlan;
  const { refusal, done } = useRefusal();
  const view = { rig: (id: RigId) => assemble(gear.gear.value, id) };
  // A draft may be older than what has become of the gear.
  const rigs = draft.rigs.filter(view.rig);
  const chosen = draft.reference;
  const reference = chosen && rigs.includes(chosen) ? chosen : (rigs[0] ?? null);
  const usual = list === 'nothing' ? say.unnamed : say.lists[list].label;

  const make = () => {
    if (reference === null) return;
    const made = plans.make({
      name: name ?? usual,
      rigs: [reference, ...rigs.filter((rig) => rig !== reference)],
      list: list === 'nothing' ? null : list,
    });
    if (!done(made)) return;
    clear('newPlan');
    navigation.replace('plan', made);
  };

  return (
    <Screen
      inner
      title={say.newPlan}
      foot={
        <>
          {reference === null && <p class="reason">{say.pickFirst}</p>}
          <Button rank="main" disabled={reference === null} onPress={make}>
            {say.makeIt}
          </Button>
        </>
      }
    >
      <Section title={say.rigs}>
        <RigTicks picked={rigs} onChange={(picked) => change('newPlan', { rigs: picked })} />
        {reference !== null && rigs.length > 1 && (
          <>
            <Choice
              label={say.reference}
              options={rigs.map((rig) => ({ value: rig, label: rigWords(words, view, rig) }))}
              value={reference}
              onChange={(picked) => change('newPlan', { reference: picked })}
            />
            <p class="hint">{say.referenceHint}</p>
          </>
        )}
      </Section>
      <Section title={say.startFrom}>
        <Choice
          label={say.shotList}
          as="list"
          options={optionsWithNotes({ ...say.lists, nothing: say.nothing })}
          value={list}
          onChange={(picked) => change('newPlan', { list: picked })}
        />
        <TextField
          label={say.name}
          hint={say.nameHint}
          value={name ?? usual}
          onCommit={(typed) => {
            change('newPlan', { name: typed });
            return null;
          }}
        />
        {refusal}
      </Section>
      <Section title={say.cautionTitle}>
        <Cautions />
      </Section>
    </Screen>
  );
}
