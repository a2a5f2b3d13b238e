import { useState } from 'preact/hooks';
import { bodyFields } from '../../../gear/parse.ts';
import { isFault } from '../../../gear/read.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { parseMillimetres, parsePixels } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useDrafts } from '../../shell/useDrafts.ts';
import { useGearWords } from '../../words/gear.ts';
import { SensorFields } from './SensorFields.tsx';
import { useGearDesk } from './useGearDesk.ts';

/** The few figures of a body that nobody can guess. */
export function NewBody() {
  const { navigation } = useApp();
  const drafts = useDrafts();
  const desk = useGearDesk();
  const { fault, gear } = useGearWords();
  const draft = drafts.current.value.newBody;
  const [refusal, setRefusal] = useState<string | null>(null);

  const save = (): string | null => {
    const { name } = drafts.current.peek().newBody;
    const { widthMm, heightMm, pixelsWide, pixelsHigh } = drafts.current.peek().newBody;
    const sides = [parseMillimetres(widthMm ?? 0), parseMillimetres(heightMm ?? 0)] as const;
    const counts = [parsePixels(pixelsWide ?? 0), parsePixels(pixelsHigh ?? 0)] as const;
    if (name.trim() === '') return gear.nameFirst;
    if (isRefusal(sides[0]) || isRefusal(sides[1])) return gear.sizeFirst;
    if (isRefusal(counts[0]) || isRefusal(counts[1])) return gear.pixelsFirst;
    const added = desk.addBody({
      name,
      widthMm: sides[0],
      heightMm: sides[1],
      pixelsWide: counts[0],
      pixelsHigh: counts[1],
    });
    if (isFault(added)) return fault(added);
    drafts.clear('newBody');
    navigation.replace('gear', 'body', added);
    return null;
  };

  return (
    <Screen
      inner
      title={gear.newBody}
      foot={
        <>
          {refusal && <Notice urgent>{refusal}</Notice>}
          <Button rank="main" onPress={() => setRefusal(save())}>
            {gear.saveBody}
          </Button>
        </>
      }
    >
      <div class="form">
        <TextField
          label={gear.name}
          hint={gear.bodyNameHint}
          value={draft.name}
          onCommit={(text) => {
            const read = bodyFields.name(text.trim());
            if (isFault(read)) return fault(read);
            drafts.change('newBody', { name: read });
            return null;
          }}
        />
        <SensorFields sensor={draft} onChange={(change) => drafts.change('newBody', change)} />
        <p>{gear.defaultsFollow}</p>
      </div>
    </Screen>
  );
}
