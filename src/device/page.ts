import { Listeners } from './listeners.ts';

/** Whether the page is looked at. */
export interface Page {
  readonly visible: boolean;
  /**
   * Called at each return into sight, by whatever event the system sends. May be
   * called several times for one return.
   *
   * @returns ends the listening.
   */
  onReturn(listener: () => void): () => void;
  /** @returns ends the listening. */
  onHidden(listener: () => void): () => void;
}

/** Watches the browser's page. */
export function watchPage(
  page: Pick<Document, 'visibilityState' | 'addEventListener'>,
  frame: Pick<Window, 'addEventListener'>,
): Page {
  const returned = new Listeners<[]>();
  const hidden = new Listeners<[]>();
  // A browser that does not say is taken to be looked at.
  const visible = (): boolean => page.visibilityState !== 'hidden';
  const look = (): void => {
    if (visible()) returned.tell();
    else hidden.tell();
  };
  page.addEventListener('visibilitychange', look);
  // No single event is sent by every phone after every kind of sleep.
  page.addEventListener('resume', look);
  frame.addEventListener('pageshow', look);
  frame.addEventListener('focus', look);
  return {
    get visible() {
      return visible();
    },
    onReturn: (listener) => returned.add(listener),
    onHidden: (listener) => hidden.add(listener),
  };
}
