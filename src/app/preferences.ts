import { type ReadonlySignal, signal } from '@preact/signals';
import type { CueChoices } from '../device/cues.ts';
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
  /** How the moments of an exposure are told. */
  readonly cues: CueChoices;
  /** Keys and presenter remotes press the one act of a run. */
  readonly keys: boolean;
  /** So does the play button of a headset; for that the page must play silence. */
  readonly headset: boolean;
}

export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

/**
 * The language to start in, until one is chosen.
 *
 * @param asked What the browser asks for, the dearest first, as BCP 47 tags.
 */
export const startLanguage = (asked: readonly string[]): Language =>
  asked.flatMap((tag) => LANGUAGES.filter((language) => tag.startsWith(language)))[0] ?? 'en';

const KEY = 'preferences';

export interface Preferences {
  readonly current: ReadonlySignal<Wishes>;
  /** Reads what was kept. To be awaited before the first screen, which must not flash. */
  load(): Promise<void>;
  change(wish: Partial<Wishes>): void;
}

/** Each wish of the base, as it was kept if that is one of its kind. */
function likeBase<Wish extends object>(kept: unknown, base: Wish): Wish {
  const found = Object(kept) as Readonly<Record<string, unknown>>;
  const wishes = Object.entries(base).map(([name, wish]) => [
    name,
    typeof found[name] === typeof wish ? found[name] : wish,
  ]);
  return Object.fromEntries(wishes) as Wish;
}

/** What is kept may come from another version: each wish is taken by itself, or left. */
function readWishes(kept: unknown, base: Wishes): Wishes {
  const wish = likeBase(kept, base);
  return {
    ...wish,
    theme: wish.theme === 'day' || wish.theme === 'night' ? wish.theme : base.theme,
    language: LANGUAGES.find((language) => language === wish.language) ?? base.language,
    cues: likeBase(wish.cues, base.cues),
  };
}

/**
 * @param startsDark the device asks for dark screens; decides the theme until the user does.
 * @param startsIn as `startLanguage` finds it.
 */
export function createPreferences({
  store,
  saving,
  startsDark,
  startsIn,
}: {
  readonly store: Store;
  readonly saving: Saving;
  readonly startsDark: boolean;
  readonly startsIn: Language;
}): Preferences {
  const current = signal<Wishes>({
    theme: startsDark ? 'night' : 'day',
    bySun: false,
    dim: false,
    language: startsIn,
    welcomed: false,
    // The voice is for who wants it: at night it carries far.
    cues: { sound: true, vibration: true, speech: false, voice: '', silent: false },
    keys: true,
    headset: false,
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
