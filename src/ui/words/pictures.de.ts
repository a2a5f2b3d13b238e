import type { Alike } from './alike.ts';
import type { pictures as en } from './pictures.en.ts';

const count = (number: number, one: string, several: string): string =>
  `${number} ${number === 1 ? one : several}`;

/** Aufnahmen und ihre Bilder. */
export const pictures: Alike<typeof en> = {
  hint: 'Gelesen wird nur, was die Datei eines Bildes über sich sagt. Bilder bleiben, wo und wie sie sind, und nichts verlässt dieses Gerät.',
  choose: 'Bilder wählen',
  chooseFolder: 'Ordner wählen',
  drop: 'Sie können auch hierher gezogen werden.',
  reading: (done, of) => `${done} von ${of} gelesen`,
  progress: 'Gelesene Dateien',
  cancel: 'Abbrechen',
  failed:
    'Die Bilder konnten nicht gelesen werden: Ein Teil der App fehlt. Nichts wurde geändert. Die App mit Netz neu laden.',
  cancelled: (done) => `Abgebrochen: Nur die ersten ${done} sind zugeordnet.`,
  noneRead:
    'Keine dieser Dateien sagt etwas über sich. Nichts wurde geändert. Bitte die Bilder wählen, wie das Gehäuse sie schrieb.',

  outcome: 'Was gefunden wurde',
  matched: (frames, of) => `${frames} von ${count(of, 'Aufnahme', 'Aufnahmen')} mit Datei`,
  inDoubt: (asks) => count(asks, 'Frage zu entscheiden', 'Fragen zu entscheiden'),
  without: (frames) => `${count(frames, 'Aufnahme', 'Aufnahmen')} ohne Datei`,
  left: (files) => `${count(files, 'Datei', 'Dateien')} ohne Aufnahme`,
  unread: (files) => `${count(files, 'Datei', 'Dateien')} ohne Exif`,

  clocks: 'Uhren der Gehäuse',
  ahead: (amount, width) => `geht ${amount} vor gegen dieses Telefon, ±${width}`,
  behind: (amount, width) => `geht ${amount} nach gegen dieses Telefon, ±${width}`,
  gains: (amount) => `gewinnt ${amount} in der Stunde`,
  loses: (amount) => `verliert ${amount} in der Stunde`,
  from: {
    'clock-frame': 'aus dem Uhrbild',
    sequence: 'aus der Folge der Aufnahmen',
    'by-hand': 'von Hand entschieden',
  },

  decide: 'Zu entscheiden',
  whichRig: (group, files) =>
    `Welches Gespann machte ${files === 1 ? 'die Datei' : `die ${files} Dateien`} von ${group}?`,
  noRig: 'Keines dieser Tour',
  whichClock: (rig) => `Wie ging die Uhr von ${rig}? Mehr als eine Antwort passt.`,
  whichFile: 'Welche Datei ist diese Aufnahme?',
  noFile: 'Keine der Dateien',
  unnamed: 'einem Gehäuse, das seinen Namen nicht sagt',

  accept: (files) => `${count(files, 'Datei', 'Dateien')} annehmen`,
  acceptClocks: 'Entschiedenes annehmen',
  accepted: 'Angenommen. Rückgängig nimmt es zurück.',
  refused: 'Das kam nicht ins Logbuch. Nichts wurde geändert. Bitte noch einmal versuchen.',

  framesTitle: 'Aufnahmen und Dateien',
  frame: (place) => `Aufnahme ${place}`,
  sure: 'gefunden',
  said: 'von Hand gesagt',
  doubtful: 'fraglich',
  noneYet: 'keine Datei',
  changeTitle: (place) => `Datei der Aufnahme ${place}`,
  changeHint: 'Die zeitlich nächsten Dateien und die fraglichen.',

  leftTitle: 'Dateien ohne Aufnahme',
  leftKind: {
    'clock-frame': 'ein Uhrbild',
    copy: 'dasselbe Bild wie eine andere Datei',
    retake: 'ein neuer Versuch, der nicht im Logbuch steht',
    bracket: 'Teil einer Belichtungsreihe neben einer Aufnahme',
    'extra-shot': 'ein Zusatzbild dieses Abends',
    'other-evening': 'von einem anderen Abend',
    unknown: 'sagt zu wenig, um ihren Platz zu finden',
  },
  unreadTitle: 'Dateien ohne Exif',
  why: {
    'no-exif': 'enthält kein lesbares Exif',
    gone: 'ist fort: Vielleicht wurde die Karte herausgenommen',
    'too-large': 'ist zu groß für ein Bild',
  },

  file: 'Datei',
  fileOf: (name) => `Datei ${name}`,
  noFileSaid: 'Sie hat keine Datei.',

  besideHint:
    'Wo eine Datei etwas anderes sagt als das Logbuch. Was übernommen wird, ist eine Korrektur; was zuerst im Logbuch stand, bleibt lesbar.',
  besideNone: 'Logbuch und Dateien sagen dasselbe, soweit Dateien es sagen.',
  besideNoFiles: 'Noch hat keine Aufnahme eine Datei. Zuerst die Bilder wählen.',
  field: { time: 'Zeit', fNumber: 'Blende', iso: 'ISO', fileNumber: 'Dateinummer' },
  logged: (value) => `Logbuch ${value}`,
  written: (value) => `Datei ${value}`,
  nothingLogged: 'nichts im Logbuch',
  brighter: (stops) => `nach der Datei ${stops} Stufen heller`,
  darker: (stops) => `nach der Datei ${stops} Stufen dunkler`,
  take: (value) => `${value} übernehmen`,
  cannotTake: 'Dieses Gehäuse hat keine solche Stellung: die Aufnahme von Hand korrigieren.',
  takeFrame: 'Alles aus der Datei übernehmen',
  takeAll: (differ) => `Alle ${differ} übernehmen`,
  taken: 'Übernommen. Die Bilanz rechnet jetzt damit.',
};
