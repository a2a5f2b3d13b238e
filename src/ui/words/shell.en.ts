/** Words of the frame around the places. */
export const shell = {
  appName: 'Evenfall',
  places: 'Places',
  partMissing:
    'This part of the app is not on the device. Your data is safe. Open the app once with a network, then try again.',
  place: { gear: 'Gear', light: 'Light', plan: 'Plan', outing: 'Outing', log: 'Log' },
  night: 'Night',
  back: 'Back',

  notSaved: {
    full: 'Not saved yet: the phone is full. What you entered is kept on this screen. Free some space, then save again.',
    blocked:
      'Not saved yet: another window of the app is in the way. What you entered is kept on this screen. Close the other window, then save again.',
    newer:
      'Not saved: a newer version of the app is open in another window. What was saved before is safe. Reload this window.',
    closed:
      'Not saved yet: the browser closed the storage. What you entered is kept on this screen. Save again.',
    timeout:
      'Not saved yet: the storage does not answer. What you entered is kept on this screen. Save again.',
    refused:
      'Not saved: the storage refused it. What was saved before is safe. Reload the app and enter it again.',
  },
  saveAgain: 'Save again',

  cannotOpen: {
    full: 'The app cannot open its storage: the phone is full. What was saved is safe. Free some space, then try again.',
    blocked:
      'The app cannot open its storage: another window holds it. What was saved is safe. Close the other window, then try again.',
    newer:
      'The storage was written by a newer version of the app, which this one leaves as it is. What was saved is safe. Open the newest version, or get it out as a file.',
    closed:
      'The app cannot open its storage. What was saved is safe. Close other windows of the app and leave private browsing, then try again.',
    timeout: 'The storage does not answer. What was saved is safe. Try again.',
    refused: 'The app cannot read its storage. What was saved is safe. Try again.',
  },
  cannotStart:
    'The app cannot start, by a mistake of its own. What was saved is safe. Try again; if this stays, open the newest version with a network.',
  openNewest: 'Open the newest version',
  tryAgain: 'Try again',
};
