import { assemble } from '../../../gear/rig.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { FormatOutline } from '../../parts/FormatOutline.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { CueSection } from '../../shell/CueSection.tsx';
import { DeviceSection } from '../../shell/DeviceSection.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';
import { GearFileSection } from './GearFileSection.tsx';

export function GearList() {
  const { gear: desk, navigation } = useApp();
  const { format, gear: words } = useGearWords();
  const gear = desk.gear.value;
  const { bodies, lenses, rigs } = gear;
  const [kind, id] = navigation.at.value.path;
  const isOpen = (what: string, thing: string) => kind === what && id === thing;
  const open = (what: string, thing: string) => () => navigation.go('gear', what, thing);
  const adder = (what: string, label: string) => (
    <Button onPress={open(what, 'new')}>
      <Icon name="plus" />
      {label}
    </Button>
  );
  const hasBoth = bodies.length > 0 && lenses.length > 0;
  return (
    <Screen title={words.title}>
      {bodies.length > 0 && !desk.hasOwn.value && <Notice>{words.allInvented}</Notice>}
      <Section title={words.bodies}>
        {bodies.length === 0 ? (
          <EmptyHint acts={adder('body', words.addBody)}>{words.noBody}</EmptyHint>
        ) : (
          <>
            <ul>
              {bodies.map((body) => (
                <li key={body.id}>
                  <Row
                    title={body.name}
                    sign={
                      <span class="outline-cell">
                        <FormatOutline widthMm={body.widthMm} heightMm={body.heightMm} />
                      </span>
                    }
                    tag={body.invented && <InventedTag />}
                    note={words.size(format.plain(body.widthMm), format.plain(body.heightMm))}
                    current={isOpen('body', body.id)}
                    onPress={open('body', body.id)}
                  />
                </li>
              ))}
            </ul>
            <div class="acts">{adder('body', words.addBody)}</div>
          </>
        )}
      </Section>
      <Section title={words.lenses}>
        {lenses.length === 0 ? (
          <EmptyHint acts={adder('lens', words.addLens)}>{words.noLens}</EmptyHint>
        ) : (
          <>
            <ul>
              {lenses.map((lens) => (
                <li key={lens.id}>
                  <Row
                    title={lens.name}
                    tag={lens.invented && <InventedTag />}
                    note={words.lensLine(
                      format.plain(lens.focalMm),
                      format.fMark(lens.fNumber.widest),
                      format.fMark(lens.fNumber.narrowest),
                    )}
                    current={isOpen('lens', lens.id)}
                    onPress={open('lens', lens.id)}
                  />
                </li>
              ))}
            </ul>
            <div class="acts">{adder('lens', words.addLens)}</div>
          </>
        )}
      </Section>
      <Section title={words.rigs}>
        {rigs.length === 0 ? (
          <EmptyHint acts={hasBoth && adder('rig', words.addRig)}>
            {hasBoth ? words.noRig : words.rigNeedsBoth}
          </EmptyHint>
        ) : (
          <>
            <ul>
              {rigs.map((rig) => {
                const parts = assemble(gear, rig.id);
                return (
                  <li key={rig.id}>
                    <Row
                      title={parts ? parts.body.name : words.rigBroken}
                      note={parts && words.withLens(parts.lens.name)}
                      sign={
                        <span class="rig-cell">
                          <RigSign letter={rig.letter} />
                        </span>
                      }
                      tag={rig.invented && <InventedTag />}
                      current={isOpen('rig', rig.id)}
                      onPress={open('rig', rig.id)}
                    />
                  </li>
                );
              })}
            </ul>
            <div class="acts">{adder('rig', words.addRig)}</div>
          </>
        )}
      </Section>
      <GearFileSection />
      <CueSection />
      <DeviceSection />
    </Screen>
  );
}
