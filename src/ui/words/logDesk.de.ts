import type { Alike } from './alike.ts';
import type { logDesk as en } from './logDesk.en.ts';

const count = (number: number, one: string, several: string): string =>
  `${number} ${number === 1 ? one : several}`;

/** Two or more in a row: 'a, b und c'. */
const joined = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} und ${parts.at(-1)}`;

/** Words of what the Log does at the desk: one frame and its corrections, the ledger, files read back. */
export const logDesk: Alike<typeof en> = {
  allRigs: 'Alle Gespanne',
  allSets: 'Alle Sätze',
  set: 'Satz',
  rig: 'Gespann',
  only: 'Nur',
  onlyWhat: {
    all: 'Alles',
    changed: 'Anders als geplant',
    'not-counting': 'Zählt nicht',
  },

  frame: (place: number) => `Aufnahme ${place}`,
  frameGone: 'Diese Aufnahme gibt es nicht. Vielleicht wurde sie rückgängig gemacht.',
  earlier: 'Früher',
  later: 'Später',
  pass: (pass: number, repeat: number) => `Durchgang ${pass}, Aufnahme ${repeat}`,
  settings: 'Einstellungen',
  settingsHint: 'Zum Berichtigen antippen. Was zuerst eingetragen war, bleibt lesbar.',
  fields: {
    fMark: 'Blende',
    time: 'Zeit',
    isoMark: 'ISO',
    elapsedS: 'Verschluss offen',
    fileNumber: 'Bildnummer',
    verdict: 'Urteil',
    counts: 'Zählt',
    note: 'Notiz',
  },
  openFor: (time: string) => `Offen ${time}`,
  openFrom: {
    dial: (exact: string) => `vom Gehäuse, ${exact} s hinter der Angabe`,
    steady: (within: string) => `zwischen zwei Tippern gemessen, ±${within} s`,
    wall: 'allein nach der Uhr des Telefons, unsicher',
    correction: 'wie berichtigt',
    unknown: 'die Uhr wurde zurückgestellt: Niemand weiß es',
  },
  noFile: 'Keine Bildnummer',
  noVerdict: 'Kein Urteil',
  when: 'Wann',
  day: 'Tag',
  opened: 'Verschluss geöffnet',
  closed: 'Verschluss geschlossen',
  zone: 'Zeitzone',
  zoneOf: (offset: string, zone: string) => `UTC${offset}, ${zone}`,
  leadIn: 'Selbstauslöser',
  noLeadIn: 'keiner',
  rested: 'Pause davor',
  firstOfRig: 'seine erste Aufnahme',
  late: 'Ende zu spät bemerkt um',
  counts: 'Zählt sie',
  countsYes: 'Sie zählt in der Bilanz.',
  countsNo: 'Sie zählt nicht in der Bilanz.',
  countsOther: 'In der Bilanz zählt ein anderer Versuch dieser Aufnahme.',
  discard: 'Diese Aufnahme verwerfen',
  letCount: 'Diese zählen lassen',
  notes: 'Notizen',
  addNote: 'Notiz anfügen',
  corrections: 'Berichtigungen',
  correctedTo: (field: string, value: string) => `${field}: ${value}`,
  yes: 'ja',
  no: 'nein',
  correct: (what: string) => `Berichtigen zu ${what}`,
  unchanged: 'Noch nichts geändert',
  seconds: 's',
  done: 'Fertig',
  elapsedHint: 'Wie lange der Verschluss wirklich offen war.',
  secondsBad: 'Eine Zeit ist größer als null. Nichts wurde geändert.',
  withoutNumber: 'Ohne Nummer',
  undo: {
    corrected: 'Berichtigung rückgängig',
    discarded: 'Verwerfen rückgängig',
    noted: 'Notiz rückgängig',
    judged: 'Urteil rückgängig',
    'evened-up': 'Ausgleich rückgängig',
    'gear-corrected': 'Änderung der Technik rückgängig',
    'files-matched': 'Angenommene Dateien rückgängig',
    'values-taken': 'Übernommene Werte rückgängig',
  },
  refused: 'Das ließ sich nicht festhalten. Nichts wurde geändert.',

  ledgerHint:
    'Jedes Gespann gegen die Referenz seines Satzes, aus den Aufnahmen, die zählen. Der Wert eines Satzes ist das Mittel über seine Durchgänge, in Stufen.',
  darksApart: 'Dunkelaufnahmen werden nicht im Licht verglichen.',
  noPair: 'Kein ganzer Durchgang: Ein Paar braucht auf beiden Seiten eine Aufnahme, die zählt.',
  noMean: 'Kein ganzer Durchgang',
  noLedger: 'Kein Paar zu vergleichen. Ein Plan mit zwei Gespannen hat eines.',
  differs: (stops: string) => `Unterschied ${stops} Stufen`,
  pairDiffers: (stops: string) => `Das Paar unterscheidet sich um ${stops} Stufen.`,
  pairAlike: 'Das Paar unterscheidet sich nicht.',
  againstOne: 'gegen',
  withoutUnknown: (causes: string) => `Nicht darin, weil unbekannt: ${causes}.`,
  passesCaption: 'In Stufen',
  against: (other: string, reference: string) => `${other} gegen ${reference}`,
  renders: (rig: string, brighter: boolean) =>
    `${rig} bildet ${brighter ? 'heller' : 'dunkler'} ab.`,
  evenUp: (stops: string) => `Ausgleich\u00a0${stops}`,
  residual: (stops: string) => `Rest\u00a0${stops}`,
  fade: (stops: string, width: string) => `Schwund\u00a0${stops}\u00a0${width}`,
  fadeHead: 'Schwund',
  meanOf: (passes: number) => `Mittel aus ${passes} Durchgängen`,
  byPass: 'Nach Durchgängen',
  passHead: 'Durch\u00adgang',
  unpaired: (passes: readonly number[]) =>
    `Nicht im Mittel: Durchgang ${joined(passes.map(String))}, wo nur eines der zwei Gespanne eine Aufnahme hat, die zählt.`,
  below: 'Unter dem Strich',
  belowHint: (pass: number) =>
    `Wie in Durchgang ${pass} eingestellt. Jedes in seiner Einheit, in keiner Summe.`,
  heat: 'Sensorwärme',
  heatOf: (usual: string, range: string) => `${usual} Stufen Dunkelstrom (${range})`,
  heatShort: (usual: string, range: string) => `Wärme\u00a0${usual} (${range})`,
  heatBodies: 'Wenn die zwei Gehäuse verschieden warm werden',
  heatIs: (warmer: string | null) =>
    `${warmer === null ? 'Keines war wärmer.' : `${warmer} war wärmer.`} Nach dem, was jedes Gespann getan hat, jedes über seinem ausgeruhten Zustand; was eines ausgeruht ist, hat niemand gemessen. Ein Gehäuse, das wärmer wird, ist ein Ergebnis und keine Unfairness.`,
  heatUnknown: {
    'battery-changed': (rig: string) =>
      `Der Akku von ${rig} wurde gewechselt: Wie warm es danach war, weiß niemand.`,
    'clock-set': (rig: string) =>
      `Die Uhr wurde zurückgestellt: Wie lange ${rig} arbeitete und abkühlte, weiß niemand.`,
    'still-open': (rig: string) => `Eine Aufnahme von ${rig} ist noch offen.`,
    'rig-gone': (rig: string) => `${rig} steht nicht unter Technik.`,
  },
  averaging: 'Wie gemittelt wird',
  weighted: (price: string, leaves: string) =>
    `Gegen die Drift gewichtet; Rauschen ×${price}. Die Zeiten der Aufnahmen sind so, dass ein einfaches Mittel ${leaves} Stufen eines gleichmäßigen Schwunds ließe. Was darin gemessen wird, ebenso gewichten, in Stufen.`,
  weightedShort: (price: string) => `gegen die Drift gewichtet, Rauschen ×${price}`,
  notSeparable: (leaves: string) =>
    `Ein einfaches Mittel, das ${leaves} Stufen eines gleichmäßigen Schwunds lässt: Diese Zeiten trennen eine Drift nicht von den Gespannen.`,
  tooDear: (leaves: string, price: string) =>
    `Ein einfaches Mittel, das ${leaves} Stufen eines gleichmäßigen Schwunds lässt: Gewichte dagegen brächten das Rauschen auf ×${price}.`,
  weightOf: (rig: string, pass: number, weight: string) => `${rig}, Durchgang ${pass}: ${weight}`,
  asPlanned: 'wie geplant',
  firstLogged: (mark: string) => `zuerst eingetragen ${mark}`,

  backup: 'Sicherung',
  backupIs:
    'Technik, Pläne, Standorte und alle Touren in einer Datei. Die Übungstour bleibt draußen. Nicht auf diesem Telefon aufbewahren.',
  lastBackup: (date: string, time: string) => `Zuletzt gemacht ${date}, ${time}.`,
  noBackup: 'Noch keine hat dieses Telefon verlassen.',
  makeBackup: 'Sicherung bereitstellen',
  restore: 'Eine Datei zurücklesen',
  restoreIs:
    'Eine Sicherung, ein Journal oder eine Technikdatei dieser App. Sie wird ganz gelesen und erst gezeigt. Was hier ist, wird nie geändert oder entfernt.',
  chooseFile: 'Datei wählen',
  readingFile: 'Die Datei wird gelesen.',
  fits: (date: string, time: string) =>
    `Die Datei wurde ${date}, ${time} geschrieben. Nichts wird ohne Zustimmung übernommen.`,
  bringsTitle: 'Sie brächte mit',
  bringsNothing: 'Nichts Neues',
  brings: {
    nothing: 'Alles davon ist schon hier oder wurde hier gelöscht.',
    outing: (name: string) => `Tour ${name}`,
    lines: (name: string) => `Neue Zeilen für die Tour ${name}`,
    bodies: (bodies: number) => `${bodies} Gehäuse`,
    lenses: (lenses: number) => count(lenses, 'Objektiv', 'Objektive'),
    rigs: (rigs: number) => count(rigs, 'Gespann', 'Gespanne'),
    plans: (plans: number) => count(plans, 'Plan', 'Pläne'),
    sites: (sites: number) => count(sites, 'Standort', 'Standorte'),
    copies: (copies: number) =>
      `${copies === 1 ? 'Eines davon kommt als Kopie' : `${copies} davon kommen als Kopien`} neben das, was hier unter derselben Kennung steht.`,
    deletedHere: (things: number) =>
      `${things === 1 ? 'Eines bleibt' : `${things} bleiben`} draußen, weil früher hier gelöscht.`,
  },
  takeIn: 'Übernehmen',
  leaveIt: 'Lassen',
  taken: 'Übernommen. Was hier war, bleibt, wie es war.',
};
