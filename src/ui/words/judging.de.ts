import type { Alike } from './alike.ts';
import type { judging as en } from './judging.en.ts';

/** What a pair may be used for, what it needed, and where its causes are known from. */
export const judging: Alike<typeof en> = {
  knownTitle: 'Woher jede Ursache bekannt ist',
  knownBy: {
    measured: 'gemessen',
    logged: 'eingetragen',
    predicted: 'vorhergesagt',
    unknown: 'unbekannt',
  },
  knownHint:
    'Gemessen: eine zugeordnete Datei, eine Wand oder Messungen sagen es. Eingetragen: nur Logbuch oder Technik sagen es. Ein ± gilt neun von zehn Malen. Was ein Rad anzeigt, gilt als genau; wie weit eine Kamera davon abweicht, ist ihr Versatz.',
  width: (half) => `±${half}`,
  widthUnknown: 'Breite unbekannt',

  needed: 'Gemessen neben vorhergesagt',
  neededField: 'Wirklich nötiger Ausgleich',
  neededHint:
    'Was die Bilder dieses Gespanns in der Entwicklung brauchten, bis sie zur Referenz passten. Minus, wenn sie abgedunkelt wurden. Leer nimmt es zurück.',
  neededUnit: 'Stufen',
  neededTooFar: 'Ein Ausgleich liegt unter 20 Stufen. Nichts wurde geändert.',
  notLogged: 'Das ließ sich nicht festhalten. Nichts wurde geändert.',
  predictedUp: 'Ausgleich, vorhergesagt',
  neededUp: 'Ausgleich, nötig',
  leftOver: 'Bleibt übrig',
  figureWidth: (figure, half) => `${figure} ±${half}`,
  leftOverIs: (darker, within) =>
    within
      ? 'Was übrig bleibt, liegt innerhalb seines ±: mehr ist nicht zu erklären.'
      : `Die Bilder wurden ${darker ? 'dunkler' : 'heller'}, als die Bilanz erklärt.`,
  byEye:
    'Kein ± angegeben: 0,16 gilt für einen Ausgleich nach Augenmaß, 0,08 für einen Bereich (unsere Wahl).',
  agree: {
    'too-few': 'Ein Versatz wird vorgeschlagen, sobald die Reste von zwei Sätzen übereinstimmen.',
    differ:
      'Die Reste der Sätze liegen weiter auseinander, als ihre ± erlauben: kein Versatz erklärt sie.',
    nothing: 'Die Reste der Sätze ergeben nichts: kein Versatz ist nötig.',
  },
  offer: (rig, change, half, sets) =>
    `Die Reste von ${sets} Sätzen stimmen überein: ${rig} gibt ${change} ±${half} Stufen gegen seine Angaben, was niemand eingetragen hatte.`,
  offerReference: (rig) => `${rig}, die Referenz, zählt dann als 0.`,
  rule: 'Die Regel: zwei Sätze oder mehr, die nicht weiter streuen als ihre Breiten erlauben (Chi-Quadrat, 95 von 100), und ein Mittel, das sich von null unterscheidet (95 von 100).',
  takeOffset: 'Für diese Tour nehmen',
  keepOffset: 'Auch für die gespeicherte Technik nehmen',
  offsetHow: 'aus den Resten einer Tour',
  offsetTaken: 'Für diese Tour genommen.',
  offsetKept: 'Für die gespeicherte Technik genommen.',

  uses: 'Wofür dieses Paar taugt',
  use: {
    noise: 'für einen Vergleich des Rauschens',
    sharpness: 'für einen Vergleich der Schärfe',
    brightness: 'für einen Vergleich der Helligkeit',
    'dynamic-range': 'für einen Vergleich des Dynamikumfangs',
  },
  fit: (use, why) => `Taugt ${use}: ${why}.`,
  notFit: (use, why) => `Taugt nicht ${use}: ${why}.`,
  untold: (use, why) => `Ob es ${use} taugt, ist nicht zu sagen: ${why}.`,
  nothingLookedAt: 'keine Grenze wird geprüft',
  measure: {
    'light-per-area': 'Licht je Fläche',
    rendered: 'Helligkeit',
    iso: 'ISO',
    time: 'Belichtungszeit',
    heat: 'Wärme',
    'depth-of-field': 'Schärfentiefe',
    diffraction: 'Beugung',
    framing: 'Bildausschnitt',
    parallax: 'Parallaxe',
    'bit-depth': 'Bittiefe',
    'dark-frame': 'Dunkelbild der Kamera',
  },
  unit: {
    'light-per-area': 'Stufen',
    rendered: 'Stufen',
    iso: 'Stufen',
    time: 'Stufen',
    heat: 'Stufen Dunkelstrom',
    'depth-of-field': 'Stufen',
    diffraction: 'Stufen',
    framing: '%',
    parallax: 'px',
    'bit-depth': 'Bit',
    'dark-frame': '',
  },
  differsBy: (what, figure, unit) => `${what}: Unterschied ${figure} ${unit}`,
  alike: (what) => `${what}: gleich`,
  unlike: (what) => `${what}: nicht gleich`,
  across: (what, least, most, unit, limit) =>
    `${what} liegt zwischen ${least} und ${most} ${unit}, die Grenze ${limit} dazwischen`,
  unknownOf: (what, why) => `${what}: unbekannt (${why})`,
  whyUntold: {
    causes: (causes) => `${causes} nicht bekannt`,
    width: (causes) => `niemand weiß, wie sicher ${causes} ist`,
    heat: 'ein Akku, eine Uhr oder eine offene Aufnahme verdeckt es',
    parallax: 'der Plan sagt nicht, wie nah und wie weit auseinander',
    pass: 'kein ganzer Durchgang',
  },
  noScore: 'Nach den Grenzen unten, die sich ändern lassen. Keine Punkte, keine Rangfolge.',
  limits: 'Grenzen',
  limitsHint:
    'Wie weit ein Paar für einen Zweck auseinander liegen darf. Leer = nicht geprüft. Bleibt auf diesem Gerät.',
  limitFrom: {
    'half-in-noise': 'Unsere Wahl: 0,1 Stufen Rauschen, die Hälfte, wo Photonen bestimmen.',
    'dark-ratio': 'Dunkelströme wie 1,25 zu 1, die Vorgabe bei unbekanntem Licht (unsere Wahl).',
    'half-a-click': 'Unsere Wahl: eine halbe Drittelstufe.',
    'one-click': 'Unsere Wahl: eine Drittelstufe, eine Raste der meisten Räder.',
    'our-choice': 'Unsere Wahl.',
    'must-be-alike': 'Unsere Wahl: gleich oder nicht.',
  },
  limitFor: (uses) => `Nötig ${uses}.`,
  limitBad: 'Eine Grenze ist null oder mehr. Nichts wurde geändert.',
  restoreLimits: 'Zurück zu den angegebenen Grenzen',
  done: 'Fertig',
};
