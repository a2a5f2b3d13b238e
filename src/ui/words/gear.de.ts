import type { Bulb, DarkFrame } from '../../gear/body.ts';
import type { Step } from '../../science/dials.ts';
import type { Alike } from './alike.ts';
import type { gear as en } from './gear.en.ts';
import { gearHeat } from './gearHeat.de.ts';

const count = (number: number, one: string, several: string): string =>
  `${number} ${number === 1 ? one : several}`;

/** Words of the Gear place. */
export const gear: Alike<typeof en> = {
  heat: gearHeat,
  title: 'Technik',
  chooseHint: 'Ein Gehäuse, Objektiv oder Gespann wählen, um es hier zu sehen.',
  gone: 'Das gehört nicht mehr zur Technik.',
  toGear: 'Zurück zur ganzen Technik',

  bodies: 'Gehäuse',
  lenses: 'Objektive',
  rigs: 'Gespanne',
  noBody: 'Noch kein Gehäuse. Das erste anlegen: Name, Sensor und Pixel genügen für den Anfang.',
  noLens: 'Noch kein Objektiv. Eines mit Brennweite und Blenden anlegen.',
  noRig:
    'Noch kein Gespann. Ein Gespann ist ein Gehäuse mit Objektiv, wie es auf dem Stativ steht.',
  rigNeedsBoth: 'Ein Gespann braucht ein Gehäuse und ein Objektiv. Erst beide anlegen.',
  addBody: 'Gehäuse anlegen',
  addLens: 'Objektiv anlegen',
  addRig: 'Gespann zusammenstellen',
  allInvented:
    'All das ist erfunden, zum Üben. Für einen eigenen Vergleich ein eigenes Gehäuse anlegen.',

  change: 'Ändern',
  called: 'Wie es heißt',
  file: 'Technikdatei',
  fileIs: 'Gibt die eigene Technik an ein anderes Telefon. Erfundene Technik bleibt hier.',
  toFile: 'Technik in eine Datei',
  fromFile: 'Technik aus einer Datei',
  taken: ({ bodies, lenses, rigs, copies, deletedHere }) => {
    const came =
      bodies + lenses + rigs === 0
        ? 'Nichts Neues in dieser Datei.'
        : `Übernommen: ${bodies} Gehäuse, ${count(lenses, 'Objektiv', 'Objektive')}, ${count(rigs, 'Gespann', 'Gespanne')}.`;
    const asCopies = copies === 0 ? '' : ` Davon als Kopie neben dem Eigenen: ${copies}.`;
    const away =
      deletedHere === 0 ? '' : ` ${deletedHere} blieben draußen, weil sie hier gelöscht wurden.`;
    return came + asCopies + away;
  },
  copy: 'Kopieren',
  delete: 'Löschen',
  copyOf: (name: string) => `${name}, Kopie`,
  save: 'Speichern',

  newBody: 'Neues Gehäuse',
  saveBody: 'Gehäuse speichern',
  defaultsFollow:
    'Räder, Bulb, Selbstauslöser und das Übrige beginnen so, wie es die meisten Gehäuse haben. Alles steht auf dem nächsten Bildschirm und lässt sich dort ändern.',
  name: 'Name',
  bodyNameHint: 'Wie es draußen heißen soll.',
  letter: 'Buchstabe seines Gespanns',
  sensor: 'Sensor',
  changeSensor: 'Sensor und Pixel ändern',
  sensorSize: 'Sensor, Breite × Höhe',
  size: (width: string, height: string) => `${width} × ${height} mm`,
  pixels: (wide: string, high: string) => `${wide} × ${high} Pixel`,
  ownSize: 'Andere Größe',
  width: 'Breite',
  height: 'Höhe',
  pixelsWide: 'Pixel breit',
  pixelsHigh: 'Pixel hoch',
  mm: 'mm',
  nameFirst: 'Nicht gespeichert: Der Name fehlt. Nichts ist verloren. Schreiben, dann speichern.',
  sizeFirst:
    'Nicht gespeichert: Der Sensor fehlt. Nichts ist verloren. Seine Größe wählen, dann speichern.',
  pixelsFirst:
    'Nicht gespeichert: Die Pixel fehlen. Nichts ist verloren. Beide Zahlen eingeben, dann speichern.',

  facts: 'Was daraus folgt',
  diagonal: 'Diagonale',
  pitch: 'Pixelabstand',
  crop: 'Formatfaktor',
  cropTo: (name: string) => `nach Diagonale, zu ${name}`,
  areaLight: 'Licht nach Fläche',
  areaTo: (name: string) => `Stufen, ganzer Sensor, zu ${name}`,
  micrometres: (figure: string) => `${figure} µm`,
  millimetres: (figure: string) => `${figure} mm`,

  stated: 'Für dieses Gehäuse angegeben',
  iso: 'ISO-Rad',
  times: 'Zeitenrad',
  from: (lowest: string, highest: string, step: Step) => `${lowest} bis ${highest}, ${STEPS[step]}`,
  missingCount: (count: number) => (count === 0 ? '' : `, ${count} fehlen`),
  lowest: 'Niedrigste',
  highest: 'Höchste',
  extendedLowest: 'Nach unten erweitert bis',
  extendedHighest: 'Nach oben erweitert bis',
  extendedHint: 'Erweiterte Stellungen werden gezeigt, beim Abgleich nie gewählt.',
  none: 'keine',
  step: 'Stufung',
  steps: [
    { value: 'third', label: 'Drittelstufen' },
    { value: 'half', label: 'Halbe Stufen' },
    { value: 'whole', label: 'Ganze Stufen' },
  ],
  stepBelow1s: 'Stufung unter 1 s',
  stepFrom1s: 'Stufung ab 1 s',
  shortest: 'Kürzeste',
  longest: 'Längste vom Rad',
  longestHint: 'Wie das Rad sie zeigt, in Sekunden.',
  seconds: 's',
  beyond30s: 'Über 30 s zeigt das Rad',
  beyond: [
    { value: 'minutes', label: '60, 120, 240 s' },
    { value: 'doubling', label: '64, 128, 256 s' },
  ],
  longMarks: 'Bei 15 s und 30 s läuft der Verschluss',
  longMarksHint:
    'Den Bildschirm neben einer Uhr filmen, um es zu erfahren. Bis dahin steht beides da: 0,09 Stufen auseinander.',
  longMark: [
    { value: 'exact', label: '16 s und 32 s' },
    { value: 'as-marked', label: '15 s und 30 s' },
    { value: 'unknown', label: 'Nicht bekannt' },
  ],
  missing: 'Stellungen, die fehlen',
  missingHint: 'Den Haken bei einer Stellung wegnehmen, die das Rad nicht hat.',
  positions: (have: number, lack: number) =>
    lack === 0 ? `${have} Stellungen, keine fehlt` : `${have} Stellungen, ${lack} fehlen`,

  bulb: 'Bulb',
  bulbKinds: [
    { value: 'none', label: 'Kein Bulb' },
    { value: 'press-press', label: 'T-Funktion: drücken öffnet, drücken schließt' },
    { value: 'hold', label: 'Offen, solange gedrückt' },
  ],
  longestBulb: 'Längste',
  bulbUpTo: (kind: Bulb['kind'], longest: string) => {
    if (kind === 'none') return 'Kein Bulb';
    return `${kind === 'hold' ? 'Offen, solange gedrückt' : 'T-Funktion'}, bis ${longest}`;
  },
  minutes: 'min',

  selfTimer: 'Selbstauslöser',
  selfTimerUsed: 'Hier benutzt',
  byCable: 'Keiner: Kabel oder Funk',
  selfTimerChoices: 'Zeiten, die das Gehäuse hat',
  addTime: 'Zeit anfügen',
  removeTime: (time: string) => `${time} entfernen`,
  survives: 'Bleibt nach dem Ausschalten',
  selfTimerStated: (used: string | null, survives: boolean) =>
    `${used ?? 'Kabel oder Funk'}, ${survives ? 'bleibt nach dem Ausschalten' : 'nach dem Ausschalten weg'}`,

  darkFrame: 'Dunkelbild der Kamera',
  darkFrameHint:
    'Eine zweite, geschlossene Aufnahme, so lang wie die erste, die das Gehäuse von selbst macht.',
  darkFrameKinds: [
    { value: 'never', label: 'Nie' },
    { value: 'from', label: 'Ab einer Zeit' },
    { value: 'always', label: 'Immer' },
  ],
  darkFrameFrom: 'Ab',
  darkFrameStated: (kind: DarkFrame['kind'], from: string) =>
    ({ never: 'Nie', always: 'Nach jeder Aufnahme', from: `Ab ${from}` })[kind],

  bits: 'Bittiefe',
  bitsStated: (depth: number, loweredBy: string) =>
    loweredBy === '' ? `${depth} Bit` : `${depth} Bit, weniger durch ${loweredBy}`,
  depth: 'Raw-Datei',
  bit: 'Bit',
  loweredBy: 'Was sie senkt',
  loweredByHint: 'Zum Beispiel Serienbild oder lautloser Verschluss.',

  files: 'Dateinamen',
  filesStated: (first: string, last: string) => `${first} bis ${last}`,
  prefix: 'Vor der Nummer',
  digits: 'Stellen',
  rollsOver: 'Letzte Nummer, bevor es bei 1 weitergeht',
  sharedNumber: 'Raw und JPEG teilen die Nummer',

  newLens: 'Neues Objektiv',
  saveLens: 'Objektiv speichern',
  focal: 'Brennweite',
  fNumbers: 'Blenden',
  widest: 'Größte Öffnung',
  narrowest: 'Kleinste Öffnung',
  widestHint: 'Wie graviert, ohne f/.',
  focalFirst:
    'Nicht gespeichert: Die Brennweite fehlt. Nichts ist verloren. Eingeben, dann speichern.',
  fNumbersFirst:
    'Nicht gespeichert: Ein Ende der Blenden fehlt. Nichts ist verloren. Beide eingeben, dann speichern.',
  glass: 'Glas und Fokus',
  transmission: 'Licht, das das Glas nimmt',
  transmissionHint:
    'In Stufen, null oder darunter, wenn bekannt: -0,15 für einen Verlust von 0,15.',
  closest: 'Naheinstellgrenze',
  closestHint: 'Ab der Sensorebene, wenn bekannt.',
  focusSurvives: 'Fokus bleibt nach dem Ausschalten',
  focusSurvivesHint: 'Sonst fragt die Tour nach dem Ausschalten noch einmal nach dem Fokus.',
  stop: 'Stufen',

  lensLine: (focal: string, widest: string, narrowest: string) =>
    `${focal} mm, ${widest} bis ${narrowest}`,

  newRig: 'Neues Gespann',
  saveRig: 'Gespann speichern',
  body: 'Gehäuse',
  lens: 'Objektiv',
  rigTitle: (letter: string) => `Gespann ${letter}`,
  withLens: (lens: string) => `mit ${lens}`,
  rigBroken: 'Ein Teil dieses Gespanns fehlt',
  pairFirst: 'Nicht gespeichert: Ein Gehäuse und ein Objektiv wählen. Nichts ist verloren.',
  letterTaken: (letter: string) =>
    `Auch ein anderes Gespann heißt ${letter}. Eine Aufnahmeliste kann nicht beide nehmen.`,
  angleAcross: 'Bildwinkel, Breite',
  angleUp: 'Bildwinkel, Höhe',
  angle: (figure: string) => `${figure}°`,
  pupil: 'Größte Eintrittspupille',
  corresponds: (body: string) => `Entspricht an ${body}`,
  byDiagonal: 'nach Diagonale',

  offsets: 'Versatz',
  offsetsAre:
    'Was das Gespann wirklich gegen seine Angaben gibt, aus einem Durchlauf an einer gleichmäßig hellen Wand. Plus bildet heller ab.',
  noOffset: 'Versatz unbekannt. Er bleibt in der Bilanz unbekannt, bis er gefunden ist.',
  addOffset: 'Versatz anfügen',
  saveOffset: 'Versatz speichern',
  offsetAt: 'Bei',
  everyIso: 'jeder ISO',
  offsetStops: 'Stufen',
  offsetStopsHint: 'Plus, wenn das Gespann heller abbildet, als seine Angaben sagen.',
  date: 'Datum',
  dateHint: 'Jahr, Monat, Tag: 2027-02-12.',
  how: 'Wie er gefunden wurde',
  stopsFirst:
    'Nicht gespeichert: Die Stufen fehlen. Nichts ist verloren. Eingeben, dann speichern.',
  deleteOffset: (at: string) => `Versatz bei ${at} löschen`,
  offsetLine: (stops: string) => `${stops} Stufen`,
};

const STEPS: Readonly<Record<Step, string>> = {
  third: 'Drittelstufen',
  half: 'halbe Stufen',
  whole: 'ganze Stufen',
};
