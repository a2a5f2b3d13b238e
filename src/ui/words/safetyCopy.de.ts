import type { Alike } from './alike.ts';
import type { safetyCopy as en } from './safetyCopy.en.ts';

/** Words of the copies that leave after each set, and of a log that has not left. */
export const safetyCopy: Alike<typeof en> = {
  copy: 'Sicherheitskopie',
  toFile: (name: string) => `Nach jedem Satz kommt das Journal in ${name}.`,
  fileHint:
    'Nach jedem Satz wird das Journal in eine gewählte Datei geschrieben: auf eine andere Karte oder in einen Ordner, der anderswohin kopiert wird.',
  choose: 'Datei wählen',
  chooseOther: 'Andere Datei wählen',
  offerHint:
    'Dieser Browser schreibt keine Datei von selbst. Er kann das Journal nach jedem Satz anbieten: Ein Tippen gibt es weiter. Das Fenster des Systems ist hell.',
  offer: 'Nach jedem Satz eine Kopie anbieten',
  copied: (time: string) => `Sicherheitskopie geschrieben ${time}.`,
  due: 'Ein Satz ist durch. Eine Kopie des Journals liegt bereit.',
  handOn: 'Kopie weitergeben',
  notNow: 'Nicht jetzt',
  failed:
    'Die Sicherheitskopie wurde nicht geschrieben. Das Logbuch auf diesem Telefon ist sicher. Die Datei noch einmal wählen oder das Journal am Ende herausholen.',
  asks: 'Die Sicherheitskopie ruht, seit die App neu geladen wurde. Das Logbuch auf diesem Telefon ist sicher.',
  goOn: 'Mit der Kopie fortfahren',

  notLeft: (name: string) =>
    `${name} ist beendet und hat dieses Telefon noch nicht verlassen. Geht es verloren, ist auch die Tour verloren.`,
};
