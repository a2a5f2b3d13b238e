import { Icon } from '../parts/Icon.tsx';
import { useWords } from '../words/words.ts';
import './PlaceBar.css';
import { useApp } from './useApp.ts';

/** Day or night, at once. In the bar of places; a bare screen shows it itself. */
export function NightSwitch() {
  const { preferences } = useApp();
  const { shell } = useWords();
  const night = preferences.current.value.theme === 'night';
  return (
    <button
      type="button"
      class="bar-item night-switch"
      role="switch"
      aria-checked={night}
      onClick={() => preferences.change({ theme: night ? 'day' : 'night' })}
    >
      <Icon name="night" />
      {shell.night}
    </button>
  );
}
