import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';

/** The address names something that was deleted, or never was. */
export function GoneScreen() {
  const { navigation } = useApp();
  const { gear } = useWords();
  return (
    <Screen inner title={gear.title}>
      <EmptyHint acts={<Button onPress={() => navigation.replace('gear')}>{gear.toGear}</Button>}>
        {gear.gone}
      </EmptyHint>
    </Screen>
  );
}
