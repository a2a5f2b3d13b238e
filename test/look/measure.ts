import type { AppWindow } from '../journeys/driver/phone.ts';

/** The strongest green or blue of any pixel on the screen now, 0 to 255. */
export async function strongestGreenOrBlue(window: AppWindow): Promise<number> {
  const png = Buffer.from(await window.picture()).toString('base64');
  return window.evaluate(async (content: string) => {
    const image = new Image();
    image.src = `data:image/png;base64,${content}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = image.width;
    canvas.height = image.height;
    const brush = canvas.getContext('2d');
    if (brush === null) throw new Error('no canvas to look at the picture');
    brush.drawImage(image, 0, 0);
    const { data } = brush.getImageData(0, 0, canvas.width, canvas.height);
    let strongest = 0;
    let red = 0;
    for (let at = 0; at < data.length; at += 4) {
      red = Math.max(red, data[at] ?? 0);
      strongest = Math.max(strongest, data[at + 1] ?? 0, data[at + 2] ?? 0);
    }
    if (red < 0xb7) throw new Error('nothing is drawn on this screen');
    return strongest;
  }, png);
}

/** What runs off the screen to the side, by what it says. Empty where nothing does. */
export const cutOff = (window: AppWindow): Promise<readonly string[]> =>
  window.evaluate(
    () =>
      [...document.querySelectorAll('body *')]
        .filter((element) => {
          const { right, left, width } = element.getBoundingClientRect();
          const hidden =
            width <= 1 ||
            element.closest('.heard') ||
            !element.checkVisibility({ visibilityProperty: true });
          return !hidden && (right > innerWidth + 1 || left < -1);
        })
        .map((element) => `${element.tagName} ${element.textContent.slice(0, 40)}`),
    undefined,
  );

/** What is to be touched and is smaller than `least` CSS pixels either way, with its size. */
export const tooSmall = (window: AppWindow, least: number): Promise<readonly string[]> =>
  window.evaluate((limit: number) => {
    // A choice and a tick are touched anywhere on their box.
    const targets = 'button, textarea, input[type=text], .choice label, .tick';
    return [...document.querySelectorAll(targets)]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }))
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && Math.min(box.width, box.height) < limit - 0.5)
      .map(
        ({ element, box }) =>
          `${element.getAttribute('aria-label') ?? element.textContent} ${box.width} x ${box.height}`,
      );
  }, least);
