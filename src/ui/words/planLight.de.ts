import type { TurnedDial } from '../../light/rightSettings.ts';
import type { Alike } from './alike.ts';
import type { planLight as en } from './planLight.en.ts';

const setsOff = (sets: number): string => (sets === 1 ? '1 Satz liegt' : `${sets} Sätze liegen`);

const DIALS: Readonly<Record<TurnedDial['dial'], string>> = {
  time: 'die Zeit',
  iso: 'die ISO',
  'f-number': 'die Blende',
};

/** Words of a plan in its light. Clock times, stops and marks come in as they are written. */
export const planLight: Alike<typeof en> = {
  title: 'Der Abend',
  where: 'Standort, Datum und Himmel',
  whereStated: (site: string, date: string, sky: string) => `${site}, ${date}, ${sky}`,
  noEvening: 'nicht angegeben, das Licht ist unbekannt',
  site: 'Standort',
  noSite: 'Keiner',
  siteHint: 'Standorte liegen unter Licht.',
  siteGone: 'Der Standort dieses Plans ist nicht auf diesem Telefon. Einen anderen wählen.',
  date: 'Datum',
  dateHint: 'Des Mittags vor dem Abend: Jahr, Monat, Tag.',
  start: 'Beginn um',
  startHint: 'Stunde und Minute nach der Uhr des Standorts. Leer = aus dem Licht berechnet.',
  startBad: 'Die Zeit als Stunde und Minute schreiben, wie 17:54.',
  sky: 'Himmel',
  skies: {
    clear: 'klar',
    'thin-cloud-over-sun': 'dünne Wolken',
    'average-cloud': 'mittlere Wolken',
    'dark-stratus': 'dunkler Stratus',
  },
  skyUnknown: 'Himmel ohne Angabe',
  limits: 'Grenzen des Lichts',
  limitsStated: (tolerance: string, fade: string) =>
    `Ein Satz darf ${tolerance} Stufen daneben liegen, ein Paar um ${fade} schwinden`,
  tolerance: 'Ein Satz darf daneben liegen um',
  toleranceHint: 'Nach beiden Seiten, und zählt noch als richtig. Unsere Wahl: 1.',
  mostFade: 'Während eines Wechsels darf sich das Licht ändern um',
  mostFadeHint: 'Unsere Wahl: eine Drittelstufe, eine Raste des Rades.',

  computing: 'Das Licht wird berechnet.',
  failed:
    'Der Teil, der das Licht berechnet, ist noch nicht auf diesem Telefon. Die App einmal mit Netz öffnen.',
  noLight: 'Der Himmel dieses Datums hat kein Licht für diese Liste.',
  startsAt: (clock: string) => `Beginn um ${clock}.`,
  fitsAll: 'Dann wird jeder Satz richtig.',
  missesLeast: (sets: number) =>
    `Kein Beginn passt für jeden Satz. Dieser verfehlt am wenigsten: ${setsOff(sets)} daneben.`,
  statedFits: 'Jeder Satz wird richtig.',
  statedMisses: (sets: number) => `${setsOff(sets)} dann daneben.`,
  better: (clock: string, fits: boolean) =>
    fits
      ? `Der späteste Beginn, der für jeden Satz passt, ist ${clock}.`
      : `${clock} würde am wenigsten verfehlen.`,
  takeBetter: 'Beginn berechnen',
  width: (stops: string) =>
    `Allein nach dem Modell für klaren Himmel, neun von zehn Malen auf ±${stops} Stufen. Eine Messung am Ort verschiebt alles.`,

  sunUp:
    'Zu Beginn steht die Sonne am Himmel. Nie durch einen optischen Sucher in sie sehen und nie ein langes Objektiv auf sie gerichtet lassen.',

  minutes: (from: string, to: string) => `Richtig von ${from} bis ${to}.`,
  never: 'Der Abend hat dieses Licht nie.',
  planned: (from: string, to: string) => `Geplant ${from} bis ${to}.`,
  off: (stops: string, bright: boolean) =>
    `${stops} Stufen zu ${bright ? 'hell' : 'dunkel'}, mehr als geduldet.`,
  mendBy: (ways: readonly string[]) =>
    ways.length === 0
      ? 'Kein anderer Beginn und kein einzelnes Rad hilft: einen anderen Abend nehmen oder ein anderes Ziel.'
      : `Was hilft: ${ways.join(' oder ')}.`,
  mendStart: (clock: string, earlier: boolean) =>
    `${earlier ? 'früher' : 'später'} beginnen, um ${clock}`,
  mendDial: (mark: string) => `${mark} einstellen`,
  fade: (stops: string, within: string) =>
    `Darin ${stops}\u00a0${within} Stufen Schwund, vorhergesagt`,

  swapTitle: (least: string, most: string) =>
    `Während die Gespanne wechseln, ändert sich das Licht um ${least === most ? least : `${least} bis ${most}`} Stufen, in jedem Paar. Das ist mehr als die Grenze.`,
  swapHelp: (ways: readonly string[]) => `Was hilft: ${ways.join('; ')}.`,
  sideBySide: 'die Gespanne nebeneinander aufstellen',
  quicker: (time: string) => `innerhalb von ${time} wechseln`,
  otherOrder: (orders: string) => `die Reihenfolge ${orders}, deren Mittel es aufhebt`,
  slower: (clock: string) => `ab ${clock} beginnen, wenn sich das Licht langsam genug ändert`,

  rightAt: 'Was richtig wäre um',
  minute: 'Minute',
  rightBy: (dial: TurnedDial['dial'], mark: string, miss: string) =>
    `Über ${DIALS[dial]}: ${mark}, ${miss} Stufen neben dem Gemeinten`,
};
