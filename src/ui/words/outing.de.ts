import type { Alike } from './alike.ts';
import type { outing as en } from './outing.en.ts';

const frames = (count: number): string => (count === 1 ? '1 Aufnahme' : `${count} Aufnahmen`);

/** Words of the Outing place. Durations, marks and counts come in as they are written. */
export const outing: Alike<typeof en> = {
  title: 'Tour',
  none: 'Keine Tour läuft.',
  noneHint: 'Einen Plan für den Abend wählen. Alles Nötige ist auf diesem Telefon, auch ohne Netz.',
  noPlans: 'Noch kein Plan. Unter Plan einen anlegen oder die Übungstour nehmen.',
  toPlans: 'Zum Plan',
  start: 'Beginnen',
  startPlan: (name: string) => `${name} beginnen`,
  planFrames: (count: number, minutes: string) => `${frames(count)}, etwa ${minutes} min`,
  planNotReady: 'An diesem Plan ist erst etwas zu richten.',
  anotherRuns: 'Eine andere Tour läuft. Erst diese beenden; sie ist sicher.',
  notStarted: (why: string) => `Die Tour hat nicht begonnen. ${why}`,

  caution: 'Auf Kanten, Wasser, Verkehr, Kälte und Dunkelheit achten. Örtliche Regeln gehen vor.',
  cameBack: (last: string) => `Fortgesetzt, wo es aufhörte. Zuletzt eingetragen: ${last}.`,
  savedAgain: (events: number) =>
    `Der Browser hat seinen Speicher geleert. ${events} Einträge dieser Tour wurden aus dem Gedächtnis neu geschrieben. Das Logbuch bald von diesem Telefon holen.`,
  mustReload:
    'Eine neuere Version ist in einem anderen Fenster offen. Eingetragenes ist sicher. Dieses Fenster neu laden.',

  notSaved: {
    full: 'Noch nicht gespeichert: Das Telefon ist voll. Solange dies offen bleibt, ist nichts verloren. Platz schaffen, dann erneut speichern.',
    blocked:
      'Noch nicht gespeichert: Ein anderes Fenster hält das Logbuch fest. Solange dies offen bleibt, ist nichts verloren. Das andere Fenster schließen, dann erneut speichern.',
    newer:
      'Noch nicht gespeichert: Eine neuere Version ist in einem anderen Fenster offen. Solange dies offen bleibt, ist nichts verloren. Es schließen, dann erneut speichern.',
    closed:
      'Noch nicht gespeichert: Der Browser hat seinen Speicher geschlossen. Solange dies offen bleibt, ist nichts verloren. Erneut speichern.',
    timeout:
      'Noch nicht gespeichert: Der Speicher antwortet nicht. Solange dies offen bleibt, ist nichts verloren. Erneut speichern.',
    refused:
      'Nicht gespeichert: Ein anderes Fenster hat diese Tour. Solange dies offen bleibt, ist nichts verloren. Die Tour übernehmen, dann erneut speichern.',
  },
  saveAgain: 'Erneut speichern',
  writing: 'Wird eingetragen',

  setUp: {
    title: 'Gespanne vorbereiten',
    lead: 'Einmal für jedes Gespann, bei Tageslicht. Jeder Haken wird festgehalten.',
    items: {
      'raw-and-depth': 'Raw-Art und Bittiefe eingestellt',
      'mechanical-shutter': 'Mechanischer Verschluss',
      'dark-frame': 'Dunkelbild der Kamera wie im Profil',
      'noise-reduction-off': 'Rauschminderung aus',
      'lens-corrections-off': 'Objektivkorrekturen aus',
      'stabiliser-off': 'Bildstabilisator aus',
      'auto-iso-and-highlight-modes-off': 'ISO-Automatik und Lichterschutz aus',
      'no-crop-mode': 'Kein Ausschnittmodus',
      'fixed-white-balance': 'Weißabgleich fest',
      'manual-focus': 'Fokus von Hand',
      'eyepiece-covered': 'Sucher abgedeckt',
      'hood-on': 'Gegenlichtblende auf',
      'image-review-short': 'Bildrückschau kurz',
      'clock-set': 'Uhr gestellt',
      'card-space': 'Karte hat Platz',
      'battery-charged': 'Akku geladen',
      'focus-fixed': 'Bei Tageslicht fokussiert und fixiert',
    },
    rawNote: (bits: number, loweredBy: string) =>
      loweredBy ? `${bits} Bit; weniger durch ${loweredBy}` : `${bits} Bit`,
    darkNote: { never: 'nie', always: 'immer', from: (time: string) => `ab ${time}` },
    cardNote: (free: number) => `Platz für ${free} Aufnahmen oder mehr`,
    darkSame:
      'Die Gehäuse unterscheiden sich im Dunkelbild der Kamera. Das ist ein Unterschied des Vergleichs.',
    counter: 'Nächste Bildnummer',
    counterNote: (name: string) => `Die nächste Datei ist ${name}`,
    counterUnknown: 'Nicht angegeben. Aufnahmen stehen dann ohne Bildnummer im Logbuch.',
    done: (ticked: number, all: number) => `${ticked} von ${all}`,
    tickRest: 'Alles Übrige abhaken',
    phone: 'Dieses Telefon',
    phoneHints: [
      'Den Bildschirm von Hand dunkler stellen. Dunkel zählt mehr als rot.',
      'Automatische Sperre auf „nie“, „Nicht stören“ an.',
      'Nie durch einen optischen Sucher in die Sonne sehen.',
    ],
    begin: 'Mit den Aufnahmen beginnen',
    missing: (count: number) =>
      count === 1
        ? '1 Zeile ist nicht abgehakt. Sie bleibt im Logbuch offen.'
        : `${count} Zeilen sind nicht abgehakt. Sie bleiben im Logbuch offen.`,
  },

  step: {
    mount: 'Aufsetzen',
    focus: 'Fokus',
    dial: 'Einstellen',
    expose: 'Belichten',
    open: 'Belichtung läuft',
    record: 'Eintragen',
    rest: 'Pause',
    busy: 'Dunkelbild',
    paused: 'Unterbrochen',
    done: 'Liste fertig',
    ended: 'Beendet',
  },
  setOf: (place: number, of: number) => `Satz ${place}/${of}`,
  passOf: (pass: number, of: number) => `Durchgang ${pass}/${of}`,
  repeatOf: (repeat: number, of: number) => `Wiederholung ${repeat}/${of}`,
  retake: 'neuer Versuch',
  cappedDark: 'Dunkelaufnahme: Deckel aufsetzen. Gleiche ISO und Zeit.',
  cappedSeries: 'Dunkelreihe: Deckel auf, Sucher abgedeckt, Bildschirm aus.',
  flat: 'Weißbild: Die gleichmäßig helle Wand füllt das Bild.',
  framesLeft: (count: number) => `noch ${count}`,
  next: 'Danach',
  nextNone: 'dann ist die Liste fertig',

  mount: {
    act: (rig: string) => `${rig} ist auf dem Stativ`,
    actAll: 'Alle Gespanne stehen',
    takeOff: 'Das andere Gespann abnehmen.',
    lock: 'Ausrichten, alle Knöpfe festziehen, den Fokus nicht anrühren.',
    landmark: 'Landmarke in die Mitte, Horizont auf seine Höhe.',
    reference: 'Dieses Gespann ist die Referenz. Sein Bild ist das Maß.',
    edges: (sideways: string, upright: string) =>
      `Die Ränder der Referenz liegen seitlich ${sideways} und in der Höhe ${upright}.`,
    inside: (percent: string) => `bei ${percent} % dieses Bildes`,
    outside: (percent: string) => `${percent} % außerhalb dieses Bildes`,
    same: 'auf dem Rand dieses Bildes',
    rule: {
      width: 'Gleicher Ausschnitt nach der Breite.',
      height: 'Gleicher Ausschnitt nach der Höhe.',
      diagonal: 'Gleicher Ausschnitt nach der Diagonale.',
      'pixels-per-degree': 'Ausschnitt mit gleich vielen Pixeln je Grad.',
    },
    drawing: 'Das Bild der Referenz, gestrichelt, im Bild dieses Gespanns',
  },
  focus: {
    why: {
      'not-fixed': 'Der Fokus wurde beim Vorbereiten nicht abgehakt.',
      'battery-changed':
        'Der Akku wurde gewechselt, und dieses Objektiv verliert ohne Strom den Fokus.',
      'lens-touched': 'Das Objektiv wurde berührt.',
      'powered-off':
        'Das Gehäuse war ausgeschaltet, und dieses Objektiv verliert ohne Strom den Fokus.',
    },
    how: 'Auf die Landmarke fokussieren, dann fixieren.',
    act: 'Fokus sitzt',
  },
  dial: {
    act: 'Ist eingestellt',
    changed: 'drehen',
    same: 'bleibt',
    aperture: 'Blende',
    time: 'Zeit',
    iso: 'ISO',
    bulb: 'Bulb',
    bulbFor: (time: string) => `Bulb, offen für ${time}`,
  },
  expose: {
    taken: 'Aufgenommen',
    takenHint: 'Auslösen, dann tippen.',
    takenOtherwise: 'Aufgenommen, aber anders eingestellt',
    start: (time: string) => `Start ${time}`,
    startAll: 'Alle starten',
    startHint: (leadIn: string) =>
      `Auslöser drücken und zugleich tippen. Selbstauslöser ${leadIn}.`,
    startHintNoTimer: 'Auslöser drücken und zugleich tippen.',
    bulb: {
      'press-press': 'T-Funktion: Ein Druck öffnet, ein Druck schließt.',
      hold: 'Den Auslöser bis zum Ende gedrückt halten.',
    },
  },
  open: {
    leadIn: 'Verschluss öffnet in',
    running: 'noch',
    over: 'darüber',
    ofTime: (time: string) => `von ${time}`,
    closed: 'Geschlossen',
    closedHint: {
      'press-press': 'Den Auslöser noch einmal drücken und zugleich tippen.',
      hold: 'Den Auslöser loslassen und zugleich tippen.',
    },
    closedOtherwise: 'Geschlossen, aber anders eingestellt',
    stopEarly: 'Vorzeitig beendet',
    waiting: 'Die Kamera beendet sie selbst.',
    unknown: 'Die Uhr wurde zurückgestellt. Wie lange dies schon offen ist, ist unbekannt.',
    missed: (by: string) => `Das Ende wurde ${by} zu spät bemerkt.`,
    late: (by: string) => `Vor ${by} beendet.`,
    wake: 'Einmal tippen macht den Bildschirm hell',
  },
  record: {
    act: 'Wie geplant eintragen',
    changed: 'Anders eingestellt',
    recordThis: 'So eintragen',
    title: 'Was wirklich eingestellt war',
    planned: (mark: string) => `geplant ${mark}`,
    bulbMeasured: 'aus dem zweimaligen Tippen gemessen',
    file: 'Bildnummer',
    fileNone: 'keine Nummer',
  },
  verdict: {
    ask: (rig: string) => `Letzte Aufnahme von ${rig}`,
    words: {
      good: 'Gut',
      soft: 'Unscharf',
      moved: 'Verwackelt',
      clipped: 'Ausgefressen',
      'passer-by-light': 'Fremdes Licht',
    },
    // 'Fremdes Licht' keeps its noun.
    inLine: (word: string) => word.charAt(0).toLowerCase() + word.slice(1),
    notGood: 'Nicht gut',
    other: 'Ändern',
    retake: 'Neu aufnehmen',
  },
  rest: {
    ask: {
      off: (rig: string) => `${rig} macht Pause, ausgeschaltet`,
      idle: (rig: string) =>
        `${rig} macht Pause, bleibt an: Sein Objektiv verliert ohne Strom den Fokus`,
      series: (rig: string) => `${rig}: ausschalten und warten`,
    },
    isOff: 'Ist ausgeschaltet',
    why: {
      thumb: (owed: string) =>
        `Faustregel: ${owed} nach dieser Belichtung. Wechsel zählen mit. Übliche Praxis, ohne Quelle.`,
      limit: (owed: string) => `${owed} im Ganzen, bis zur Wärmegrenze des Plans.`,
      asked: (owed: string) => `Der Satz verlangt ${owed} ab dem Ende der letzten Aufnahme.`,
    },
    switchOn: 'Danach wieder einschalten.',
    wins: (without: string, rested: string) =>
      `Gewinn: Dunkelstrom ${rested} statt ${without} Stufen.`,
    costs: (fade: string) => `Preis: Schwund ${fade} Stufen.`,
    costUnknown: 'Preis: unbekannt, wie der Schwund.',
    worth: {
      more: (wins: string, costs: string) => `So viel wert wie ${wins} Stufen Licht, für ${costs}.`,
      less: (wins: string, costs: string) =>
        `So viel wert wie ${wins} Stufen Licht, für ${costs}: Der Preis ist höher als der Gewinn.`,
    },
    suggestion: (range: string | null) =>
      `Ein Vorschlag, denn niemand hat dieses Gehäuse gemessen${range ? `: ${range}` : ''}.`,
    orNone: (least: string) => `${least}, oder mehr als jede Pause`,
    skip: 'Pause überspringen',
    ready: (rig: string, time: string) => `${rig} darf in ${time} aufnehmen`,
    stands: (heat: string, reference: string, range: string) =>
      `dann ${heat} Stufen über ${reference} (${range})`,
    standsThen: (then: string) => `Dunkelstrom: ${then}.`,
  },
  heat: {
    between: (least: string, most: string) => `${least} bis ${most}`,
    doubt: {
      'battery-changed': 'wie warm es ist, weiß niemand, denn sein Akku wurde gewechselt',
      'clock-set': 'wie warm es ist, weiß niemand, denn die Uhr wurde zurückgestellt',
    },
  },
  busy: {
    lead: (rig: string) => `${rig} nimmt sein eigenes Dunkelbild auf.`,
    hint: 'Es reagiert auf den Auslöser, wenn es fertig ist.',
  },
  paused: { lead: 'Nichts ist zu tun.', act: 'Weiter' },
  done: {
    lead: 'Jede Aufnahme ist gemacht oder ausgelassen.',
    act: 'Tour beenden',
    made: (count: number) => `${frames(count)} gemacht`,
  },
  ended: {
    lead: (made: number) => `${frames(made)} im Logbuch.`,
    export: 'Das Logbuch jetzt von diesem Telefon holen. Dann überlebt es das Telefon.',
    toLog: 'Logbuch öffnen',
    leave: 'Tour weglegen',
  },

  counterSave: 'Nummern setzen',
  counterBad: 'Eine Bildnummer ist eine ganze Zahl ab 0. Nichts wurde geändert.',
  otherPlaces: 'Andere Orte',

  undo: 'Zurück',
  undone: (what: string) => `Zurückgenommen: ${what}.`,
  extra: 'Zusatzaufnahme',
  extraShort: 'Zusatz',
  more: 'Mehr',
  acts: {
    title: 'Mehr',
    retake: 'Letzte Aufnahme neu machen',
    skip: 'Nächste Aufnahme überspringen',
    dropSet: 'Rest dieses Satzes streichen',
    swap: 'Die nächsten zwei tauschen',
    note: 'Notiz',
    reading: 'Lichtmessung',
    battery: 'Akku gewechselt',
    lens: 'Objektiv berührt',
    power: 'Ausgeschaltet',
    counter: 'Bildnummer',
    pause: 'Unterbrechen',
    end: 'Tour beenden',
    endSure:
      'Jetzt beenden? Fehlende Aufnahmen stehen als nicht gemacht im Logbuch. „Zurück“ holt sie wieder.',
  },
  which: 'Welches Gespann',
  note: {
    title: 'Notiz',
    ready: [
      'Wind',
      'Wolke gezogen',
      'Tau auf dem Objektiv',
      'Stativ berührt',
      'Stirnlampe',
      'Verkehr',
      'Regen',
      'Akku schwach',
    ],
    own: 'Eigene Worte',
    save: 'Notiz festhalten',
    aboutLast: 'Zur letzten Aufnahme',
  },
  reading: {
    title: 'Lichtmessung',
    meter: 'Messgerät',
    kind: 'Als',
    kinds: { ev: 'EV bei ISO 100', settings: 'ISO, Blende, Zeit', 'test-frame': 'Probebild' },
    ev: 'EV',
    over: 'Wurde',
    thirds: (thirds: number, stops: string) =>
      thirds === 0 ? 'richtig' : `${stops} Stufen zu ${thirds > 0 ? 'hell' : 'dunkel'}`,
    meters: ['Handmesser', 'Kameramesser', 'Probebilder'],
    save: 'Messung festhalten',
    hint: 'Eingebaute Messer versagen meist nahe EV −3 (übliche Praxis, ohne Quelle). Im Dunkeln ein Probebild machen.',
  },

  light: {
    title: 'Licht',
    fits(minutes: number, least: number, most: number | null): string {
      const width = most === null ? `${least} oder mehr` : `${least} bis ${most}`;
      return `Dieser Satz passt noch ${minutes} ${minutes === 1 ? 'Minute' : 'Minuten'}, neun von zehn Malen ${width}.`;
    },
    off: (stops: string, bright: boolean, within: string) =>
      `Dieser Satz wird ${stops} Stufen zu ${bright ? 'hell' : 'dunkel'}, neun von zehn Malen auf ±${within}.`,
    rematch: 'Dem Licht folgen',
    rematchHint: 'Für jede Aufnahme dieses Satzes, die noch fehlt. „Zurück“ macht es ungeschehen.',
    noRematch:
      'Kein einzelnes Rad bringt diesen Satz auf jedem Gespann zurück. Auf sein Licht warten oder den Rest unter Mehr streichen.',
    dials: { time: 'Über die Zeit', iso: 'Über die ISO', 'f-number': 'Über die Blende' },
    take: (miss: string) => `Diese nehmen: ${miss} Stufen neben dem Gemeinten`,
    takeNamed: (dial: string, rigs: readonly string[]) => `${dial}: ${rigs.join(', ')}`,
    wanted: {
      reading: 'Eine Lichtmessung würde helfen',
      'test-frame': 'Ein Probebild würde helfen',
    },
    now: (ev100: string, within: string) =>
      `Das Motiv hat jetzt EV ${ev100}, neun von zehn Malen auf ±${within}.`,
    reads: (meter: string, stops: string) => `${meter}: ${stops} Stufen gegen den freien Himmel.`,
    leftOut: (readings: number) =>
      readings === 1
        ? 'Eine Messung passt nicht zu den anderen und zählt nicht.'
        : `${readings} Messungen passen nicht zu den anderen und zählen nicht.`,
    noSky:
      'Der Himmel ließ sich beim Beginn nicht berechnen. Der Schwund bleibt unbekannt; alles andere geht weiter.',
    siteGone: 'Der Standort des Plans ist nicht auf diesem Telefon; der Schwund bleibt unbekannt.',
  },

  did: {
    'outing-started': 'Tour begonnen',
    'setup-ticked': 'ein Haken beim Vorbereiten',
    'setup-finished': 'Vorbereiten abgeschlossen',
    'counter-set': 'Bildnummer gesetzt',
    mounted: 'Gespann aufgesetzt',
    dialled: 'eingestellt',
    'exposure-started': 'Belichtung begonnen',
    'exposure-closed': 'Verschluss geschlossen',
    recorded: 'Aufnahme eingetragen',
    'extra-shot': 'Zusatzaufnahme',
    judged: 'Urteil',
    'retake-asked': 'neuer Versuch verlangt',
    'frame-skipped': 'Aufnahme übersprungen',
    replanned: 'Liste geändert',
    noted: 'Notiz',
    'reading-taken': 'Lichtmessung',
    'battery-changed': 'Akku gewechselt',
    'lens-touched': 'Objektiv berührt',
    'powered-off': 'Gehäuse ausgeschaltet',
    'rest-skipped': 'Pause übersprungen',
    'cue-late': 'Ende spät bemerkt',
    paused: 'Unterbrechung',
    resumed: 'fortgesetzt',
    ended: 'Tour beendet',
    undone: 'Rückgängig',
    discarded: 'Aufnahme verworfen',
    corrected: 'Berichtigung',
    'gear-corrected': 'Technik berichtigt',
    'clock-framed': 'Uhrbild',
    'files-matched': 'Dateien zugeordnet',
    'values-taken': 'Werte aus Dateien übernommen',
    'evened-up': 'Ausgleich, wie er nötig war',
  },
  refused: (rule: string): string =>
    ({
      'frame-open': 'Eine Aufnahme ist noch offen. Erst eintragen oder rückgängig machen.',
      'shutter-still-open': 'Der Verschluss ist noch offen. Nichts wurde eingetragen.',
      'shutter-not-open':
        'Der Verschluss ist noch nicht offen. „Zurück“ nimmt den Start wieder weg.',
      'bulb-not-closed': 'Erst den Verschluss schließen.',
      'retake-already-waiting': 'Diese Aufnahme wartet schon auf einen neuen Versuch.',
      'no-two-frames-left': 'Es sind keine zwei Aufnahmen mehr zum Tauschen da.',
      'nothing-to-undo': 'Es gibt nichts zurückzunehmen.',
      'runs-elsewhere': 'Ein anderes Fenster führt diese Tour. Erst übernehmen.',
      'note-empty': 'Die Notiz ist leer. Erst ein Wort schreiben.',
    })[rule] ?? 'Das war schon erledigt. Nichts wurde geändert.',
};
