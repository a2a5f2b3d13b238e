import type { Alike } from './alike.ts';
import type { safety as en } from './safety.en.ts';

/** Words of what keeps an outing from being lost: two windows, and a disk that refuses. */
export const safety: Alike<typeof en> = {
  handOver: {
    none: 'Diese Tour läuft in einem anderen Fenster. Hier lässt sie sich nur ansehen.',
    asking: 'Das andere Fenster wird gefragt. Es schreibt erst zu Ende.',
    taken: 'Dieses Fenster hat jetzt die Tour. Das andere sieht nur zu.',
    stolen:
      'Das andere Fenster hat nicht geantwortet, die Tour wurde ihm weggenommen. Es nicht mehr benutzen.',
    kept: 'Das andere Fenster behält die Tour: Dort ist etwas noch nicht gespeichert. Erst dort speichern.',
    unread:
      'Das Logbuch lässt sich jetzt nicht lesen, das andere Fenster behält die Tour. Noch einmal versuchen.',
    given: 'Ein anderes Fenster hat diese Tour übernommen. Hier lässt sie sich nur ansehen.',
  },
  takeOver: 'Hier übernehmen',
  apart:
    'Dieser Browser kann zwei Fenster nicht auseinanderhalten. Nur ein Fenster der App offen lassen.',

  inMemory: (taps: number) =>
    taps === 1 ? '1 Eintrag ist nur im Speicher.' : `${taps} Einträge sind nur im Speicher.`,
  asFile: 'Journal als Datei herausholen',
};
