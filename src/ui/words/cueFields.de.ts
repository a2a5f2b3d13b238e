import type { Alike } from './alike.ts';
import type { cueFields as en } from './cueFields.en.ts';

/** Words of choosing and trying how an exposure is told, and what presses the one act. */
export const cueFields: Alike<typeof en> = {
  title: 'Signale',
  lead: 'Wie sich eine Belichtung ohne Bildschirm meldet.',
  sound: 'Ton',
  soundHint: 'Ein kurzer Ton vor dem Öffnen, zwei kurze nahe am Ende, ein langer am Ende.',
  vibration: 'Vibration',
  noVibration: 'Dieses Gerät vibriert nicht für eine Webseite.',
  speech: 'Gesprochener Countdown',
  speechHint: 'Zehn, fünf, drei, zwei, eins und das Ende. Eine Stimme trägt nachts weit.',
  noVoice:
    'Dieses Gerät hat keine deutsche Stimme, die ohne Netz spricht. Ton und Vibration melden trotzdem.',
  voice: 'Stimme',
  silent: 'Stumm',
  silentHint: 'Nichts ist zu hören oder zu spüren, was oben auch gewählt ist. Proben gehen noch.',
  sample: '3, 2, 1, Ende',
  tryIt: 'Proben',
  tryNamed: (what: string) => `Proben: ${what}`,
  answer: {
    sound: {
      done: 'Das war das Ende einer Belichtung. Wenn nichts zu hören war, lauter stellen.',
      'needs-tap':
        'Das System hielt den Ton zurück. Noch einmal tippen; bleibt es dabei, die App neu laden.',
      unsupported: 'Dieser Browser hat keine Tonuhr. Die anderen Signale melden.',
    },
    vibration: {
      done: 'Das war das Ende einer Belichtung. Wenn nichts zu spüren war, in die Einstellungen des Systems sehen.',
      'needs-tap': 'Das System hat es nicht angenommen. Noch einmal tippen.',
      unsupported: 'Dieses Gerät vibriert nicht für eine Webseite.',
    },
    speech: {
      done: 'Das ist die Stimme des Countdowns. Wenn nichts zu hören war, lauter stellen.',
      'needs-tap': 'Das System hielt die Stimme zurück. Noch einmal tippen.',
      unsupported: 'Ohne Netz gibt es keine Stimme.',
    },
  },
  keysTitle: 'Tasten und Fernbedienungen',
  keys: 'Tasten drücken die große Taste der Tour',
  keysHint: 'Eingabe, Leertaste, Bild ab oder →, wie Tastaturen und Presenter sie senden.',
  headset: 'Auch die Taste eines Headsets',
  headsetHint:
    'Dafür spielt die App während einer Tour Stille ab: Andere Wiedergaben halten an, und es kostet etwas Strom.',
  noHeadset: 'Dieser Browser gibt die Taste eines Headsets nicht weiter.',
  pressNow: 'Jetzt drücken.',
  came: (key: string, ours: boolean) =>
    ours
      ? `${key} kam an. Das drückt die große Taste der Tour.`
      : `${key} kam an. Das drückt die große Taste nicht.`,
  headsetCame: 'Die Taste des Headsets kam an. Sie drückt die große Taste der Tour.',
  space: 'Leertaste',
};
