/** Words of the copies that leave after each set, and of a log that has not left. */
export const safetyCopy = {
  copy: 'Safety copy',
  toFile: (name: string) => `After each set the journal goes into ${name}.`,
  fileHint:
    'After each set the journal is written into a file that you choose: on another card, or in a folder that is copied elsewhere.',
  choose: 'Choose the file',
  chooseOther: 'Choose another file',
  offerHint:
    'This browser writes no file by itself. It can offer the journal after each set: a tap hands it on. The system’s sheet is bright.',
  offer: 'Offer a copy after each set',
  copied: (time: string) => `Safety copy written ${time}.`,
  due: 'A set is through. A copy of the journal is ready to be handed on.',
  handOn: 'Hand a copy on',
  notNow: 'Not now',
  failed:
    'The safety copy was not written. The log on this phone is safe. Choose the file again, or get the journal off at the end.',
  asks: 'The safety copy rests since the app was loaded again. The log on this phone is safe.',
  goOn: 'Go on with the copy',

  notLeft: (name: string) =>
    `${name} has ended and has not left this phone yet. A lost phone takes it along.`,
};
