/** Words of the moments that are told without the screen, and of the screen that stays on. */
export const cues = {
  title: 'Cues',
  /** Whether the screen is kept on, in two words on each step of a run. */
  screen: {
    held: 'screen on',
    'not-held': 'screen may go off',
    unsupported: 'screen may go off',
  },
  /** The same once, on the set-up sheet, with what to do. */
  screenAtSetUp: {
    held: null,
    'not-held': 'The screen may go off. Each tap asks to keep it on.',
    unsupported: 'This browser cannot keep the screen on. Set auto-lock to never.',
  },
  silent: 'silent',
  soundNeedsTap: 'tap once for sound',
  beSilent: 'Silent mode',
  endSilence: 'End silent mode',
  choose: 'Choose and try the cues',
  keyHint: 'Enter, Space, Page Down or → presses this.',
};
