import type { WhyUnknown } from '../../plan/causes.ts';
import type { Alike } from './alike.ts';
import type { pair as en } from './pair.en.ts';

/** Words for how two rigs differ, planned or made. Figures come in as they are written. */
export const pair: Alike<typeof en> = {
  /* A soft hyphen: where three columns of figures need the room, the word may break. */
  difference: 'Unter\u00adschied',
  target: 'Soll',
  residual: 'Rest',
  framings: {
    width: 'Breite',
    height: 'Höhe',
    diagonal: 'Diagonale',
    'pixels-per-degree': 'Pixel je Grad',
  },
  against: (other: string, reference: string) => `${other} gegen ${reference}`,
  fromMeter: (stops: string) => `${stops} Stufen gegen die Messung`,
  byCause: 'Unterschied nach Ursachen, in Stufen',
  cause: 'Ursache',
  causes: {
    time: 'Zeit',
    aperture: 'Blende',
    iso: 'ISO',
    offset: 'Versatz',
    transmission: 'Trans\u00admission',
    fade: 'Schwund',
  },
  inRow: (causes: readonly string[]) => causes.join(', '),
  inOffset: 'im Versatz',
  sum: 'Summe',
  plusIs: 'Plus bildet heller ab als die Referenz.',
  evenUpIs: (stops: string) => `Ausgleich ${stops} Stufen.`,
  fadeFrom: {
    readings: 'Schwund aus den Lichtmessungen; sein ± gilt neun von zehn Malen.',
    model:
      'Schwund aus dem Modell für klaren Himmel, ohne Messung; sein ± gilt neun von zehn Malen.',
  },
  whyUnknown(why: WhyUnknown, causes: string): string {
    return {
      'neither-stated': `${causes}: für keines der Gespanne angegeben.`,
      'reference-not-stated': `${causes}: für die Referenz nicht angegeben.`,
      'other-not-stated': `${causes}: für dieses Gespann nicht angegeben.`,
      'no-sky': `${causes}: Der Himmel über diesen Aufnahmen ist nicht bekannt.`,
      'not-modelled': `${causes}: Eine von Hand beleuchtete Wand hat nichts vom Himmel.`,
    }[why];
  },
  light: 'Licht gegen die Referenz, in Stufen',
  perArea: 'Je Fläche',
  rendered: 'Wie abgebildet, mit ISO',
  whole: 'Ganzer Sensor',
  crop: 'Gemeinsamer Ausschnitt',
  without: (causes: string) => `ohne ${causes}`,

  besides: 'Neben der Helligkeit',
  besidesInShort: (across: string, depth: string) =>
    `Bildwinkel ${across}° breit, Schärfentiefe ${depth} ×`,
  angle: 'Bildwinkel gegen die Referenz',
  angles: (across: string, up: string) => `${across}° breit, ${up}° hoch`,
  shown: 'Von beiden gezeigt',
  percent: (figure: string) => `${figure} %`,
  framedBy: (rule: string) => `Ausschnitt nach ${rule}`,
  takesIn: (rig: string, factor: string) => `${rig} erfasst ${factor} ×`,
  perDegree: 'Pixel je Grad',
  pupil: 'Eintrittspupille',
  depth: 'Schärfentiefe',
  factorOf: (factor: string) => `${factor} ×`,
  hyperfocal: 'Hyperfokale Entfernung',
  metresOf: (figure: string) => `${figure} m`,
  airy: 'Beugung, Scheibchen',
  px: (figure: string) => `${figure} px`,
  motion: 'Bewegung gedehnt',
  parallax: 'Parallaxe des nächsten Motivs',
  parallaxUnknown:
    'unbekannt: Der Plan sagt nicht, wie nah es ist und wie weit die Achsen auseinanderliegen',
  overstated: 'Die Diagonale übertreibt das Licht um',
  stops: (figure: string) => `${figure} Stufen`,
  darkFrame: 'Dunkelbild der Kamera',
  yes: 'ja',
  no: 'nein',
  bits: 'Bittiefe',
  both: (reference: string, ofReference: string, other: string, ofOther: string) =>
    `${reference} ${ofReference}, ${other} ${ofOther}`,
  parallaxWarns: (px: string) =>
    `Das nächste Motiv verschiebt sich zwischen den zwei Objektivachsen um ${px} px. Mehr als 2 px ist zu sehen: es aus dem Bild halten oder ein Gespann dorthin stellen, wo das andere stand.`,
};
