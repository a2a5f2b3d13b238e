const CONTROL = 'button, input, select, textarea, summary, [tabindex]';

/** What was used last, and where to go if it vanishes. */
interface Used {
  readonly thing: Element;
  /** What stands before it in its own part of the screen, the nearest last. */
  readonly before: readonly Element[];
}

/**
 * Keeps the focus on the screen. What is tapped in a run often goes with its own step: the browser
 * then drops the focus to the page, where a keyboard has lost its place and a reader of the screen
 * says nothing. It goes to the nearest control before it in the same section instead, and where
 * there is none to the heading, which is so read out. A focus that stands is never taken.
 *
 * @returns ends it.
 */
export function keepFocus(): () => void {
  let used: Used | null = null;
  const onUse = ({ target }: Event): void => {
    // WebKit gives a tapped button no focus, but its click. A click falls on the icon in it, too.
    const thing = target instanceof Element ? target.closest(CONTROL) : null;
    if (thing === null || used?.thing === thing) return;
    const around = [...(thing.closest('section')?.querySelectorAll(CONTROL) ?? [])];
    used = { thing, before: around.slice(0, Math.max(0, around.indexOf(thing))) };
  };
  const isLost = (): boolean => document.activeElement === document.body;
  const toHeading = (): void =>
    document.querySelector<HTMLElement>('main h1')?.focus({ preventScroll: true });
  const mend = (): void => {
    if (!isLost() || !used || used.thing.isConnected) return;
    const near = used.before.findLast(({ isConnected }) => isConnected);
    // Under an open sheet or the dark screen this does nothing; it is made up for when they go.
    if (near instanceof HTMLElement) near.focus();
    else toHeading();
  };
  // What was tapped to come here is gone. Nothing was when the page has only just been loaded.
  if (isLost() && navigator.userActivation?.hasBeenActive) toHeading();
  const changes = new MutationObserver(mend);
  changes.observe(document.body, { childList: true, subtree: true });
  addEventListener('focusin', onUse);
  addEventListener('click', onUse, true);
  return () => {
    changes.disconnect();
    removeEventListener('focusin', onUse);
    removeEventListener('click', onUse, true);
  };
}
