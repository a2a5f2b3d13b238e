import type { Page } from './page.ts';

/** Says when to look at the clock and paint again; never what time it is. */
export interface Ticker {
  /**
   * Paints at once, then about five times a second while the page is visible, and
   * at once at each return.
   *
   * @returns ends it.
   */
  start(paint: () => void): () => void;
}

/** Often enough for a countdown in whole seconds to change on time to the eye. */
const EVERY_MS = 200;

export const pageTicker = (page: Page): Ticker => ({
  start(paint) {
    let timer: ReturnType<typeof setInterval> | undefined;
    const rest = (): void => {
      clearInterval(timer);
      timer = undefined;
    };
    const look = (): void => {
      if (!page.visible) return;
      timer ??= setInterval(paint, EVERY_MS);
      paint();
    };
    const endReturn = page.onReturn(look);
    const endHidden = page.onHidden(rest);
    look();
    return () => {
      endReturn();
      endHidden();
      rest();
    };
  },
});
