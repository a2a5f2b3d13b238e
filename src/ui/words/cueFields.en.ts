/** Words of choosing and trying how an exposure is told, and what presses the one act. */
export const cueFields = {
  title: 'Cues',
  lead: 'How the moments of an exposure are told without the screen.',
  sound: 'Sound',
  soundHint: 'One short beep before the opening, two short near the end, one long at the end.',
  vibration: 'Vibration',
  noVibration: 'This device does not vibrate for a page.',
  speech: 'Spoken countdown',
  speechHint: 'Ten, five, three, two, one, and the end. A voice carries far at night.',
  noVoice:
    'This device has no English voice that speaks without a network. Sound and vibration tell all the same.',
  voice: 'Voice',
  silent: 'Silent mode',
  silentHint: 'Nothing is heard or felt, whatever is chosen above. A trial still is.',
  sample: '3, 2, 1, end',
  tryIt: 'Try it',
  tryNamed: (what: string) => `Try it: ${what}`,
  answer: {
    sound: {
      done: 'That was the end of an exposure. If you heard nothing, turn the volume up.',
      'needs-tap': 'The system kept the sound back. Tap again; if it stays, load the app anew.',
      unsupported: 'This browser has no audio clock. The other cues tell.',
    },
    vibration: {
      done: 'That was the end of an exposure. If you felt nothing, look at the system’s settings.',
      'needs-tap': 'The system did not take it. Tap again.',
      unsupported: 'This device does not vibrate for a page.',
    },
    speech: {
      done: 'That is the voice of the countdown. If you heard nothing, turn the volume up.',
      'needs-tap': 'The system kept the voice back. Tap again.',
      unsupported: 'There is no voice without a network.',
    },
  },
  keysTitle: 'Keys and remotes',
  keys: 'Keys press the large button of a run',
  keysHint: 'Enter, Space, Page Down or →, as keyboards and presenter remotes send them.',
  headset: 'The button of a headset too',
  headsetHint:
    'For that the app plays silence during an outing: other players stop, and a little more power goes.',
  noHeadset: 'This browser does not give a headset’s button to a page.',
  pressNow: 'Press it now.',
  came: (key: string, ours: boolean) =>
    ours
      ? `${key} came. It presses the large button of a run.`
      : `${key} came. It is not one that presses the large button.`,
  headsetCame: 'The button of the headset came. It presses the large button of a run.',
  space: 'Space',
};
