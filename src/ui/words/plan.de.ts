import type { Unreached } from '../../plan/matching.ts';
import type { ApertureRule, Hold } from '../../plan/plan.ts';
import type { Alike } from './alike.ts';
import { pair } from './pair.de.ts';
import type { plan as en } from './plan.en.ts';
import { planLight } from './planLight.de.ts';

const count = (number: number, one: string, more: string): string =>
  `${number} ${number === 1 ? one : more}`;

const APERTURE: Readonly<Record<ApertureRule['rule'], string>> = {
  'same-f-number': 'gleiche Blende',
  'same-depth-of-field': 'gleiche Schärfentiefe',
};

/** Words of the Plan place. Figures, marks and durations come in as they are written. */
export const plan: Alike<typeof en> = {
  ...pair,
  inLight: planLight,
  title: 'Pläne',
  chooseHint: 'Einen Plan wählen, um hier seine Aufnahmeliste zu sehen.',
  openHint:
    'Einen Satz wählen, um zu sehen, wie sich seine Gespanne unterscheiden, oder die Reihenfolge der Aufnahmen.',
  none: 'Noch kein Plan. Ein Plan ist eine Aufnahmeliste für zwei Gespanne oder mehr. Einen anlegen oder erst die Übungstour nehmen.',
  noRig:
    'Ein Plan vergleicht Gespanne, und es gibt noch keines. Unter Technik eines zusammenstellen oder die Übungstour nehmen.',
  toGear: 'Zur Technik',
  practice: 'Übungstour nehmen',
  make: 'Neuer Plan',
  inShort: (rigs: string, sets: number) => `${rigs} · ${count(sets, 'Satz', 'Sätze')}`,
  copy: 'Kopieren',
  delete: 'Löschen',
  copyNamed: (name: string) => `${name} kopieren`,
  deleteNamed: (name: string) => `${name} löschen`,
  copyPlan: 'Plan kopieren',
  deletePlan: 'Plan löschen',
  copySet: 'Satz kopieren',
  deleteSet: 'Satz löschen',
  copyOf: (name: string) => `${name}, Kopie`,

  newPlan: 'Neuer Plan',
  name: 'Name',
  nameHint: 'Wie er am Abend heißen soll.',
  unnamed: 'Plan für den Abend',
  rigs: 'Gespanne',
  pickRigs: (most: number) =>
    `Zwei bis ${most}. Eines allein lässt sich aufnehmen, aber nicht vergleichen.`,
  rigOf: (letter: string, body: string) => `${letter} ${body}`,
  rigGone: 'Ein Gespann, das nicht mehr unter Technik steht',
  enoughRigs: (most: number) => `Ein Plan nimmt höchstens ${most} Gespanne.`,
  pickFirst: 'Ein Gespann wählen, dann geht es weiter.',
  reference: 'Referenz',
  referenceHint: 'Die anderen bekommen ihre Einstellungen von ihr.',
  startFrom: 'Beginnen mit',
  lists: {
    'base-iso-latitude': {
      label: 'Spielraum bei Basis-ISO',
      note: 'Richtig belichtet, zwei und vier Stufen darunter: was die Schatten hergeben.',
    },
    'high-iso-ladder': {
      label: 'Leiter hoher ISO',
      note: 'ISO 1600 bis 12 800, richtig belichtet: Rauschen, während das Licht geht.',
    },
    'long-exposure-heat': {
      label: 'Wärme bei langen Zeiten',
      note: '15, 60 und 240 s mit Dunkelaufnahmen: was die Wärme dazutut.',
    },
    'mixed-dusk': {
      label: 'Gemischte Dämmerung',
      note: 'Basis-ISO richtig belichtet und darunter, dann ISO 12 800 darüber und weit darunter.',
    },
  },
  series: {
    label: 'Wie ein Gehäuse warm wird',
    note: 'Deckel auf, zu Hause, etwas über eine Stunde: Daraus wird seine Erwärmung bestimmt.',
  },
  nothing: { label: 'Nichts', note: 'Eine leere Aufnahmeliste, Satz für Satz.' },
  seriesPickOne: 'Diese Liste ist für ein Gespann. Nur eines wählen.',
  seriesIso: 'Gemessen bei',
  seriesIsoHint: 'Die höchste, bei der dieses Gehäuse benutzt wird.',
  seriesOwnDark: (body: string) =>
    `Nach seinem Profil nimmt ${body} ein eigenes Dunkelbild auf. Das am Gehäuse abschalten und unter Technik angeben: Es würde die Reihe verderben.`,
  seriesTitle: 'Für die Reihe',
  seriesCautions: [
    'Das Gehäuse vorher eine Stunde aus und mit Deckel liegen lassen, wo die Temperatur gleich bleibt.',
    'Deckel auf, Sucher abgedeckt, fern von Lampen und Sonne.',
    'Raw. Dunkelbild der Kamera und Rauschminderung aus.',
    'Bildschirm aus, kein Live-View, kein Ladegerät, voller Akku.',
    'Aufnahme auf Aufnahme ohne Lücke; aus, wo es dasteht, und antippen, dass es aus ist.',
    'So wenig wie möglich berühren: Auch Hände und Wind wärmen und kühlen es.',
  ],
  makeIt: 'Plan anlegen',

  cautionTitle: 'Vorsicht',
  cautionShort: 'Kanten, Wasser, Verkehr, Kälte, Dunkelheit, die Sonne im Sucher',
  cautions: [
    'Den Boden bei Tageslicht ansehen: Kanten, nasser Stein, Flut und Eis sind später schwer zu sehen.',
    'Von Straßen und Gleisen fernbleiben und gesehen werden, wo Verkehr ist.',
    'Kälte und Dunkelheit ermüden, bevor man es merkt. Kleidung zum Stillstehen, zwei Lampen, und jemand weiß, wo und bis wann.',
    'Nie durch einen optischen Sucher in die Sonne sehen und nie ein langes Objektiv auf sie gerichtet lassen.',
    'Örtliche Regeln, Sperrungen und das Wort der Zuständigen dort gehen jedem Plan vor.',
  ],

  shotList: 'Aufnahmeliste',
  arrange: 'Umordnen',
  arranged: 'Fertig',
  addSet: 'Satz anfügen',
  noSet:
    'Noch kein Satz. Ein Satz ist eine Zeile der Aufnahmeliste: die Aufnahmen mit einer Absicht.',
  setAt: (place: number, intent: string) => `${place}. ${intent}`,
  noIntent: 'noch ohne Absicht',
  kinds: {
    light: 'Licht',
    'capped-dark': 'Dunkelaufnahme',
    flat: 'Weißbild',
    'capped-series': 'Dunkelreihe',
  },
  kindNotes: {
    'capped-dark': 'Deckel auf, gleich nach dem Satz davor, mit seiner ISO und Zeit.',
    flat: 'Eine gleichmäßig beleuchtete Wand füllt das Bild.',
    'capped-series':
      'Deckel auf, vor der Liste, alle Gespanne zugleich: zum Aufwärmen oder um zu lernen, wie ein Gehäuse warm wird.',
  },
  holdInWords(hold: Hold, stops: string): string {
    if (hold.kind !== 'same-iso-and-time') return HOLDS[hold.kind];
    const { rule, plus } = hold.aperture;
    if (plus === 0) return `Gleiche ISO und Zeit, ${APERTURE[rule]}`;
    return `Gleiche ISO und Zeit, ${stops} Stufen ${plus > 0 ? 'offener' : 'geschlossener'} als ${APERTURE[rule]}`;
  },
  follows: (intent: string) => `Mit ISO und Zeit von ${intent}, nach jedem seiner Einsätze`,
  turns: (passes: number, repeats: number) =>
    `${count(passes, 'Durchgang', 'Durchgänge')} mit ${count(repeats, 'Aufnahme', 'Aufnahmen')}`,
  referenceRig: 'Referenz',
  evenUp: 'Ausgleich',
  rig: 'Gespann',
  fNumber: 'Blende',
  time: 'Zeit',
  iso: 'ISO',
  bulb: (time: string) => `Bulb ${time}`,
  knownOnly: (causes: string) => `Unterschiede nur aus bekannten Ursachen. Unbekannt: ${causes}.`,

  order: 'Reihenfolge der Aufnahmen',
  orderInShort: (swaps: number, time: string) =>
    `${swaps === 0 ? 'Kein Wechsel' : `${swaps} Wechsel`}, etwa ${time}`,
  about: 'Zu diesem Plan',
  nameAndNote: 'Name und Notiz',
  noneYet: 'noch keine',
  noRigs: 'Keine Gespanne',
  note: 'Notiz',
  noNote: 'keine Notiz',
  stand: 'Nächstes Motiv und Objektivachsen',
  standInShort: (subject: string, axes: string) =>
    `${subject} entfernt, Achsen ${axes} auseinander`,
  standUnknown: 'unbekannt, daher ist auch die Parallaxe unbekannt',
  nearest: 'Nächstes Motiv, das zählt',
  nearestHint: 'Vom Stativ aus. Leer, wenn unbekannt.',
  nearestRange: 'Das muss zwischen 0,01 und 1 000 000 m liegen.',
  axes: 'Abstand der Objektivachsen',
  axesHint: 'Zwischen zwei Gespannen nebeneinander oder wie eine Schiene sie hält.',
  metres: 'm',
  millimetres: 'mm',
  mmOf: (figure: string) => `${figure} mm`,

  start: 'Tour beginnen',
  underWay: 'Eine Tour läuft. Erst beenden, dann eine andere beginnen.',
  hasProblems: 'Nicht begonnen: Am Plan ist etwas zu richten.',

  setOf: (place: number, of: number) => `Satz ${place} von ${of}`,
  intent: 'Absicht',
  kind: 'Art',
  toDial: 'Einzustellen',
  bulbTime: 'Bulb, offen für',
  seconds: 's',
  hold: 'Vorgabe',
  holdHint: 'Was zwischen den Gespannen gleich bleibt.',
  holds: {
    'same-iso-and-time': {
      label: 'Gleiche ISO und Zeit',
      note: 'Verstärkung und Dunkelstromzeit bleiben gleich. Die übliche Wahl, wenn es um Rauschen geht.',
    },
    'same-picture': {
      label: 'Gleiches Bild',
      note: 'Volle Äquivalenz: Ausschnitt, Schärfentiefe, gesamtes Licht, Zeit.',
    },
    'same-exposure': { label: 'Gleiche Belichtung', note: 'Gleiche Blende, Zeit und ISO.' },
    free: { label: 'Frei', note: 'Jedes Gespann von Hand. Unterschiede werden nur genannt.' },
  },
  apertureRule: 'Blende nach',
  apertureRules: {
    'same-f-number': 'Gleiche Blende',
    'same-depth-of-field': 'Gleiche Schärfentiefe',
  },
  plus: 'Stufen davon weg',
  plusHint: 'Plus öffnet, Minus schließt.',
  stop: 'Stufen',
  targetOffset: 'Gegen die gemessene Belichtung',
  targetOffsetHint: 'Minus liegt darunter, Plus darüber.',
  framing: 'Gleicher Ausschnitt nach',
  framingHint:
    'Nach welchen Rändern die Landmarke gesetzt wird, denn zwei Formate zeigen selten dasselbe.',
  passes: 'Durchgänge',
  passesHint: (usual: number) => `Einsätze aller Gespanne. Üblich in dieser Reihenfolge: ${usual}.`,
  repeats: 'Wiederholungen',
  repeatsHint: 'Aufnahmen, ohne das Gespann zu berühren. Rauschen braucht zwei.',
  seriesRepeatsHint: 'Aufnahmen direkt hintereinander, Deckel auf.',
  wait: 'Davor ausgeschaltet',
  waitHint: 'Ab dem Ende der Aufnahme davor. Leer oder 0 für keine Pause.',
  seriesInShort: (frames: number, wait: string | null) =>
    `${count(frames, 'Aufnahme', 'Aufnahmen')}${wait === null ? '' : ` nach ${wait} ausgeschaltet`}`,
  seriesDial:
    'Die anderen nehmen dieselbe ISO und Zeit, so nah sie können. Die Blende spielt keine Rolle.',
  more: 'Soll, Ausschnitt, Durchgänge, Wiederholungen',
  asMetered: 'Wie gemessen',
  moreInShort: (target: string, framing: string, frames: string) =>
    `${target}, Ausschnitt nach ${framing}, ${frames}`,
  setByHand: 'Mit gleicher Belichtung anfangen',

  orders: {
    'rig-by-rig': 'Gespann für Gespann',
    'side-by-side': 'Nebeneinander',
  },
  orderNotes: {
    'rig-by-rig':
      'Die ganze Liste mit einem Gespann, dann das nächste. Wenigste Wechsel, meister Schwund zwischen den Gespannen.',
    forward: 'Jeder Satz einmal durch die Gespanne. Der Schwund bleibt im Unterschied.',
    mirror: 'Hebt einen gleichmäßigen Schwund auf.',
    alternate: 'Jedes Gespann kommt zweimal dran. Ein gleichmäßiger Schwund bleibt im Unterschied.',
    'double-mirror': 'Hebt auch einen Schwund auf, der steiler wird.',
    'side-by-side': 'Alle Gespanne stehen und starten zugleich. Auf die Parallaxe achten.',
  },
  allowances: 'Zeitbedarf',
  swap: 'Wechsel der Gespanne',
  dialChange: 'Einstellen',
  settle: 'Beruhigen',
  settleHint: 'Hände weg, bis sich nichts mehr bewegt.',
  write: 'Datei schreiben',
  commonPractice: 'Übliche Praxis, ohne Quelle.',
  frames: 'Aufnahmen der Reihe nach',
  framesHint: 'Verschluss offen von und bis, gezählt ab dem Beginn der Liste.',
  noFrame: 'Noch keine Aufnahme. Sie stehen hier, sobald sich ein Satz einstellen lässt.',
  together: 'Alle Gespanne auf dem Stativ',
  swapTakes: (time: string) => `Wechsel ${time}`,
  restsFirst: (time: string) => `erst ${time} Pause`,
  passAndRepeat: (pass: number, repeat: number) => `Durchgang ${pass}, Aufnahme ${repeat}`,
  fromTo: (start: string, end: string) => `${start}–${end}`,
  middle: (time: string) => `Mitte ${time}`,

  problems: {
    'no-rigs': 'Dieser Plan hat kein Gespann. Unter Gespanne zwei oder mehr wählen.',
    'one-rig':
      'Ein Gespann allein lässt sich mit nichts vergleichen. Aufnehmen lässt es sich trotzdem.',
    tooManyRigs: (most: number) => `Ein Plan nimmt höchstens ${most} Gespanne. Eines herausnehmen.`,
    'rig-gone':
      'Ein Gespann dieses Plans steht nicht mehr unter Technik. Unter Gespanne herausnehmen.',
    letterTwice: (letter: string) =>
      `Zwei Gespanne tragen den Buchstaben ${letter}. Einem unter Technik einen anderen geben.`,
    'no-sets': 'Die Aufnahmeliste ist leer. Einen Satz anfügen.',
    'dark-without-light':
      'Eine Dunkelaufnahme folgt einem Satz, und vor ihr steht keiner. Sie in der Liste nach unten rücken.',
    'reference-not-in-plan':
      'Die Referenz ist nicht unter den Gespannen dieses Plans. Eine andere wählen.',
    notOnDials: (rig: string, dial: string) =>
      `${rig} hat diese Stellung nicht (${dial}). Das Rad auf eine stellen, die es hat.`,
    bulbNotOnBody: (rig: string) => `${rig} hat kein Bulb. Eine Zeit auf dem Rad wählen.`,
    bulbTooLong: (rig: string, longest: string) =>
      `${rig} hält Bulb höchstens ${longest}. Die Zeit kürzen.`,
    freeMissing: (rig: string) => `An ${rig} ist noch nichts eingestellt. Von Hand einstellen.`,
    dialsRefused: (rig: string) =>
      `Die Räder von ${rig} ergeben keine Stellung. Unter Technik richten.`,
    extendedIso: (rig: string, mark: string) =>
      `${mark} ist eine erweiterte Stellung von ${rig}: außerhalb des Bereichs, für den der Hersteller einsteht.`,
    timeUncertain: (rig: string, mark: string, stops: string | null) =>
      `Niemand hat gemessen, ob ${mark} an ${rig} so lange läuft, wie es dasteht.${stops === null ? '' : ` Daran hängen ${stops} Stufen.`}`,
  },
  dial: 'Einstellung',
  dials: {
    'f-mark-not-on-lens': 'Blende',
    'time-mark-not-on-body': 'Zeit',
    'iso-mark-not-on-body': 'ISO',
  },
  unreached(
    code: Unreached['code'],
    wanted: string,
    nearest: string,
    hasBulb: boolean,
    cost: string,
  ): string {
    const end = {
      'time-beyond-dial': `${nearest} ist ${hasBulb ? 'das Längste' : 'die letzte Stellung, und es gibt kein Bulb'}`,
      'time-short-of-dial': `${nearest} ist die erste Stellung`,
      'aperture-wider-than-lens': `${nearest} ist die größte Öffnung`,
      'aperture-narrower-than-lens': `${nearest} ist die kleinste Öffnung`,
      'iso-above-dial': `${nearest} ist die höchste`,
      'iso-below-dial': `${nearest} ist die niedrigste`,
    }[code];
    return `${wanted} gewünscht; ${end}: ${cost}.`;
  },
  cost: (stops: string, brighter: boolean) => `${stops} Stufen ${brighter ? 'heller' : 'dunkler'}`,
};

const HOLDS = {
  'same-picture': 'Gleiches Bild',
  'same-exposure': 'Gleiche Belichtung',
  free: 'Frei, von Hand eingestellt',
};
