import type { Alike } from './alike.ts';
import type { firstStart as en } from './firstStart.en.ts';

/** Words of the first screen. */
export const firstStart: Alike<typeof en> = {
  does: 'Einen fairen Vergleich von Kameragehäusen in der Dämmerung planen und durchführen. Jede Aufnahme hat ihre Zeit und steht im Logbuch, und was sich noch unterscheidet, steht da mit seiner Ursache.',
  tryPractice: 'Übungstour probieren',
  addBody: 'Gehäuse anlegen',
  restore: 'Sicherung zurücklesen',
  installFirst:
    'Erst installieren: im Browser auf Teilen tippen, dann auf Zum Home-Bildschirm, und Evenfall von dort öffnen. Die installierte App behält das Gespeicherte; ein Tab verliert es nach sieben Tagen ohne Besuch, und was hier eingegeben wird, wäre nicht in der App.',
};
