import type { Alike } from './alike.ts';
import type { cues as en } from './cues.en.ts';

/** Words of the moments that are told without the screen, and of the screen that stays on. */
export const cues: Alike<typeof en> = {
  title: 'Signale',
  screen: {
    held: 'Bildschirm bleibt an',
    'not-held': 'Bildschirm kann ausgehen',
    unsupported: 'Bildschirm kann ausgehen',
  },
  screenAtSetUp: {
    held: null,
    'not-held': 'Der Bildschirm kann ausgehen. Jedes Tippen bittet, ihn anzulassen.',
    unsupported:
      'Dieser Browser kann den Bildschirm nicht anlassen. Die automatische Sperre auf „nie“ stellen.',
  },
  silent: 'stumm',
  soundNeedsTap: 'für Ton einmal tippen',
  beSilent: 'Stumm schalten',
  endSilence: 'Stumm beenden',
  choose: 'Signale wählen und proben',
  keyHint: 'Eingabe, Leertaste, Bild ab oder → drückt diese Taste.',
};
