import { useState } from 'preact/hooks';
import type { BodyId, LensId } from '../../../gear/ids.ts';
import { isFault } from '../../../gear/read.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';
import { useGearDesk } from './useGearDesk.ts';

/** A body and the lens on it. With one of each there is nothing to choose. */
export function NewRig() {
  const { gear: kept, navigation } = useApp();
  const desk = useGearDesk();
  const { fault, gear } = useGearWords();
  const { bodies, lenses } = kept.gear.value;
  const only = <T,>(things: readonly T[]): T | undefined =>
    things.length === 1 ? things[0] : undefined;
  const [body, setBody] = useState<BodyId | null>(only(bodies)?.id ?? null);
  const [lens, setLens] = useState<LensId | null>(only(lenses)?.id ?? null);
  const [refusal, setRefusal] = useState<string | null>(null);

  const save = (): string | null => {
    if (body === null || lens === null) return gear.pairFirst;
    const added = desk.addRig(body, lens);
    if (isFault(added)) return fault(added);
    navigation.replace('gear', 'rig', added);
    return null;
  };
  const optionsOf = <I extends string>(
    things: readonly { readonly id: I; readonly name: string; readonly invented: boolean }[],
  ) =>
    things.map(({ id, name, invented }) => ({
      value: id,
      label: (
        <>
          {name} {invented && <InventedTag />}
        </>
      ),
    }));

  if (bodies.length === 0 || lenses.length === 0) {
    return (
      <Screen inner title={gear.newRig}>
        <EmptyHint
          acts={
            <>
              <Button onPress={() => navigation.replace('gear', 'body', 'new')}>
                {gear.addBody}
              </Button>
              <Button onPress={() => navigation.replace('gear', 'lens', 'new')}>
                {gear.addLens}
              </Button>
            </>
          }
        >
          {gear.rigNeedsBoth}
        </EmptyHint>
      </Screen>
    );
  }
  return (
    <Screen
      inner
      title={gear.newRig}
      foot={
        <>
          {refusal && <Notice urgent>{refusal}</Notice>}
          <Button rank="main" onPress={() => setRefusal(save())}>
            {gear.saveRig}
          </Button>
        </>
      }
    >
      <div class="form">
        <Choice
          label={gear.body}
          as="list"
          options={optionsOf(bodies)}
          value={body}
          onChange={setBody}
        />
        <Choice
          label={gear.lens}
          as="list"
          options={optionsOf(lenses)}
          value={lens}
          onChange={setLens}
        />
      </div>
    </Screen>
  );
}
