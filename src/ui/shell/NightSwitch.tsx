import { Icon } from '../parts/Icon.tsx';
import { useWords } from '../words/words.ts';
import './PlaceBar.css';
import { useApp } from './useApp.ts';

/** Day or night, at once; it ends 'by the sun'. In the bar of places; a bare screen shows it itself. */
export function NightSwitch() {
  const { preferences, theme } = useApp();
  const { shell } = useWords();
  const night = theme.value === 'night';
  return (
    <button
      type="button"
      class="bar-item night-switch"
      role="switch"
      aria-checked={night}
      onClick={() => preferences.change({ theme: night ? 'day' : 'night', bySun: false })}
    >
      <Icon name="night" />
      {shell.night}
    </button>
  );
}
