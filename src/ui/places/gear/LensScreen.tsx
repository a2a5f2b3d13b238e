import { fNumberOnStep } from '../../../app/dialSteps.ts';
import type { Lens } from '../../../gear/lens.ts';
import { isFault } from '../../../gear/read.ts';
import { fNumberPositions } from '../../../science/dials.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { Choice } from '../../parts/Choice.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { MarkField } from '../../parts/MarkField.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';
import { useLensCommit } from './commit.ts';
import { MissingPositions } from './MissingPositions.tsx';
import { ThingActs } from './ThingActs.tsx';
import { useGearDesk } from './useGearDesk.ts';

/** A lens and all that is stated of it. */
export function LensScreen({ lens }: { readonly lens: Lens }) {
  const { navigation } = useApp();
  const desk = useGearDesk();
  const { format, gear } = useGearWords();
  const commit = useLensCommit(lens.id);
  const dial = lens.fNumber;
  const full = fNumberPositions({ ...dial, missing: [] });
  return (
    <Screen inner title={lens.name} tag={lens.invented && <InventedTag />}>
      <div class="form">
        <TextField
          label={gear.name}
          value={lens.name}
          onCommit={(text) => commit('name', text.trim())}
        />
        <NumberField
          label={gear.focal}
          unit={gear.mm}
          value={lens.focalMm}
          onCommit={(focal) => commit('focalMm', focal)}
        />
      </div>
      <Section title={gear.fNumbers}>
        <div class="form">
          <div class="pair">
            <MarkField
              label={gear.widest}
              hint={gear.widestHint}
              value={dial.widest}
              onCommit={(widest) => commit('fNumber', { ...dial, widest, missing: [] })}
            />
            <MarkField
              label={gear.narrowest}
              hint={gear.widestHint}
              value={dial.narrowest}
              onCommit={(narrowest) => commit('fNumber', { ...dial, narrowest, missing: [] })}
            />
          </div>
          <Choice
            label={gear.step}
            options={gear.steps}
            value={dial.step}
            onChange={(step) => commit('fNumber', fNumberOnStep(dial, step))}
          />
          {!isRefusal(full) && (
            <MissingPositions
              all={full.map(({ mark }) => mark)}
              missing={dial.missing}
              write={format.fMark}
              onChange={(missing) => commit('fNumber', { ...dial, missing })}
            />
          )}
        </div>
      </Section>
      <Section title={gear.glass}>
        <div class="form">
          <NumberField
            optional
            label={gear.transmission}
            hint={gear.transmissionHint}
            unit={gear.stop}
            value={lens.transmissionStops}
            onCommit={(stops) => commit('transmissionStops', stops)}
          />
          <NumberField
            optional
            label={gear.closest}
            hint={gear.closestHint}
            unit={gear.mm}
            value={lens.closestFocusMm}
            onCommit={(closest) => commit('closestFocusMm', closest)}
          />
          <Switch
            label={gear.focusSurvives}
            hint={gear.focusSurvivesHint}
            on={lens.focusSurvivesPowerOff}
            onChange={(survives) => commit('focusSurvivesPowerOff', survives)}
          />
        </div>
      </Section>
      <ThingActs
        onCopy={() => {
          const copied = desk.copyLens(lens.id, gear.copyOf(lens.name));
          if (!isFault(copied)) navigation.go('gear', 'lens', copied);
        }}
        onDelete={() => {
          navigation.replace('gear');
          desk.deleteLens(lens.id);
        }}
      />
    </Screen>
  );
}
