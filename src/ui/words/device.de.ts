import type { Alike } from './alike.ts';
import type { device as en } from './device.en.ts';

/** Words of what holds for this device. */
export const device: Alike<typeof en> = {
  title: 'Dieses Gerät',
  offline: {
    looking: 'Es wird nachgesehen, ob alles für den Betrieb ohne Netz da ist.',
    ready: 'Bereit ohne Netz.',
    'not-ready':
      'Ohne Netz noch nicht bereit. Die App vor dem Aufbruch noch einmal mit Netz öffnen.',
    unsupported:
      'Dieser Browser kann die App ohne Netz nicht starten. Einen anderen mitnehmen oder dieses Fenster offen lassen.',
  },
  install: {
    ios: 'Installieren: auf Teilen tippen, dann auf Zum Home-Bildschirm. In einem Tab löscht der Browser das Gespeicherte nach sieben Tagen ohne Besuch; die installierte App behält es.',
    other:
      'Über das Menü des Browsers installieren. Dann öffnet sie sich in einem eigenen Fenster, und der Browser behält das Gespeicherte eher.',
  },
  keeping: {
    kept: 'Speicher: bleibt. Der Browser löscht ihn nicht von selbst.',
    'may-be-cleared':
      'Speicher: Der Browser kann ihn löschen, wenn der Platz knapp wird. Eine Sicherung anderswo aufbewahren.',
    unknown: 'Speicher: Der Browser sagt nicht, ob er bleibt. Eine Sicherung anderswo aufbewahren.',
  },
  askToKeep: 'Den Browser bitten, ihn zu behalten',
  updateWaits: 'Eine neuere Version ist auf diesem Gerät. Das Logbuch bleibt, wie es ist.',
  takeUpdate: 'Jetzt wechseln',
  language: 'Sprache',
  bySun: 'Nacht nach der Sonne',
  bySunHint:
    'Von der bürgerlichen Dämmerung am Abend bis zu der am Morgen, am gewählten Standort und nur zwischen Aufnahmen. Die Taste Nacht beendet es.',
  dim: 'Ziffern nachts dunkler',
  dimHint: 'Die Helligkeit des Bildschirms selbst ist von Hand zu stellen.',
  version: (version: string) => `Version ${version}`,
};
