import type { Alike } from './alike.ts';
import type { clockFrame as en } from './clockFrame.en.ts';

/** Words of the clock that is photographed with each body. */
export const clockFrame: Alike<typeof en> = {
  title: 'Uhrbild',
  why: 'Diese Uhr einmal mit jedem Gehäuse fotografieren: Die Zeit in diesem Bild zeigt, wie dessen Uhr geht.',
  show: 'Uhr zeigen',
  clock: 'Ortszeit',
  code: (text: string) => `QR-Code: ${text}`,
  with: 'Fotografiert mit',
  notYet: 'noch nicht',
  at: (time: string) => `um ${time}`,
};
