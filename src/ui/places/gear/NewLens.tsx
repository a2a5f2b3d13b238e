import { useState } from 'preact/hooks';
import { lensFields } from '../../../gear/parse.ts';
import { isFault } from '../../../gear/read.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { parseMillimetres } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { MarkField } from '../../parts/MarkField.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useDrafts } from '../../shell/useDrafts.ts';
import { useGearWords } from '../../words/gear.ts';
import { useGearDesk } from './useGearDesk.ts';

/** The few figures of a lens that nobody can guess. */
export function NewLens() {
  const { navigation } = useApp();
  const drafts = useDrafts();
  const desk = useGearDesk();
  const { fault, gear } = useGearWords();
  const draft = drafts.current.value.newLens;
  const [refusal, setRefusal] = useState<string | null>(null);

  const save = (): string | null => {
    const { name, focalMm: focal, widest, narrowest } = drafts.current.peek().newLens;
    const focalMm = parseMillimetres(focal ?? 0);
    if (name.trim() === '') return gear.nameFirst;
    if (isRefusal(focalMm)) return gear.focalFirst;
    if (widest === '' || narrowest === '') return gear.fNumbersFirst;
    const added = desk.addLens({ name, focalMm, widest, narrowest });
    if (isFault(added)) return fault(added);
    drafts.clear('newLens');
    navigation.replace('gear', 'lens', added);
    return null;
  };
  const takeMark = (end: 'widest' | 'narrowest') => (mark: string) => {
    drafts.change('newLens', { [end]: mark });
    return null;
  };

  return (
    <Screen
      inner
      title={gear.newLens}
      foot={
        <>
          {refusal && <Notice urgent>{refusal}</Notice>}
          <Button rank="main" onPress={() => setRefusal(save())}>
            {gear.saveLens}
          </Button>
        </>
      }
    >
      <div class="form">
        <TextField
          label={gear.name}
          value={draft.name}
          onCommit={(text) => {
            const read = lensFields.name(text.trim());
            if (isFault(read)) return fault(read);
            drafts.change('newLens', { name: read });
            return null;
          }}
        />
        <NumberField
          label={gear.focal}
          unit={gear.mm}
          value={draft.focalMm}
          onCommit={(value) => {
            const read = lensFields.focalMm(value);
            drafts.change('newLens', { focalMm: isFault(read) ? null : read });
            return isFault(read) ? fault(read) : null;
          }}
        />
        <div class="pair">
          <MarkField
            label={gear.widest}
            hint={gear.widestHint}
            value={draft.widest}
            onCommit={takeMark('widest')}
          />
          <MarkField
            label={gear.narrowest}
            hint={gear.widestHint}
            value={draft.narrowest}
            onCommit={takeMark('narrowest')}
          />
        </div>
      </div>
    </Screen>
  );
}
