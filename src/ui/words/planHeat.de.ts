import type { Alike } from './alike.ts';
import type { planHeat as en } from './planHeat.en.ts';

const count = (number: number, one: string, more: string): string =>
  `${number} ${number === 1 ? one : more}`;

/** Words of a plan's heat, rests and timeline. Figures, durations and clock times come in as they are written. */
export const planHeat: Alike<typeof en> = {
  title: 'Pausen und Wärme',
  unit: 'Stufen Dunkelstrom über dem ausgeruhten Gehäuse, nie zu Stufen Licht addiert.',
  figure: (usual: string, range: string) => `${usual} Stufen Dunkelstrom (${range})`,
  between: (least: string, most: string) => `${least} bis ${most}`,
  short: (usual: string, range: string) => `Wärme ${usual} (${range})`,

  chooseWay: 'Was gegen Wärme geschieht',
  ways: {
    limit: 'Pausen bis unter eine Grenze',
    'warm-up': 'Alle Gehäuse aufwärmen und im Takt bleiben',
    thumb: 'Pausen so lang wie die Belichtung',
    none: 'Keine Pausen',
  },
  wayNotes: {
    limit:
      'Jede Aufnahme beginnt kühl genug, wenn die Pause mehr gewinnt als den Schwund, den sie kostet.',
    'warm-up':
      'Erst Aufnahmen mit Deckel, alle Gespanne zugleich, dann durchweg die gleichen Pausen.',
    thumb: 'Übliche Praxis, ohne Quelle. Ausgeruht wird ein Sensor davon nicht.',
    none: 'Nur Wechsel und Einstellen lassen einen Sensor abkühlen.',
  },
  inShort: {
    limit: (rests: number, asked: number) => {
      if (rests > 0) return `Bis unter die Grenze: ${count(rests, 'Pause', 'Pausen')}`;
      return `Bis unter die Grenze: ${asked === 0 ? 'keine Pause nötig' : 'keine Pause, die sich lohnt'}`;
    },
    'warm-up': 'Erst aufwärmen, dann im gleichen Takt',
    thumb: (factor: string, from: string) => `Pause ${factor} × die Belichtung, über ${from}`,
    none: 'Keine Pausen',
  },
  pairLeft: (usual: string, range: string) => `Paar auseinander ${usual} (${range})`,
  driftLeft: (usual: string, range: string) =>
    `Letzte Aufnahme über der ersten ${usual} (${range})`,
  cost: (rests: string, wall: string) => `Pausen ${rests}, im Ganzen ${wall}`,
  costWarm: (wall: string, more: string) => `im Ganzen ${wall}, ${more} mehr als ohne Pausen`,
  noFrames: 'Noch ist nichts aufzunehmen.',
  hardlyWarms: 'Nicht nötig: So kurze Belichtungen wärmen einen Sensor kaum.',

  limit: 'Die Grenze',
  tolerated: 'Geduldetes Rauschen in den Schatten',
  toleratedHint:
    'So viel mehr als bei einem ausgeruhten Gehäuse darf es werden, vier Stufen unter Mittelgrau. Unsere Wahl: 0,02.',
  unknownRatio: 'Erlaubter Dunkelstrom, wo das Licht unbekannt ist',
  unknownRatioHint:
    'Das Vielfache der ersten solchen Aufnahme eines ausgeruhten Gehäuses: Dunkelaufnahmen und Weißbilder. Unsere Wahl: 1,25.',
  times: '×',
  longest: 'Längste Pause',
  longestHint: 'Eine Pause, die länger sein müsste, endet da. Unsere Wahl: 600.',

  rule: 'Die Faustregel',
  factor: 'So lang wie die Belichtung, mal',
  offUpTo: 'Keine Pause bis',
  thumbLeaves: (rig: string, time: string, rest: string, heat: string) =>
    `${rig}: nach vielen Aufnahmen von ${time} mit ${rest} Pause ${heat} über der ersten.`,
  thumbNone: (rig: string, time: string, heat: string) =>
    `${rig}: Die Regel verlangt bei ${time} keine Pause. Nach vielen solchen Aufnahmen ${heat} über der ersten.`,
  notRested:
    'Es entsteht ein Takt, der sich nach etwa drei Zeitkonstanten einpendelt. Ausgeruht wird ein Sensor davon nicht.',

  warmUp: 'Das Aufwärmen',
  warmUpIs: (frames: number, time: string, rest: string) =>
    `${count(frames, 'Aufnahme', 'Aufnahmen')} von ${time} vor der Liste, Deckel auf, alle Gespanne zugleich, nach jeder ${rest} Pause: etwa drei Zeitkonstanten. Dann im Takt bleiben: eine Pause nach jeder Belichtung und kein langer Halt.`,
  warmUpStale: 'Die Liste hat sich geändert: Ein anderes Aufwärmen würde zu ihr passen.',
  warmUpRenew: 'Aufwärmen an die Liste anpassen',

  pairs: 'Wärme jedes Paares',
  pair: (other: string, figure: string, reference: string, range: string) =>
    `${other} ${figure} Stufen Dunkelstrom über ${reference} (${range})`,
  withBodies: (range: string) =>
    `Auch zwei Gehäuse können sich unterscheiden, so weit man sie kennt: ${range} im Ganzen. Ein Gehäuse, das wärmer wird, ist ein Ergebnis und keine Unfairness.`,
  pairTitle: 'Sensorwärme',
  noPair: 'Noch kein Paar.',

  rests: 'Pausen nach der Grenze',
  restsNone: 'Jede Aufnahme ist ohne Pause unter der Grenze.',
  suggestionHint:
    'Vorschlag: Niemand hat gemessen, wie dieses Gehäuse abkühlt. Der Bereich sagt, wie sicher eine Pause ist.',
  restOf: (isSuggestion: boolean, time: string, range: string) =>
    `${isSuggestion ? 'Vorgeschlagene Pause' : 'Pause'} ${time} (${range})`,
  never: 'keine Pause reicht',
  neverEnough:
    'Eingeschaltet reicht keine Pause: den Partner aufwärmen oder nach einer Pause im ausgeschalteten Zustand neu fokussieren.',
  restsOn: 'bleibt an, sonst verliert es den Fokus',
  restWins: (without: string, left: string, worth: string) =>
    `Gewinnt ${without} → ${left} Stufen Dunkelstrom, so viel wert wie ${worth} Stufen Licht`,
  restCools: (without: string, left: string) => `Kühlt ${without} → ${left} Stufen Dunkelstrom`,
  restCosts: (stops: string) => `kostet ${stops} Stufen Schwund und Zeit`,
  costUnknown: 'was sie kostet, ist unbekannt: den Abend angeben',
  leftOut: 'Weggelassen: Sie kostet mehr, als sie gewinnt.',
  endsEarly: 'Endet bei der längsten Pause und liegt noch über der Grenze.',
  limitIs: (ratio: string) => `Grenze ${ratio} × ausgeruht`,

  timeline: 'Zeitachse',
  lanes: 'Zeitachse nach Gespannen',
  frame: 'Aufnahme auf der Zeitachse',
  frameOf: (place: number, of: number) => `Aufnahme ${place} von ${of}`,
  before: 'Aufnahme davor',
  after: 'Aufnahme danach',
  closer: 'Näher',
  wider: 'Weiter',
  shutter: 'Verschluss offen',
  fromStart: 'ab dem Beginn',
  byClock: (zone: string) => `nach der Uhr von ${zone}`,
  heatMid: 'Wärme, Stufen Dunkelstrom',
  restBefore: 'Pause davor',
  noRest: 'keine',
  sceneEv: 'Motiv-EV',
  evWithin: (ev: string, within: string) => `${ev} ±${within}`,
  light: 'Licht',
  lightUnknown: 'Das Licht darunter ist unbekannt: Standort, Datum und Himmel angeben.',
  lightComputing: 'Das Licht darunter wird berechnet.',
  legend: {
    exposure: 'Belichtung',
    capped: 'Aufnahme mit Deckel',
    ownDark: 'Dunkelbild der Kamera',
    rest: 'Pause',
    swap: 'Wechsel auf das Stativ',
    heat: (top: string) => `Wärme, ${top} Stufen Dunkelstrom am oberen Rand einer Bahn`,
    light: 'Motiv-EV, neun von zehn Malen zwischen den dünnen Linien',
  },
  axisClock: (zone: string) => `Uhr von ${zone}`,
  axisMinutes: 'Minuten ab dem Beginn',
  asTable: 'Die Zeitachse als Tabelle',
  asTableStated: (frames: number) =>
    `${count(frames, 'Aufnahme', 'Aufnahmen')} mit Pausen und Wechseln`,
  columns: { when: 'Wann', rig: 'Gespann', what: 'Was', heat: 'Wärme' },
  swapRow: 'Wechsel auf das Stativ',
  restRow: 'Pause',
};
