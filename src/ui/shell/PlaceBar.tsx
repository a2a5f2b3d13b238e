import type { Place } from '../../app/navigation.ts';
import { Icon } from '../parts/Icon.tsx';
import { useWords } from '../words/words.ts';
import { NightSwitch } from './NightSwitch.tsx';
import './PlaceBar.css';
import { LANDED } from './places.ts';
import { useApp } from './useApp.ts';

/** The places, and night one tap away. At the foot, under the thumb; at the side of a wide screen. */
export function PlaceBar({ current }: { readonly current: Place }) {
  const { navigation } = useApp();
  const { shell } = useWords();
  return (
    <nav class="place-bar" aria-label={shell.places}>
      <ul>
        {LANDED.map(({ place }) => (
          <li key={place}>
            <button
              type="button"
              class="bar-item"
              aria-current={place === current ? 'page' : undefined}
              onClick={() => navigation.visit(place)}
            >
              <Icon name={place} />
              {shell.place[place]}
            </button>
          </li>
        ))}
      </ul>
      <NightSwitch />
    </nav>
  );
}
