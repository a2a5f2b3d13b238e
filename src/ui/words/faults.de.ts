import type { NotTaken } from '../../app/files.ts';
import type { Fault } from '../../gear/read.ts';
import type { Alike } from './alike.ts';
import type { faults as en, faultSentences as enSentences } from './faults.en.ts';
import { figures } from './figures.de.ts';
import { storageWhy } from './storageWhy.de.ts';

/** As it is typed, but for a real minus and the comma. */
const figure = (value: string | number): string => figures.plain(Number(value), 6);

/**
 * What is wrong with a value, by the key of the rule that it broke. One sentence each: what is
 * wrong, and what to do.
 */
export const faultSentences: typeof enSentences = {
  'text-empty': () => 'Das ist leer. Etwas schreiben, woran es zu erkennen ist.',
  'text-too-long': ({ most }) => `Das ist zu lang. ${most} Zeichen haben Platz.`,
  'text-unprintable': () => 'Darin ist ein Zeichen, das sich nicht zeigen lässt. Neu eingeben.',
  'not-text': () => 'Das ist kein Text. Neu eingeben.',
  'not-a-number': () => 'Das ist keine Zahl. Ziffern und ein Komma oder Punkt.',
  'not-a-decimal': () => 'Das ist keine Zahl. Ziffern und ein Komma oder Punkt.',
  'not-whole': () => 'Das muss eine ganze Zahl sein. Die Nachkommastellen weglassen.',
  'out-of-range': ({ least = 0, most = 0, unit }) =>
    `Das muss zwischen ${figure(least)} und ${figure(most)}${unit === undefined ? '' : unit === '°' ? unit : `\u00a0${unit === 'stop' ? 'Stufen' : unit}`} liegen.`,
  'latitude-out-of-range': () => 'Eine Breite liegt zwischen 90 S und 90 N.',
  'longitude-out-of-range': () => 'Eine Länge liegt zwischen 180 W und 180 E.',
  'zone-offset-out-of-range': () =>
    'Eine Zeitzone ist eine ganze Zahl von Minuten gegen UTC, weniger als ein Tag.',
  'limit-not-above-one': () => 'Das Verhältnis muss größer als 1 sein.',
  'not-a-mark': () =>
    'Das ist keine Stellung eines Rades. So schreiben, wie die Kamera sie zeigt, wie 6.3, 64 oder 1/250.',
  'not-a-date': () => 'Das ist kein Tag. Jahr, Monat und Tag schreiben, wie 2027-02-12.',
  'not-among': ({ choices }) => `Das muss eines von diesen sein: ${choices}.`,
  'not-yes-or-no': () => 'Das muss ja oder nein sein.',
  'not-in-file-names': () =>
    'Dateinamen dürfen keines von / \\ : * ? " < > | enthalten. Das Zeichen weglassen.',
  'counter-past-its-digits': ({ digits }) =>
    `Eine Nummer mit ${digits} Stellen kommt nie so weit. Eine kleinere letzte Nummer oder mehr Stellen schreiben.`,
  'sensor-upright': () =>
    'Die Höhe ist größer als die Breite. Die längere Seite als Breite angeben.',
  'pixels-not-of-this-sensor': () =>
    'Diese Pixel passen nicht zu diesen Seiten: Sie wären weit von quadratisch. Seiten und Pixel prüfen.',
  'order-comes-back': () =>
    'Ein Gespann nach dem anderen heißt: Gespann für Gespann. Diese Reihenfolge wählen oder anders aufstellen.',
  'value-outside-its-range': () =>
    'Der Wert liegt außerhalb seines Bereichs. Einen der drei berichtigen.',
  'ratio-limit-not-above-one': () => 'Das Verhältnis muss größer als 1 sein.',
  'tolerance-not-positive': () => 'Was geduldet wird, ist größer als null, wie 0,02.',
  'timer-not-among-choices': () =>
    'Das Gehäuse hat keinen solchen Selbstauslöser. Eine seiner Zeiten wählen.',
  'dial-ends-upside-down': () =>
    'Die Enden des Rades sind vertauscht. Das erste muss unter dem letzten liegen.',
  'dial-end-off-series': () =>
    'Das Rad hat bei dieser Stufung keine solche Stellung. Ein anderes Ende oder eine andere Stufung wählen.',
  'dial-empty': () => 'Es bliebe keine Stellung auf dem Rad. Mindestens eine behalten.',
  'dial-mark-not-a-number': () =>
    'Das ist keine Stellung eines Rades. So schreiben, wie die Kamera sie zeigt, wie 6.3, 64 oder 1/250.',
  'f-number-not-positive': () =>
    'Eine Blendenzahl ist größer als null. Wie auf dem Objektiv schreiben.',
  'iso-not-positive': () => 'Eine ISO ist größer als null. Wie am Gehäuse schreiben.',
  'time-not-positive': () => 'Eine Zeit ist größer als null. In Sekunden schreiben.',
  'doubling-temperature-not-positive': () =>
    'Eine Verdopplung ist größer als null. In K schreiben.',
  'duration-negative': () => 'Diese Zeit kann nicht unter null liegen.',
  'length-not-positive': () => 'Eine Länge ist größer als null. In Millimetern schreiben.',
  'pixels-not-positive': () => 'Eine Zahl von Pixeln ist größer als null.',
  'stops-not-finite': () => 'Das ist keine Zahl von Stufen. So schreiben wie −0,15.',
  'not-an-object': () => 'Hier fehlt eine Gruppe von Feldern.',
  'not-a-list': () => 'Hier fehlt eine Liste.',
  'list-too-long': ({ most }) => `Hier sind mehr als ${most}.`,
  'field-missing': () => 'Dieses Feld fehlt.',
  'field-unknown': ({ field }) => `Da ist ein Feld, das diese Version nicht kennt: ${field}.`,
  'not-an-id': () => 'Das ist kein Name, den die App vergibt.',
  'id-twice': ({ id }) => `Der Name ${id} kommt zweimal vor.`,
  'file-empty': () => 'Die Datei ist leer. Eine andere wählen.',
  'file-too-large': ({ mostMegabytes }) => `Die Datei ist größer als ${mostMegabytes} MB.`,
  'file-too-full': () => 'Sie enthält mehr, als eine unserer Dateien könnte. Eine andere wählen.',
  'file-newer': () =>
    'Eine neuere Version der App hat sie geschrieben. Die App erneuern, dann noch einmal lesen.',
  'not-json': ({ line, column }) =>
    line === undefined
      ? 'Sie ist beschädigt oder keine von uns. Eine andere wählen.'
      : `Sie ist beschädigt, in Zeile ${line}, Spalte ${column}. Eine andere wählen.`,
  'event-newer': () =>
    'Eine neuere Version der App hat sie geschrieben. Die App erneuern, dann noch einmal lesen.',
  'event-differs': () =>
    'Die Tour hier sagt an dieser Stelle etwas anderes; eine der beiden wurde verändert. Die Datei wählen, wie sie das Telefon verließ.',
  'event-place-taken': () =>
    'Die Tour hier sagt an dieser Stelle etwas anderes; eine der beiden wurde verändert. Die Datei wählen, wie sie das Telefon verließ.',
  'event-of-other-outing': () => 'Das gehört zu einer anderen Tour. Eine andere Datei wählen.',
  'key-not-of-this-frame': () => 'Diese Aufnahme trägt den Namen einer anderen.',
  'stretch-backward': () => 'Diese Spanne endet, bevor sie beginnt.',
  'zone-unknown': () => 'Eine solche Zeitzone gibt es nicht.',
  'other-format': () => 'Sie ist keine von uns. Eine andere wählen.',
  'too-many-frames': ({ most }) =>
    `Das ergibt mehr als ${most} Aufnahmen, zu viele für einen Abend. Weniger Durchgänge, Wiederholungen oder Sätze nehmen.`,
  'body-gone': () => 'Ein Gespann braucht ein Gehäuse, das nicht da ist. Ein anderes wählen.',
  'no-long-time': () =>
    'Keine Zeit dieses Gehäuses ist lang genug, um es zu wärmen. Seine längste Zeit oder Bulb unter Technik angeben.',
  'lens-gone': () => 'Ein Gespann braucht ein Objektiv, das nicht da ist. Ein anderes wählen.',
};

/** What is wrong with what was entered or with a file. */
export const faults: Alike<typeof en> = {
  fault: ({ rule, params }: Fault): string =>
    faultSentences[rule]?.(params) ?? `Das lässt sich nicht annehmen: ${rule}. Anders eingeben.`,
  notTaken(not: NotTaken): string {
    if (not.how === 'refused') return fileFault(not.fault);
    if (not.how === 'unsaved')
      return 'Nichts wurde übernommen: Etwas Eingegebenes ist noch nicht gespeichert. Speichern, dann die Datei noch einmal wählen.';
    if (not.how === 'store')
      return `Nichts wurde übernommen, und hier hat sich nichts geändert. ${storageWhy[not.fault.kind]}`;
    return {
      'too-large':
        'Nichts wurde übernommen: Die Datei ist zu groß, um eine von uns zu sein. Eine andere wählen.',
      'not-text': 'Nichts wurde übernommen: Die Datei ist kein Text. Eine andere wählen.',
      'part-missing':
        'Nichts wurde übernommen: Ein Teil der App ist nicht auf dem Gerät. Die App einmal mit Netz öffnen, dann die Datei noch einmal wählen.',
      gone: 'Nichts wurde übernommen: Das Telefon gibt die Datei nicht mehr heraus. Noch einmal wählen.',
    }[not.why];
  },
};

/** With the first fault and its place. */
function fileFault({ rule, params, path }: Fault): string {
  const sentence = faultSentences[rule]?.(params) ?? `Sie bricht eine Regel: ${rule}.`;
  return `Nichts wurde aus der Datei übernommen, und hier hat sich nichts geändert. ${path === '' ? '' : `Bei ${path}: `}${sentence}`;
}
