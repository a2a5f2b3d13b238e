import type { Deed, Deleted } from '../../app/undo.ts';
import type { Alike } from './alike.ts';
import type { parts as en } from './parts.en.ts';

/** A thing without a name of its own. */
const THINGS: Readonly<Record<Deleted['thing'], string>> = {
  body: 'Ein Gehäuse',
  lens: 'Ein Objektiv',
  rig: 'Ein Gespann',
  offset: 'Ein Versatz',
  heat: 'Ein Wert der Erwärmung',
  plan: 'Eine Aufnahmeliste',
  set: 'Ein Satz',
  site: 'Ein Standort',
  outing: 'Eine Tour',
};

/** Words of the shared pieces. */
export const parts: Alike<typeof en> = {
  unknown: 'unbekannt',
  invented: 'Erfunden',
  close: 'Schließen',
  dismiss: 'Ausblenden',
  undo: 'Rückgängig',
  chosen: 'gewählt',
  asStated: 'Standardwert',
  deed(deed: Deed): string {
    if (deed.act === 'order-replaced') return 'Die Reihenfolge der Aufnahmen wurde ersetzt.';
    const { thing, name } = deed;
    if (name === '') return `${THINGS[thing]} wurde gelöscht.`;
    return `${thing === 'rig' ? `Gespann ${name}` : name} wurde gelöscht.`;
  },
  rig: (letter: string) => `Gespann ${letter}`,
  clickDown: (dial: string) => `${dial}: eine Raste herunter`,
  clickUp: (dial: string) => `${dial}: eine Raste herauf`,
  moveUp: (name: string) => `${name} nach oben`,
  moveDown: (name: string) => `${name} nach unten`,
  drag: (name: string) => `${name} ziehen`,
  movedTo: (name: string, place: number, of: number) =>
    `${name} steht jetzt auf Platz ${place} von ${of}.`,
  give: { share: 'Teilen', download: 'Speichern', text: 'Als Text zeigen' },
  fileReady: (name: string) => `${name} ist bereit.`,
  noWayOut:
    'Dieser Browser gibt keine Datei heraus. Nichts ist verloren. Die App zum Speichern in einem anderen Browser öffnen.',
  fileText: 'Die Datei als Text. Alles auswählen und kopieren.',
  given: {
    shared: 'Weitergegeben.',
    closed: 'Nicht weitergegeben. Die Datei ist noch hier.',
    downloaded: 'An den Browser übergeben. Sie liegt bei den Downloads.',
    text: '',
    refused:
      'Das System hat sie nicht angenommen. Die Datei ist noch hier. Den anderen Weg versuchen.',
  },
  notANumber: 'Das ist keine Zahl. Ziffern und ein Komma oder Punkt, wie in 43,8.',
  needed: 'Das wird gebraucht. Ausfüllen, dann geht es weiter.',
};
