import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';

/** The address names something that was deleted, or never was. */
export function GoneScreen() {
  const { navigation } = useApp();
  const { gear } = useGearWords();
  return (
    <Screen inner title={gear.title}>
      <EmptyHint acts={<Button onPress={() => navigation.replace('gear')}>{gear.toGear}</Button>}>
        {gear.gone}
      </EmptyHint>
    </Screen>
  );
}
