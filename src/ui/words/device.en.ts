/** Words of what holds for this device. */
export const device = {
  title: 'This device',
  offline: {
    looking: 'Looking whether everything is here for offline use.',
    ready: 'Ready for offline.',
    'not-ready': 'Not ready for offline. Open the app once more with a network before you go out.',
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
  bySun: 'Night by the sun',
  bySunHint:
    'From civil dusk to dawn at the site in use, between frames only. The Night button ends it.',
  dim: 'Dim the figures at night',
  dimHint: 'The screen’s own brightness is for you to turn down.',
  version: (version: string) => `Version ${version}`,
};
