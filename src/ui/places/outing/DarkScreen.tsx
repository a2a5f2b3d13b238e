import { useEffect, useState } from 'preact/hooks';
import type { OpenFrame } from '../../../outing/step.ts';
import { useWords } from '../../words/words.ts';

/** The screen stays lit for this long after a touch while a frame is exposing (our choice). */
const LIT_MS = 6000;
/** A hand that must close the shutter finds the screen lit this long before (our choice). */
const LIT_BEFORE_END_S = 12;

/**
 * Black over everything while a frame exposes, with one thin line of progress:
 * a lit screen spoils the eye and can spill into the frame. The first tap only
 * wakes it. It lights by itself before a hand is needed.
 */
export function DarkScreen({ frames }: { readonly frames: readonly OpenFrame[] }) {
  const { outing: words } = useWords();
  const [dark, setDark] = useState(false);
  const [touches, setTouches] = useState(0);
  const handSoon = frames.some(({ phase }) => needsHand(phase));
  const exposing = frames.some(
    ({ phase }) => phase.phase === 'running' || phase.phase === 'held-open',
  );
  // Each touch starts the wait anew.
  useEffect(() => {
    setDark(false);
    if (handSoon || !exposing) return;
    const timer = setTimeout(() => setDark(true), LIT_MS);
    return () => clearTimeout(timer);
  }, [handSoon, exposing, touches]);
  useEffect(() => {
    const touched = () => setTouches((count) => count + 1);
    addEventListener('pointerdown', touched);
    addEventListener('keydown', touched);
    return () => {
      removeEventListener('pointerdown', touched);
      removeEventListener('keydown', touched);
    };
  }, []);
  if (!dark) return null;
  const done = Math.max(...frames.map(({ phase }) => share(phase)));
  return (
    <button type="button" class="dark-screen" aria-label={words.open.wake}>
      <span class="thin" style={{ inlineSize: `${done * 100}%` }} />
    </button>
  );
}

function needsHand(phase: OpenFrame['phase']): boolean {
  if (phase.phase === 'held-open') return phase.leftS < LIT_BEFORE_END_S;
  return phase.phase === 'to-record' || phase.phase === 'unknown';
}

const share = (phase: OpenFrame['phase']): number =>
  phase.phase === 'running' || phase.phase === 'held-open'
    ? Math.max(0, Math.min(1, 1 - phase.leftS / phase.ofS))
    : 0;
