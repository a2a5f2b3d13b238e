import { useState } from 'preact/hooks';
import { LETTERS } from '../../../gear/letter.ts';
import { assemble, type Rig } from '../../../gear/rig.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';
import { OffsetSheet } from './OffsetSheet.tsx';
import { RigFacts } from './RigFacts.tsx';
import { ThingActs } from './ThingActs.tsx';
import { useGearDesk } from './useGearDesk.ts';

/** A rig: its parts, its letter, what follows from them, and its offsets. */
export function RigScreen({ rig }: { readonly rig: Rig }) {
  const { gear: kept, navigation } = useApp();
  const desk = useGearDesk();
  const { format, gear } = useGearWords();
  const [offsetOpen, setOffsetOpen] = useState(false);
  const parts = assemble(kept.gear.value, rig.id);
  const taken = kept.gear.value.rigs.some(
    ({ id, letter }) => id !== rig.id && letter === rig.letter,
  );
  return (
    <Screen inner title={gear.rigTitle(rig.letter)} tag={rig.invented && <InventedTag />}>
      {parts ? (
        <div class="form">
          <ul>
            <li>
              <Row
                title={parts.body.name}
                note={gear.body}
                onPress={() => navigation.go('gear', 'body', parts.body.id)}
              />
            </li>
            <li>
              <Row
                title={parts.lens.name}
                note={gear.lens}
                onPress={() => navigation.go('gear', 'lens', parts.lens.id)}
              />
            </li>
          </ul>
          <RigFacts rig={parts} />
        </div>
      ) : (
        <Notice>{gear.rigBroken}</Notice>
      )}
      <div class="form">
        <Choice
          label={gear.letter}
          value={rig.letter}
          options={LETTERS.map((letter) => ({ value: letter, label: <RigSign letter={letter} /> }))}
          onChange={(letter) => desk.changeRig(rig.id, { letter })}
        />
        {taken && <Notice>{gear.letterTaken(rig.letter)}</Notice>}
      </div>
      <Section
        title={gear.offsets}
        act={
          rig.offsets.length > 0 && (
            <Button onPress={() => setOffsetOpen(true)}>
              <Icon name="plus" />
              {gear.addOffset}
            </Button>
          )
        }
      >
        <p>{gear.offsetsAre}</p>
        {rig.offsets.length === 0 ? (
          <EmptyHint acts={<Button onPress={() => setOffsetOpen(true)}>{gear.addOffset}</Button>}>
            {gear.noOffset}
          </EmptyHint>
        ) : (
          <ul>
            {rig.offsets.map((offset, index) => {
              const at = offset.isoMark === null ? gear.everyIso : format.isoMark(offset.isoMark);
              return (
                <li key={`${at} ${offset.date} ${offset.stops} ${offset.how}`} class="offset">
                  <div>
                    <p class="measure">
                      {at} <b>{gear.offsetLine(format.stopsFine(offset.stops))}</b>
                    </p>
                    <p class="hint">
                      {format.calendarDate(offset.date)}
                      {offset.how !== '' && `, ${offset.how}`}
                    </p>
                  </div>
                  <button
                    type="button"
                    class="icon-button"
                    aria-label={gear.deleteOffset(at)}
                    onClick={() => desk.deleteOffset(rig.id, index)}
                  >
                    <Icon name="close" />
                  </button>
                </li>
              );
            })}
          </ul>
        )}
      </Section>
      <ThingActs
        onDelete={() => {
          navigation.replace('gear');
          desk.deleteRig(rig.id);
        }}
      />
      {offsetOpen && <OffsetSheet rig={rig} onClose={() => setOffsetOpen(false)} />}
    </Screen>
  );
}
