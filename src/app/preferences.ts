import { type ReadonlySignal, signal } from '@preact/signals';
import type { Store } from '../store/contract.ts';
import type { Saving } from './saving.ts';

/** The look of the app; 'night' spares the eye that has adapted to the dark. */
export type Theme = 'day' | 'night';

/** How the app looks and speaks on this device. */
interface Wishes {
  /** What was chosen last. */
  readonly theme: Theme;
  /** Changes with civil dusk and dawn instead, where they are known. */
  readonly bySun: boolean;
  /** In the night theme, figures in the weaker red. */
  readonly dim: boolean;
  readonly language: Language;
  /** The first screen was answered and does not come back. */
  readonly welcomed: boolean;
}

export const LANGUAGES = ['en'] as const;
export type Language = (typeof LANGUAGES)[number];

const KEY = 'preferences';

export interface Preferences {
  readonly current: ReadonlySignal<Wishes>;
  /** Reads what was kept. To be awaited before the first screen, which must not flash. */
  load(): Promise<void>;
  change(wish: Partial<Wishes>): void;
}

/** What is kept may come from another version: each wish is taken by itself, or left. */
function readWishes(kept: unknown, base: Wishes): Wishes {
  if (typeof kept !== 'object' || kept === null) return base;
  const wish = kept as Readonly<Record<keyof Wishes, unknown>>;
  return {
    theme: wish.theme === 'day' || wish.theme === 'night' ? wish.theme : base.theme,
    bySun: typeof wish.bySun === 'boolean' ? wish.bySun : base.bySun,
    dim: typeof wish.dim === 'boolean' ? wish.dim : base.dim,
    language: LANGUAGES.find((language) => language === wish.language) ?? base.language,
    welcomed: typeof wish.welcomed === 'boolean' ? wish.welcomed : base.welcomed,
  };
}

/** @param startsDark the device asks for dark screens; decides the theme until the user does. */
export function createPreferences({
  store,
  saving,
  startsDark,
}: {
  readonly store: Store;
  readonly saving: Saving;
  readonly startsDark: boolean;
}): Preferences {
  const current = signal<Wishes>({
    theme: startsDark ? 'night' : 'day',
    bySun: false,
    dim: false,
    language: 'en',
    welcomed: false,
  });
  return {
    current,
    async load() {
      current.value = readWishes(await store.setting(KEY), current.peek());
    },
    change(wish) {
      const changed = { ...current.peek(), ...wish };
      current.value = changed;
      saving.save(() => store.putSetting(KEY, changed));
    },
  };
}
