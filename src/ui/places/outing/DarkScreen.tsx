import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { OpenFrame } from '../../../outing/step.ts';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { useRun } from './useRun.ts';

/** The screen stays lit for this long after a touch while a frame is exposing (our choice). */
const LIT_S = 6;
/** A hand that must close the shutter finds the screen lit this long before (our choice). */
const LIT_BEFORE_END_S = 12;
/**
 * A tap that was meant for the dark screen must not fall on what has just come to light: the bounce
 * of a finger, 400 ms, and one look of the clock (our choice).
 */
const SHIELD_MS = 600;

/**
 * Black over everything, sheets too, while a frame exposes, with one thin line of progress:
 * a lit screen spoils the eye and can spill into the frame. The first tap or key only
 * wakes it (keys: `shell/mainActKeys.ts`). It lights by itself before a hand is needed, and is lit when the page
 * comes back into sight: what is true has to be seen at once.
 */
export function DarkScreen({ frames }: { readonly frames: readonly OpenFrame[] }) {
  const { desk } = useRun();
  const { monoMs } = desk.now.value;
  const [litMs, setLitMs] = useState(monoMs);
  const lastDarkMs = useRef(Number.NEGATIVE_INFINITY);
  const exposing = frames.filter(
    ({ phase }) => phase.phase === 'running' || phase.phase === 'held-open',
  );
  const dark =
    exposing.length > 0 &&
    exposing.every(({ phase }) => openFor(phase) >= LIT_S) &&
    !frames.some(({ phase }) => needsHand(phase)) &&
    monoMs - litMs >= LIT_S * 1000;
  if (dark) lastDarkMs.current = monoMs;
  const shielded = monoMs - lastDarkMs.current < SHIELD_MS;
  const covered = useRef(shielded);
  covered.current = shielded;
  const light = useRef(() => setLitMs(desk.now.peek().monoMs)).current;
  useEffect(() => {
    const touched = () => {
      // On the dark screen the finger must first come up: what lies below would get its tap.
      if (!covered.current) light();
    };
    addEventListener('pointerdown', touched);
    addEventListener('keydown', light);
    document.addEventListener('visibilitychange', light);
    return () => {
      removeEventListener('pointerdown', touched);
      removeEventListener('keydown', light);
      document.removeEventListener('visibilitychange', light);
    };
  }, [light]);
  if (!shielded) return null;
  const done = Math.max(...frames.map(({ phase }) => share(phase)));
  return <Cover done={dark ? done : null} onWake={light} />;
}

interface CoverProps {
  /** How much of the exposure is over, 0 to 1; null = nothing is to be seen, only taps are kept off. */
  readonly done: number | null;
  readonly onWake: () => void;
}

/** A modal dialog, as only that lies over an open sheet. */
function Cover({ done, onWake }: CoverProps) {
  const { goDark } = useApp();
  const { outing: words } = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const { current } = dialog;
    current?.showModal();
    return () => current?.close();
  }, []);
  const dark = done !== null;
  useLayoutEffect(() => {
    goDark(dark);
    return () => goDark(false);
  }, [dark, goDark]);
  return (
    <dialog
      ref={dialog}
      class={dark ? 'dark-screen' : 'dark-screen lit'}
      aria-label={words.step.open}
      onCancel={(event) => event.preventDefault()}
    >
      {dark && (
        <button type="button" aria-label={words.open.wake} onClick={onWake}>
          <span class="thin" style={{ inlineSize: `${done * 100}%` }} />
        </button>
      )}
    </dialog>
  );
}

/** How long the shutter has been open, s; none if it is not. */
const openFor = (phase: OpenFrame['phase']): number =>
  phase.phase === 'running' || phase.phase === 'held-open' ? phase.ofS - phase.leftS : 0;

function needsHand(phase: OpenFrame['phase']): boolean {
  if (phase.phase === 'held-open') return phase.leftS < LIT_BEFORE_END_S;
  return phase.phase === 'to-record' || phase.phase === 'unknown';
}

const share = (phase: OpenFrame['phase']): number =>
  phase.phase === 'running' || phase.phase === 'held-open'
    ? Math.max(0, Math.min(1, openFor(phase) / phase.ofS))
    : 0;
