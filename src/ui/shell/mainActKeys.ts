import { computed, effect } from '@preact/signals';
import type { App } from '../../app/app.ts';
import { browserHeadset, givesHeadset } from '../../app/headset.ts';
import { keysUsed, mayPress } from './mainAct.ts';

/**
 * What presses the one act: a keyboard's large keys, and what presenter remotes send for 'on'. Not
 * the arrow down, which some remotes send too: with it a keyboard scrolls.
 */
export const KEYS: readonly string[] = ['Enter', ' ', 'PageDown', 'ArrowRight', 'MediaPlayPause'];

/** A second press this soon is a bounce, as with a finger (common practice, no source). */
const BOUNCE_MS = 400;

const DARK = '.dark-screen';
/** Has the focus when a step is new (`keptFocus.ts`), and does nothing by itself. */
const HEADING = '.step-head h1';
const FIELD = 'input, textarea, select, [contenteditable]';

/**
 * Lets keys, presenter remotes and the button of a headset press the one act of a run, as far as
 * the settings say so.
 *
 * @returns ends it.
 */
export function listenForMainAct({ run, preferences }: App): () => void {
  const keys = computed(() => preferences.current.value.keys);
  const headset = computed(() => preferences.current.value.headset && run.underWay.value);
  const act = () => (mayPress(run.step.peek()) ? actOnScreen() : null);
  let deaf = false;
  const press = (): void => {
    if (deaf) return;
    deaf = true;
    setTimeout(() => {
      deaf = false;
    }, BOUNCE_MS);
    // As with a finger, the first press only wakes a dark screen.
    const dark = document.querySelector(DARK);
    if (dark) dark.querySelector('button')?.click();
    else act()?.click();
  };
  const ends = [
    effect(() => (keys.value ? listenToKeys(act, press) : undefined)),
    effect(() => (headset.value ? holdWhileTapped(press) : undefined)),
  ];
  return () => {
    for (const end of ends) end();
  };
}

/** The one act on the screen, unless a sheet lies over it. */
const actOnScreen = (): HTMLButtonElement | null =>
  document.querySelector(`dialog:modal:not(${DARK})`)
    ? null
    : document.querySelector<HTMLButtonElement>('.run .step-foot > .button.act');

function listenToKeys(act: () => HTMLButtonElement | null, press: () => void): () => void {
  // Whoever walks the screen with Tab presses what the focus is on.
  let walking = false;
  const onKey = (event: KeyboardEvent) => {
    const { key } = event;
    if (key === 'Tab') walking = true;
    if (!KEYS.includes(key) || event.ctrlKey || event.altKey || event.metaKey) return;
    const focus = document.activeElement;
    const onHeading = focus?.matches(HEADING) ?? false;
    if ((walking && focus !== document.body && !onHeading) || focus?.matches(FIELD)) return;
    if (!act()) return;
    event.preventDefault();
    // A button that was tapped last has the focus, and would take the release of the space bar.
    if (focus instanceof HTMLElement && !onHeading) focus.blur();
    if (event.repeat) return;
    keysUsed.value = true;
    press();
  };
  const onTouch = () => {
    walking = false;
  };
  addEventListener('keydown', onKey, true);
  addEventListener('pointerdown', onTouch, true);
  return () => {
    removeEventListener('keydown', onKey, true);
    removeEventListener('pointerdown', onTouch, true);
  };
}

/** Holds the button of a headset, anew with each tap: without one a browser may refuse it. */
export function holdWhileTapped(onPress: () => void): (() => void) | undefined {
  if (!givesHeadset()) return;
  const { hold, letGo } = browserHeadset(onPress);
  hold();
  addEventListener('click', hold);
  return () => {
    removeEventListener('click', hold);
    letGo();
  };
}
