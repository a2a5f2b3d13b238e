import type { Alike } from './alike.ts';
import type { rescue as en } from './rescue.en.ts';

/** Words of getting out what the app cannot open. */
export const rescue: Alike<typeof en> = {
  act: 'Gespeichertes als Datei holen',
  empty: 'Im Speicher ist nichts, das sich herausholen ließe.',
  failed:
    'Der Speicher gibt jetzt nichts heraus. Die App und ihre Daten nicht löschen. Das Telefon neu starten, dann noch einmal versuchen.',
};
