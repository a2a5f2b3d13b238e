import type { Alike } from './alike.ts';
import type { shell as en } from './shell.en.ts';

/** Words of the frame around the places. */
export const shell: Alike<typeof en> = {
  appName: 'Evenfall',
  places: 'Orte',
  partMissing:
    'Dieser Teil der App ist nicht auf dem Gerät. Die Daten sind sicher. Die App einmal mit Netz öffnen, dann noch einmal versuchen.',
  place: { gear: 'Technik', light: 'Licht', plan: 'Plan', outing: 'Tour', log: 'Logbuch' },
  night: 'Nacht',
  back: 'Zurück',

  notSaved: {
    full: 'Noch nicht gespeichert: Das Telefon ist voll. Die Eingaben bleiben auf diesem Bildschirm. Platz schaffen, dann erneut speichern.',
    blocked:
      'Noch nicht gespeichert: Ein anderes Fenster der App ist im Weg. Die Eingaben bleiben auf diesem Bildschirm. Das andere Fenster schließen, dann erneut speichern.',
    newer:
      'Nicht gespeichert: Eine neuere Version der App ist in einem anderen Fenster offen. Früher Gespeichertes ist sicher. Dieses Fenster neu laden.',
    closed:
      'Noch nicht gespeichert: Der Browser hat den Speicher geschlossen. Die Eingaben bleiben auf diesem Bildschirm. Erneut speichern.',
    timeout:
      'Noch nicht gespeichert: Der Speicher antwortet nicht. Die Eingaben bleiben auf diesem Bildschirm. Erneut speichern.',
    refused:
      'Nicht gespeichert: Der Speicher hat es abgelehnt. Früher Gespeichertes ist sicher. Die App neu laden und noch einmal eingeben.',
  },
  saveAgain: 'Erneut speichern',

  cannotOpen: {
    full: 'Die App kann ihren Speicher nicht öffnen: Das Telefon ist voll. Gespeichertes ist sicher. Platz schaffen, dann noch einmal versuchen.',
    blocked:
      'Die App kann ihren Speicher nicht öffnen: Ein anderes Fenster hält ihn fest. Gespeichertes ist sicher. Das andere Fenster schließen, dann noch einmal versuchen.',
    newer:
      'Den Speicher hat eine neuere Version der App geschrieben; diese lässt ihn, wie er ist. Gespeichertes ist sicher. Die neueste Version öffnen oder alles als Datei herausholen.',
    closed:
      'Die App kann ihren Speicher nicht öffnen. Gespeichertes ist sicher. Andere Fenster der App schließen und das private Surfen beenden, dann noch einmal versuchen.',
    timeout: 'Der Speicher antwortet nicht. Gespeichertes ist sicher. Noch einmal versuchen.',
    refused:
      'Die App kann ihren Speicher nicht lesen. Gespeichertes ist sicher. Noch einmal versuchen.',
  },
  cannotStart:
    'Die App kann nicht starten; der Fehler liegt bei ihr. Gespeichertes ist sicher. Noch einmal versuchen; bleibt es dabei, die neueste Version mit Netz öffnen.',
  openNewest: 'Neueste Version öffnen',
  tryAgain: 'Noch einmal',
};
