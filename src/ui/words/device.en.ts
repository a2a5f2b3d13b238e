/** Words of what holds for this device. */
export const device = {
  title: 'This device',
  offline: {
    looking: 'Looking whether everything is here for offline use.',
    ready: 'Ready for offline.',
    'not-ready': 'Not ready for offline. Open the app once more with a network before you go out.',
    unsupported:
      'This browser cannot start the app without a network. Take another one along, or leave this window open.',
  },
  /** Why to install, and how the platform lets one; the seven days: WebKit, Updates to Storage Policy. */
  install: {
    ios: 'Install it: tap Share, then Add to Home Screen. In a tab the browser clears what is stored after seven days without a visit; the installed app keeps it.',
    other:
      'Install it from the browser’s menu. It then opens in a window of its own, and the browser is readier to keep what is stored.',
  },
  keeping: {
    kept: 'Storage: kept. The browser will not clear it by itself.',
    'may-be-cleared':
      'Storage: the browser may clear it when space runs short. Keep a backup file elsewhere.',
    unknown: 'Storage: the browser does not say whether it is kept. Keep a backup file elsewhere.',
  },
  askToKeep: 'Ask the browser to keep it',
  updateWaits: 'A newer version is on this device. Your log stays as it is.',
  takeUpdate: 'Change to it now',
  language: 'Language',
  bySun: 'Night by the sun',
  bySunHint:
    'From civil dusk to dawn at the site in use, between frames only. The Night button ends it.',
  dim: 'Dim the figures at night',
  dimHint: 'The screen’s own brightness is for you to turn down.',
  version: (version: string) => `Version ${version}`,
};
