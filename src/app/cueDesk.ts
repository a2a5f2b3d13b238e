import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { CueChannel, CueChoices, Cues } from '../device/cues.ts';
import type { SoundState } from '../device/sound.ts';
import type { Voice } from '../device/speech.ts';
import type { Preferences } from './preferences.ts';

/** How the moments of an exposure are told: what is chosen, what the device can do, a trial. */
export interface CueDesk {
  readonly choices: ReadonlySignal<CueChoices>;
  choose(some: Partial<CueChoices>): void;
  /** What the loudspeaker would do now. */
  readonly sound: ReadonlySignal<SoundState>;
  readonly vibrates: boolean;
  /** The voices of the language in use that need no network; a screen that asks is drawn anew when more are found. */
  voices(): readonly Voice[];
  /** Call it in each tap: browsers let sound out only after one. */
  unlock(): void;
  /** Lets one be heard or felt now, whatever is chosen. Call it in a tap. */
  try(channel: CueChannel, spoken: string): Promise<'done' | 'needs-tap' | 'unsupported'>;
}

export function createCueDesk(cues: Cues, preferences: Preferences): CueDesk {
  const sound = signal(cues.sound);
  const found = signal(0);
  // By itself, so that a change of the theme does not lay the tones anew.
  const choices = computed(() => preferences.current.value.cues);
  effect(() => cues.choose(choices.value));
  cues.onSound((state) => {
    sound.value = state;
  });
  cues.onVoices(() => {
    found.value += 1;
  });
  return {
    choices,
    choose: (some) => preferences.change({ cues: { ...choices.peek(), ...some } }),
    sound,
    vibrates: cues.vibrates,
    voices: () => (found.value >= 0 ? cues.voices : []),
    unlock: cues.unlock,
    try: cues.try,
  };
}
