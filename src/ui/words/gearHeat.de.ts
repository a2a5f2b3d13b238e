import type { Alike } from './alike.ts';
import type { gearHeat as en } from './gearHeat.en.ts';

/** Words of how a body warms. Figures come in as they are written. */
export const gearHeat: Alike<typeof en> = {
  title: 'Wie es warm wird',
  nothingMeasured: 'Niemand hat es gemessen',
  someMeasured: (measured: number, of: number) => `${measured} von ${of} selbst bekannt`,
  lead: 'Ein Sensor wird beim Belichten warm, und mit ihm wächst sein Dunkelstrom. Was an diesem Gehäuse niemand gemessen hat, kommt aus angegebenen Bereichen, und jede Vorhersage trägt sie mit.',
  figures: {
    tau: 'Zeitkonstante',
    doubling: 'Verdopplung',
    exposing: 'Plateau, belichtend',
    liveView: 'Plateau, Live-View',
    idle: 'Plateau, wartend',
  },
  means: {
    tau: 'Die Zeit, in der der Sensor 63 % des Weges zu einer neuen Temperatur geht.',
    doubling: 'So viele K wärmer, und der Dunkelstrom ist doppelt so groß.',
    exposing: 'Wie weit er über der Luft landet, wenn lange Belichtungen ohne Lücke folgen.',
    liveView: 'Wie weit er über der Luft landet, in Live-View oder mit hellem Bildschirm.',
    idle: 'Wie weit er über der Luft landet, eingeschaltet mit dunklem Bildschirm.',
  },
  units: { tau: 's', doubling: 'K', exposing: 'K', liveView: 'K', idle: 'K' },
  inUse: (usual: string, least: string, most: string, unit: string) =>
    `${usual} ${unit}, ${least} bis ${most} ${unit}`,
  statedFrom: (source: string) => `Angegebener Bereich: ${source}.`,
  ownFrom: (source: string) => `Eigener Wert, aus: ${source}.`,

  usual: 'Wert',
  usualHint: 'Damit wird vorhergesagt.',
  least: 'Mindestens',
  most: 'Höchstens',
  source: 'Quelle',
  sourceHint: 'Wer es gemessen hat, wie und wann.',
  save: 'Wert speichern',
  figuresFirst:
    'Nicht gespeichert: Wert, mindestens und höchstens werden alle drei gebraucht. Nichts ist verloren. Eingeben, dann speichern.',
  sourceFirst:
    'Nicht gespeichert: Die Quelle fehlt. Nichts ist verloren. Angeben, woher der Wert kommt.',
  notSaved: (why: string) => `Nicht gespeichert, und nichts ist verloren. ${why}`,
  forget: 'Zurück zum angegebenen Bereich',

  fit: 'Erste Werte aus einer Dunkelreihe',
  fitIs:
    'Drei Wärmewerte in gleichen Schritten lückenlosen Belichtens ergeben eine erste Zeitkonstante und ein Plateau. Eine Anpassung über alle Aufnahmen kommt später.',
  given: 'Was vorliegt',
  kinds: [
    { value: 'levels', label: 'Dunkelpegel' },
    { value: 'heats', label: 'Wärme in Verdopplungen' },
  ],
  levelsAre:
    'Ein Dunkelpegel: die Varianz zweier Aufnahmen hintereinander, weniger die der zwei kürzesten. Beliebige Einheit, für alle drei dieselbe. Nicht der Mittelwert: Die meisten Gehäuse verschieben ihn.',
  heatsAre:
    'Eine Wärme: um wie viele Verdopplungen der Dunkelstrom über dem ausgeruhten Gehäuse liegt.',
  three: ['Erster', 'Zweiter', 'Dritter'],
  step: 'Schritt von einem zum nächsten',
  stepHint: 'Die halbe Zeitkonstante oder mehr: 480 s ist jede vierte Aufnahme von 120 s.',
  after: 'Der erste so lange nach dem Beginn',
  afterHint:
    'Von der ersten langen Aufnahme bis zur Mitte des Pegels: 120 s bei den ersten zweien von 120 s.',
  fitNeeds: 'Alle drei und den Schritt eingeben.',
  tauFound: 'Zeitkonstante',
  plateauFound: 'Plateau, belichtend',
  found: (usual: string, unit: string) => `${usual} ${unit}`,
  foundRange: (least: string, most: string, unit: string) => `${least} bis ${most} ${unit}`,
  withError: (error: string) =>
    `Bereiche für Wärmewerte, die um ${error} Verdopplungen daneben liegen: Zwei von drei Malen liegt die Wahrheit darin.`,
  byDoubling: (doublings: string, doubling: string) =>
    `${doublings} Verdopplungen, in K gerechnet mit der Verdopplung dieses Gehäuses von ${doubling} K.`,
  take: 'Beide übernehmen',
  date: 'Datum der Reihe',
  sourceOf: (date: string) => `Dunkelreihe vom ${date}, erste Werte`,
  notFitted: {
    'level-not-positive': 'Ein Dunkelpegel ist größer als null. Die drei berichtigen.',
    'not-rising':
      'Diese steigen nicht: Erste Werte kommen aus dem Aufwärmen. Drei der langen Aufnahmen nehmen.',
    'not-settling':
      'Diese pendeln sich nicht ein: Der zweite Anstieg muss kleiner sein als der erste. Längere Schritte nehmen oder neu messen.',
    'step-too-short':
      'Die Schritte sind kürzer als die halbe Zeitkonstante, zu kurz dafür. Drei mit mehr Abstand nehmen.',
    'rise-within-error':
      'Der Anstieg geht im Fehler der Pegel unter. Höhere ISO, längere oder mehr Aufnahmen nehmen.',
  },
};
