import type { AppWindow, Size } from '../journeys/driver/phone.ts';
import { cutOff, outOfReach, overlaid } from './measure.ts';

/*
 * WCAG 2.2, 1.4.4 Resize Text: text at 200 % loses no content and no function. All our type is in
 * rem, so that the root's size stands for the reader's own setting.
 */

/** The narrowest phone, lying, and upright; the first is no walk's own, so that all is laid out anew. */
const SIZES: readonly Size[] = [
  { width: 320, height: 640 },
  { width: 844, height: 390 },
  { width: 390, height: 844 },
];

/**
 * What is wrong with the screen once its text is twice as large, each in words; the screen is left
 * as it was.
 *
 * @param back the size to come back to
 * @param settle lets the app look at its new size, where it needs its clock for that
 */
export async function largeTextFaults(
  app: AppWindow,
  back: Size,
  settle: () => Promise<void> = async () => {},
): Promise<readonly string[]> {
  const faults: string[] = [];
  await rootSize(app, '200%');
  for (const size of SIZES) {
    await app.resize(size);
    await settle();
    // A field of one line scrolls within itself to its caret, as with any longer text at any size.
    const look = async (): Promise<readonly string[]> => {
      const cut = (await cutOff(app)).filter((fault) => !fault.startsWith('sideways: INPUT'));
      return [...cut, ...(await overlaid(app)), ...(await outOfReach(app))];
    };
    let found = await look();
    // A drawing follows its new width a moment later; what is wrong for good stays wrong.
    for (let again = 0; found.length > 0 && again < 5; again += 1) {
      await new Promise((later) => setTimeout(later, 100));
      await settle();
      found = await look();
    }
    faults.push(...found.map((fault) => `200 % at ${size.width} x ${size.height}: ${fault}`));
  }
  await rootSize(app, '');
  await app.resize(back);
  await settle();
  return faults;
}

/** @param css the root's own font size; nothing leaves it to the style sheet */
const rootSize = (app: AppWindow, css: string): Promise<void> =>
  app.evaluate((size: string) => {
    document.documentElement.style.fontSize = size;
  }, css);
