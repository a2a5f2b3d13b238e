import type { AppWindow } from './driver/phone.ts';

/** Goes to a place by the bar of places, past the first start where it is still shown. */
export async function goTo(window: AppWindow, place: 'Gear' | 'Light' | 'Plan' | 'Outing' | 'Log') {
  await window.seeThe('button', /^(Add a body|Gear)$/);
  if ((await window.count('button', place)) === 0) await window.tap('button', 'Add a body');
  await window.tap('button', place);
}
