import type { Fault } from '../../gear/read.ts';
import type { Contradiction } from '../../light/scene.ts';
import type { Alike } from './alike.ts';
import { faults } from './faults.de.ts';
import type { light as en } from './light.en.ts';

/** Words of the Light place. */
export const light: Alike<typeof en> = {
  title: 'Licht',
  chooseHint: 'Einen Standort wählen, um sein Licht zu sehen.',
  gone: 'Diesen Standort gibt es hier nicht mehr.',
  toSites: 'Zurück zu allen Standorten',

  sites: 'Standorte',
  noSite:
    'Noch kein Standort. Einen hier anlegen oder nach Koordinaten: Die App kennt dann Sonnenuntergang, Dämmerung und wie schnell das Licht schwindet. Alles andere geht auch ohne.',
  addSite: 'Standort anlegen',
  onlyInvented:
    'Dieser Standort ist erfunden, zum Üben. Für einen echten Abend einen eigenen anlegen.',
  newSite: 'Neuer Standort',
  saveSite: 'Standort speichern',
  name: 'Name',
  nameHint: 'Wie er draußen heißen soll.',
  position: 'Vom Telefon',
  positionWhy:
    'Der Ort entscheidet, wann die Sonne untergeht und wie schnell das Licht schwindet. Das Telefon wird einmal gefragt; die Antwort bleibt auf ihm.',
  askPosition: 'Hier, wo ich bin',
  asking: 'Das Telefon wird gefragt. Die Koordinaten lassen sich derweil eingeben.',
  positioned: (within: string) => `Übernommen, auf ${within} m genau.`,
  noPosition: {
    refused:
      'Das Telefon gibt dieser App seinen Ort nicht. Sonst hängt nichts daran. Die Koordinaten eingeben.',
    absent: 'Dieser Browser kennt keinen Ort. Die Koordinaten eingeben.',
    'not-found':
      'Das Telefon hat seinen Ort nicht gefunden. Unter freiem Himmel versuchen oder die Koordinaten eingeben.',
    timeout:
      'Das Telefon hat nicht geantwortet. Noch einmal versuchen oder die Koordinaten eingeben.',
  },
  coordinates: 'Breite und Länge',
  coordinatesHint:
    'Dezimal oder in Grad, Minuten und Sekunden: 54,90 N 3,60 W oder 54 54 0 N 3 36 0 W.',
  coordinatesFirst:
    'Nicht gespeichert: Die Koordinaten fehlen. Nichts ist verloren. Eingeben, dann speichern.',
  nameFirst: 'Nicht gespeichert: Der Name fehlt. Nichts ist verloren. Schreiben, dann speichern.',
  restFollows:
    'Zeitzone, Höhe und Bergkamm folgen auf dem nächsten Bildschirm; dort lässt sich alles ändern.',
  where: 'Wo er liegt',
  height: 'Höhe über dem Meer',
  metres: 'm',
  zone: 'Zeitzone',
  zoneHint: 'Aus den Koordinaten, nahe Grenzen ungenau. Ändern, wenn die Uhren dort anders gehen.',
  zoneProposed: (zone: string) => `Für diese Koordinaten wäre es ${zone}.`,
  takeZone: 'Übernehmen',
  fixedZone: 'Fester Abstand',
  offset: 'Vor UTC',
  offsetHint: 'Stunden und Minuten, westlich von Greenwich mit Minus: 5:45, -3:30.',
  offsetUnreadable:
    'Das ist kein Abstand. Stunden und Minuten zwischen -14:00 und 14:00 schreiben, wie 5:45.',
  ridge: 'Kamm in Richtung Sonnenuntergang',
  ridgeHint: 'Wie hoch das Land dort steht, in Grad. Eine Faust am langen Arm ist etwa 10.',
  degrees: '°',
  note: 'Notiz',
  noteHint: 'Zugang, Gezeiten, wo zu stehen.',
  siteActs: 'Dieser Standort',
  copy: 'Kopieren',
  copyOf: (name: string) => `${name}, Kopie`,
  delete: 'Löschen',
  about: 'Zu diesem Standort',
  latitude: (figure: string, north: boolean) => `${figure}° ${north ? 'N' : 'S'}`,
  longitude: (figure: string, east: boolean) => `${figure}° ${east ? 'E' : 'W'}`,
  fault: (fault: Fault): string => LIGHT_FAULTS[fault.rule]?.(fault.params) ?? faults.fault(fault),

  evening: 'Abend',
  dayBefore: 'Der Tag davor',
  dayAfter: 'Der Tag danach',
  otherDate: (date: string) => `Abend des ${date}. Einen anderen wählen`,
  chooseDate: 'Anderer Abend',
  date: 'Datum',
  dateHint: 'Jahr, Monat, Tag: 2027-02-12.',
  showDate: 'Zeigen',
  tonight: 'Heute Abend',
  practiceEvening: 'Sein eigener Abend',
  movedFrom: (date: string) => `Der Abend des ${date}, zur Zeit der Übungstour.`,
  computing: 'Sonne und Mond werden berechnet.',
  failed:
    'Der Teil, der Sonne und Mond kennt, ist nicht auf dem Gerät. Die Daten sind sicher. Die App einmal mit Netz öffnen, dann noch einmal versuchen.',
  tryAgain: 'Noch einmal',

  cloud: 'Himmel',
  cloudNotStated: (within: string | null) =>
    `Wolken: nicht angegeben.${within === null ? '' : ` Neun von zehn Malen liegt das Motiv innerhalb von ${within} Stufen.`}`,
  clouds: [
    { value: 'unknown', label: 'Ohne Angabe' },
    { value: 'clear', label: 'Klar' },
    { value: 'thin-cloud-over-sun', label: 'Dünne Wolken' },
    { value: 'average-cloud', label: 'Mittlere Wolken' },
    { value: 'dark-stratus', label: 'Dunkler Stratus' },
  ],

  curve: 'Motiv-EV über der Uhrzeit',
  cursor: 'Zeitpunkt auf der Kurve',
  cursorHint:
    'Die Kurve berühren oder die Pfeiltasten nehmen; Bild auf und Bild ab gehen zehn Minuten weit.',
  shown: 'Gezeigt',
  views: { dusk: 'Abend', night: 'Mittag bis Mittag', dawn: 'Morgen' },
  ev: 'EV',
  atClock: 'Um',
  sceneEv: 'Motiv-EV',
  evWithin: (within: string) => `9 von 10: ±${within}`,
  fade: 'Schwund',
  perMinute: 'Stufen/min',
  unknown: 'unbekannt',
  now: 'jetzt',
  readout: (clock: string, band: string, ev: string, within: string, fade: string) =>
    `${clock}, ${band}. EV ${ev}, neun von zehn Malen innerhalb von ${within} Stufen. Schwund ${fade} Stufen je Minute.`,
  bands: {
    day: 'Tag',
    civil: 'bürgerliche Dämmerung',
    nautical: 'nautische Dämmerung',
    astronomical: 'astronomische Dämmerung',
    night: 'Nacht',
  },
  asTable: 'Die Kurve als Tabelle',
  everyTen: 'Alle zehn Minuten',
  tableCaption: (zone: string) => `Motiv-EV, Zeiten in ${zone}`,
  columns: { clock: 'Zeit', band: 'Licht', ev: 'EV, 9 von 10' },
  evCell: (ev: string, within: string) => `${ev} ±${within}`,

  modelAlone:
    'Schätzung für klaren Himmel. Das wirkliche Motiv kann zwei Stufen heller oder dunkler sein. Eine Messung machen.',
  modelUnderCloud:
    'Schätzung für die angegebenen Wolken. Das wirkliche Motiv kann zwei Stufen heller oder dunkler sein. Eine Messung machen.',
  fromReading: (age: number, now: string, later: string) =>
    `Aus der Messung ${age < 1 ? 'von eben' : `vor ${age === 1 ? 'einer Minute' : `${age} Minuten`}`}; 9 von 10 innerhalb von ${now} Stufen jetzt, ${later} in einer halben Stunde.`,
  fromReadings: (count: number) =>
    `Die Kurve folgt ${count === 1 ? 'der Messung' : `den ${count} Messungen`} dieses Abends.`,
  contradiction: (found: Contradiction, figure: (value: number) => string): string => {
    switch (found.code) {
      case 'scale-far-from-one':
        return `Das Licht ändert sich ${figure(found.scale)}-mal so schnell wie unter klarem Himmel. Wolken oder etwas vor dem Dämmerschein: oft messen.`;
      case 'scattered':
        return `Die Messungen streuen um ${figure(found.stops)} Stufen. Immer dieselbe Stelle messen.`;
      case 'two-disagree':
        return `Zwei Messungen liegen ${figure(found.stops)} Stufen auseinander, und niemand weiß, welche stimmt. Eine dritte machen.`;
      case 'sky-changed':
        return `Die letzten Messungen liegen ${figure(Math.abs(found.stops))} Stufen ${found.stops < 0 ? 'unter' : 'über'} der Kurve der früheren: Wolken oder etwas vor dem Dämmerschein. Die Vorhersage nimmt nur sie.`;
      case 'lamps':
        return `Die Messungen fallen ab EV ${figure(found.ev100)} nicht weiter: Lampen beleuchten dieses Motiv. Der Himmel entscheidet nicht mehr.`;
    }
  },

  caution:
    'Vorsicht: nie durch einen optischen Sucher in die Sonne sehen und nie ein langes Objektiv auf sie richten.',

  sun: 'Sonne',
  sunTimes: 'Wann die Sonne jede Grenze erreicht',
  times: (zone: string) =>
    `Zeiten in ${zone}. Das Wetter am Horizont verschiebt einen wirklichen Untergang um Minuten.`,
  zoneWithOffset: (zone: string, offset: string) => `${zone}, ${offset}`,
  utc: (sign: string, hours: number, mins: string) =>
    `UTC${sign}${hours}${mins === '00' ? '' : `:${mins}`}`,
  nextDay: (clock: string) => `${clock} am nächsten Tag`,
  onDate: (clock: string, date: string) => `${clock}, ${date}`,
  what: 'Was',
  when: 'Wann',
  events: {
    sunset: 'Sonnenuntergang',
    'civil-dusk': 'Ende der bürgerlichen Dämmerung',
    'nautical-dusk': 'Ende der nautischen Dämmerung',
    'astronomical-dusk': 'Ende der astronomischen Dämmerung',
    'astronomical-dawn': 'Beginn der astronomischen Dämmerung',
    'nautical-dawn': 'Beginn der nautischen Dämmerung',
    'civil-dawn': 'Beginn der bürgerlichen Dämmerung',
    sunrise: 'Sonnenaufgang',
  },
  lines: {
    sunset: 'Sonnenuntergang',
    'civil-dusk': 'bürgerlich',
    'nautical-dusk': 'nautisch',
    'astronomical-dusk': 'astronomisch',
    'astronomical-dawn': 'astronomisch',
    'nautical-dawn': 'nautisch',
    'civil-dawn': 'bürgerlich',
    sunrise: 'Sonnenaufgang',
  },
  behindRidge: 'Hinter dem Kamm',
  lowestSun: (altitude: string, clock: string) =>
    `Am tiefsten steht die Sonne um ${clock}: ${altitude}°.`,
  alwaysUp: 'Mitternachtssonne: Zwischen diesen Mittagen geht sie nicht unter.',
  alwaysDown: 'Polarnacht: Zwischen diesen Mittagen geht sie nicht auf.',
  neverBelow: {
    civil: 'Sie steht nie unter −6°: Die bürgerliche Dämmerung dauert die ganze Nacht.',
    nautical: 'Sie steht nie unter −12°: Die nautische Dämmerung dauert die ganze Nacht.',
    astronomical: 'Sie steht nie unter −18°: Die astronomische Dämmerung dauert die ganze Nacht.',
  },

  fades: 'Schwund',
  fadeNow: 'Jetzt',
  fadeFastest: 'Am schnellsten heute Abend',
  fadeAt: (clock: string) => `um ${clock}`,
  noFall: 'Das Licht schwindet an diesem Abend nicht.',
  notNow: 'nicht an diesem Abend',

  moon: 'Mond',
  moonLit: (percent: string, waxing: boolean) =>
    `${percent} % beleuchtet, ${waxing ? 'zunehmend' : 'abnehmend'}.`,
  moonUp: (spans: readonly string[]) => `Über dem Horizont ${spans.join(' und ')}.`,
  moonSpan: (from: string | null, to: string | null) => {
    if (from === null) return to === null ? 'durchgehend' : `bis ${to}`;
    return to === null ? `ab ${from}` : `von ${from} bis ${to}`;
  },
  moonDown: 'Durchgehend unter dem Horizont.',

  planned: (plan: string) => `Die Marken unter der Kurve sind die Aufnahmen von ${plan}.`,
};

/** Rules that only places and zones have. */
const LIGHT_FAULTS: Readonly<Record<string, (params: Fault['params']) => string>> = {
  'coordinates-unreadable': () =>
    'Diese Koordinaten lassen sich nicht lesen. Erst Breite, dann Länge schreiben, wie 54,90 N 3,60 W.',
  'wrong-axis': () => 'Erst die Breite mit N oder S, dann die Länge mit E oder W.',
  'sign-and-letter': () =>
    'Eine Koordinate nimmt ein Minus oder einen Buchstaben, nicht beides. Eines weglassen.',
  'latitude-out-of-range': () => 'Eine Breite liegt zwischen 90 S und 90 N.',
  'longitude-out-of-range': () => 'Eine Länge liegt zwischen 180 W und 180 E.',
  'zone-unknown': () =>
    'Dieser Browser kennt diese Zeitzone nicht. Eine andere oder einen festen Abstand wählen.',
};
