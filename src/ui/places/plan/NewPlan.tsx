import { useState } from 'preact/hooks';
import type { RigId } from '../../../gear/ids.ts';
import { assemble } from '../../../gear/rig.ts';
import type { ReadyListName } from '../../../plan/readyLists.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
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
  const [rigs, setRigs] = useState<readonly RigId[]>([]);
  const [chosen, setChosen] = useState<RigId | null>(null);
  const [list, setList] = useState<ReadyListName | 'nothing'>('base-iso-latitude');
  const [name, setName] = useState<string | null>(null);
  const { refusal, done } = useRefusal();
  const reference = chosen && rigs.includes(chosen) ? chosen : (rigs[0] ?? null);
  const usual = list === 'nothing' ? say.unnamed : say.lists[list].label;
  const view = { rig: (id: RigId) => assemble(gear.gear.value, id) };

  const make = () => {
    if (reference === null) return;
    const made = plans.make({
      name: name ?? usual,
      rigs: [reference, ...rigs.filter((rig) => rig !== reference)],
      list: list === 'nothing' ? null : list,
    });
    if (done(made)) navigation.replace('plan', made);
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
        <RigTicks picked={rigs} onChange={setRigs} />
        {reference !== null && rigs.length > 1 && (
          <>
            <Choice
              label={say.reference}
              options={rigs.map((rig) => ({ value: rig, label: rigWords(words, view, rig) }))}
              value={reference}
              onChange={setChosen}
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
          onChange={setList}
        />
        <TextField
          label={say.name}
          hint={say.nameHint}
          value={name ?? usual}
          onCommit={(typed) => {
            setName(typed);
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
