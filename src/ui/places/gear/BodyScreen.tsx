import { useState } from 'preact/hooks';
import type { Body } from '../../../gear/body.ts';
import { LETTERS } from '../../../gear/letter.ts';
import { isFault } from '../../../gear/read.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';
import { BitsFields } from './BitsFields.tsx';
import { BodyFacts } from './BodyFacts.tsx';
import { BulbFields } from './BulbFields.tsx';
import { useBodyCommit } from './commit.ts';
import { DarkFrameFields } from './DarkFrameFields.tsx';
import { FileNameFields } from './FileNameFields.tsx';
import { HeatFields } from './HeatFields.tsx';
import { IsoDialFields } from './IsoDialFields.tsx';
import { SelfTimerFields } from './SelfTimerFields.tsx';
import { SensorSheet } from './SensorSheet.tsx';
import { ThingActs } from './ThingActs.tsx';
import { TimeDialFields } from './TimeDialFields.tsx';
import { useGearDesk } from './useGearDesk.ts';

/** A body: what follows from its sensor, and all that is stated of it. */
export function BodyScreen({ body }: { readonly body: Body }) {
  const { navigation } = useApp();
  const desk = useGearDesk();
  const { format, gear } = useGearWords();
  const commit = useBodyCommit(body.id);
  const [sensorOpen, setSensorOpen] = useState(false);
  return (
    <Screen inner title={body.name} tag={body.invented && <InventedTag />}>
      <Section
        title={gear.sensor}
        act={<Button onPress={() => setSensorOpen(true)}>{gear.change}</Button>}
      >
        <p class="measure">
          {gear.size(format.plain(body.widthMm), format.plain(body.heightMm))}
          <br />
          {gear.pixels(format.number(body.pixelsWide, 0), format.number(body.pixelsHigh, 0))}
        </p>
        <BodyFacts body={body} />
      </Section>
      <Section title={gear.called}>
        <div class="form">
          <TextField
            label={gear.name}
            value={body.name}
            onCommit={(text) => commit('name', text.trim())}
          />
          <Choice
            label={gear.letter}
            value={body.sign}
            options={LETTERS.map((letter) => ({
              value: letter,
              label: <RigSign letter={letter} />,
            }))}
            onChange={(letter) => commit('sign', letter)}
          />
        </div>
      </Section>
      <Section title={gear.stated}>
        <div>
          <IsoDialFields dial={body.iso} onChange={(dial) => commit('iso', dial)} />
          <TimeDialFields dial={body.time} onChange={(dial) => commit('time', dial)} />
          <BulbFields bulb={body.bulb} onChange={(bulb) => commit('bulb', bulb)} />
          <SelfTimerFields
            timer={body.selfTimer}
            onChange={(timer) => commit('selfTimer', timer)}
          />
          <DarkFrameFields rule={body.darkFrame} onChange={(rule) => commit('darkFrame', rule)} />
          <BitsFields bits={body.bits} onChange={(bits) => commit('bits', bits)} />
          <FileNameFields files={body.files} onChange={(files) => commit('files', files)} />
          <HeatFields body={body} onChange={(heat) => commit('heat', heat)} />
        </div>
      </Section>
      <ThingActs
        onCopy={() => {
          const copied = desk.copyBody(body.id, gear.copyOf(body.name));
          if (!isFault(copied)) navigation.go('gear', 'body', copied);
        }}
        onDelete={() => {
          navigation.replace('gear');
          desk.deleteBody(body.id);
        }}
      />
      {sensorOpen && <SensorSheet body={body} onClose={() => setSensorOpen(false)} />}
    </Screen>
  );
}
