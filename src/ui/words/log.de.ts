import type { Left } from '../../app/files.ts';
import type { Alike } from './alike.ts';
import type { log as en } from './log.en.ts';
import { storageWhy } from './storageWhy.de.ts';

const count = (number: number, one: string, several: string): string =>
  `${number} ${number === 1 ? one : several}`;

const LEFT: Record<Left['what'], string> = {
  table: 'als Tabelle',
  journal: 'als Journal',
  backup: 'in einer Sicherung',
};

/** Words of the Log place as far as the field needs them. */
export const log: Alike<typeof en> = {
  title: 'Logbuch',
  chooseHint: 'Eine Tour wählen, um ihre Aufnahmen zu sehen.',
  openHint: 'Eine Aufnahme, die Bilanz oder die Ausgabe wählen.',
  none: 'Noch keine Tour. Eine aus einem Plan beginnen: Dann steht hier jede Aufnahme, mit dem, was geplant und was eingestellt war.',
  toPlan: 'Zum Plan',
  looking: 'Das Logbuch wird durchgesehen.',
  readingRest: 'Der Rest des Logbuchs wird gelesen.',
  unread: (why: string) => `Das Logbuch ließ sich nicht lesen. Nichts ist verloren. ${why}`,
  why: storageWhy,
  tryAgain: 'Noch einmal',
  missing: 'Diese Tour ist nicht auf diesem Telefon. Vielleicht ist sie in einer Sicherung.',
  underWay: 'nicht beendet',
  frames: (made: number) => count(made, 'Aufnahme', 'Aufnahmen'),
  notLeft: 'noch nicht ausgegeben',
  begun: (date: string, from: string) => `${date}, ${from}`,
  span: (date: string, from: string, to: string) => `${date}, ${from} bis ${to}`,

  resume: 'Diese Tour fortsetzen',
  notResumed: {
    'another-runs': 'Eine andere Tour läuft. Erst diese beenden; beide sind sicher.',
    'not-saved': 'Etwas hier ist noch nicht gespeichert. Erst speichern, dann fortsetzen.',
  },
  readOnly: 'Diese Tour ist in einem anderen Fenster offen. Hier lässt sie sich nur lesen.',
  remind: 'Hat dieses Telefon noch nicht verlassen. Geht es verloren, ist auch sie verloren.',

  ledger: 'Bilanz',
  ledgerInShort: (pairs: number, sets: number) =>
    `${count(pairs, 'Paar', 'Paare')} in ${count(sets, 'Satz', 'Sätzen')}`,
  export: 'Ausgabe',
  lastLeft: (date: string, time: string, what: Left['what']) =>
    `Zuletzt ausgegeben ${date}, ${time}, ${LEFT[what]}`,
  neverLeft: 'Hat dieses Telefon noch nicht verlassen',

  filter: 'Zeigen',
  filterAll: 'alles',
  shown: (wanted: number, all: number) => `${wanted} von ${count(all, 'Zeile', 'Zeilen')}`,
  nothingShown: 'Keine Zeile passt. Alles zeigen, um den Rest zu sehen.',
  showAll: 'Alles zeigen',
  framesTitle: 'Aufnahmen',
  noFrames: 'Noch keine Aufnahme.',
  noIntent: 'ohne Absicht',
  setAt: (place: number, intent: string) => `${place}. ${intent}`,

  fromTo: (from: string, to: string) => `${from} bis ${to}`,
  open: {
    steady: (time: string, within: string) => `offen ${time} ±${within} s`,
    wall: (time: string) => `offen ${time}, unsicher`,
    correction: (time: string) => `offen ${time}`,
    unknown: 'Öffnungszeit unbekannt',
  },
  bulb: (time: string) => `Bulb ${time}`,
  notRecorded: 'noch nicht eingetragen',
  capped: 'Dunkelaufnahme',
  planned: (mark: string) => `geplant ${mark}`,
  retake: (attempt: number) => `neuer Versuch ${attempt - 1}`,
  discarded: 'verworfen',
  notCounting: 'zählt nicht',
  corrected: 'berichtigt',
  quoted: (note: string) => `„${note}“`,
  leftOut: {
    skipped: (frames: number) => `${count(frames, 'Aufnahme', 'Aufnahmen')} übersprungen`,
    'set-dropped': (frames: number) =>
      `Satz gestrichen: ${count(frames, 'Aufnahme', 'Aufnahmen')} nicht gemacht`,
  },
  rematched: (set: string) => `${set} folgte dem Licht:`,
  restSkipped: (left: string) => `Pause übersprungen, ${left} blieben`,
  battery: 'Akku gewechselt',
  switchedOff: 'Ausgeschaltet',
  reading: 'Lichtmessung',
  ev: (figure: string) => `EV ${figure} bei ISO 100`,
  cameOut: (thirds: number, stops: string) =>
    thirds === 0 ? 'wurde richtig' : `wurde ${stops} Stufen zu ${thirds > 0 ? 'hell' : 'dunkel'}`,

  exportHint:
    'Beim Ausgeben wird hier nichts gelöscht. Erst wird eine Datei bereitgestellt, dann weitergegeben.',
  table: 'Tabelle',
  tableIs:
    'CSV: eine Zeile je Aufnahme, Einstellungen unter ihren Exif-Namen. Für eine Tabellenkalkulation.',
  makeTable: 'Tabelle bereitstellen',
  journal: 'Journal',
  journalIs:
    'JSON: alles, was festgehalten wurde. Diese App liest es zurück; andere Programme auch.',
  makeJournal: 'Journal bereitstellen',
  notReady: (why: string) => `Die Datei wurde nicht gemacht. Nichts ist verloren. ${why}`,

  pictures: 'Bilder',
  picturesInShort: (given, made) =>
    given === 0
      ? 'Zu jeder Aufnahme ihre Datei finden'
      : `${given} von ${made} Aufnahmen mit Datei`,
  beside: 'Logbuch neben Dateien',
  besideInShort: 'Wo sie Verschiedenes sagen',

  files: 'Sichern und zurücklesen',
  filesInShort: 'Alles in einer Datei, und Dateien zurücklesen',
};
