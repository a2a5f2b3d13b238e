import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { RigId } from '../../../gear/ids.ts';
import { clockFrameText, outingCode } from '../../../outing/clockFrame.ts';
import type { OutingId } from '../../../outing/ids.ts';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Section } from '../../parts/Section.tsx';
import { NightSwitch } from '../../shell/NightSwitch.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useClockFrameWords } from '../../words/clockFrame.ts';
import { useWords } from '../../words/words.ts';
import { codeDrawing } from './codeDrawing.ts';
import { NotSavedNotice } from './NotSavedNotice.tsx';
import { RigName } from './RigName.tsx';
import { useRun } from './useRun.ts';
import './clockFrame.css';

/**
 * Offers the clock, never asks for it. It stands before the first frame and after the last; in the
 * sheet 'More' it would be one of eighteen lines for something that no frame waits for.
 */
export function ClockOffer() {
  const { state } = useRun();
  const { outing: words } = useWords();
  const say = useClockFrameWords();
  const [shown, setShown] = useState(false);
  const { rigs } = state.plan;
  const done = rigs.filter((rig) => state.clockFrames.some((frame) => frame.rig === rig));
  return (
    <Section title={say.title} act={words.setUp.done(done.length, rigs.length)}>
      <p>{say.why}</p>
      <Button field onPress={() => setShown(true)}>
        {say.show}
      </Button>
      {shown && <ClockFrame onClose={() => setShown(false)} />}
    </Section>
  );
}

/**
 * The phone's clock over the whole screen. On it is only what a picture of it has to tell, and by
 * night nothing else is lit; below it what a hand needs.
 */
function ClockFrame({ onClose }: { readonly onClose: () => void }) {
  const { navigation } = useApp();
  const { state, desk } = useRun();
  const { shell } = useWords();
  const say = useClockFrameWords();
  const dialog = useRef<HTMLDialogElement>(null);
  const close = useRef(onClose);
  close.current = onClose;
  useLayoutEffect(() => {
    const { current } = dialog;
    current?.showModal();
    return () => current?.close();
  }, []);
  useEffect(() => navigation.hold(() => close.current()), [navigation]);
  // After the end of an outing nothing else moves the clock.
  useEffect(() => desk.showClock(), [desk]);
  const [refused, setRefused] = useState<string | null>(null);
  return (
    <dialog
      ref={dialog}
      class="clock-frame"
      aria-label={say.title}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div class="step">
        <div class="step-scroll">
          <div class="clock-face">
            <Now />
            <p class="code-letters">{outingCode(state.outing)}</p>
            <Code outing={state.outing} />
          </div>
        </div>
        <footer class="step-foot">
          <NotSavedNotice />
          {refused && <Notice urgent>{refused}</Notice>}
          <div class="clock-rigs">
            {state.plan.rigs.map((rig) => (
              <Photographed key={rig} rig={rig} onServed={setRefused} />
            ))}
          </div>
          <div class="side-acts">
            <Button field onPress={onClose}>
              <Icon name="back" />
              {shell.back}
            </Button>
            <TakeBack onServed={setRefused} />
            <NightSwitch />
          </div>
        </footer>
      </div>
    </dialog>
  );
}

/**
 * The second that runs. It comes up to a fifth of a second late, as the app looks at its clock five
 * times a second; a body writes whole seconds, so that half a second is in doubt anyway.
 */
function Now() {
  const { desk } = useRun();
  const { format } = useWords();
  const say = useClockFrameWords();
  const { wallMs, offsetMin } = desk.now.value;
  return (
    <>
      <p class="clock-now" role="timer" aria-label={say.clock}>
        {format.timeFine(wallMs, offsetMin)}
      </p>
      <p class="clock-date">{format.date(wallMs, offsetMin)}</p>
    </>
  );
}

/**
 * Dark on light by night too. ISO/IEC 18004 allows the reverse, but a decoder of general use (zbarimg
 * 0.23.92, which turns its pictures to grey) read the grey of red on black only when told to try the
 * reverse, and black on red at once, on screenshots of this screen in both themes. The light squares
 * are #b70000: with their quiet zone they shine an eighth more than the dark ones would in #ff0000.
 */
function Code({ outing }: { readonly outing: OutingId }) {
  const say = useClockFrameWords();
  const text = clockFrameText(outing);
  const { side, path } = useMemo(() => codeDrawing(text), [text]);
  return (
    <svg class="clock-code" viewBox={`0 0 ${side} ${side}`} role="img" aria-label={say.code(text)}>
      <path d={path} />
    </svg>
  );
}

interface Serving {
  /** Told why a tap was refused; null once one was served. */
  readonly onServed: (refused: string | null) => void;
}

/** Says that a rig has photographed the clock; again if the picture was no good, and the newest counts. */
function Photographed({ rig, onServed }: Serving & { readonly rig: RigId }) {
  const { state, tap } = useRun();
  const { outing: words, format } = useWords();
  const say = useClockFrameWords();
  const at = state.clockFrames.findLast((frame) => frame.rig === rig)?.at;
  const when = at ? say.at(format.timeFine(at.wallMs, at.offsetMin)) : say.notYet;
  const press = async () => {
    const served = await tap({ tap: 'clock-framed', rig });
    onServed(served.how === 'refused' ? words.refused(served.rule) : null);
  };
  return (
    <Button field onPress={() => void press()}>
      {say.with} <RigName gear={state.gear} rig={rig} />{' '}
      <span class="when">
        {at && <Icon name="tick" />}
        {when}
      </span>
    </Button>
  );
}

/** Takes back a clock frame, and nothing that came before the clock was shown. */
function TakeBack({ onServed }: Serving) {
  const { desk, undo } = useRun();
  const { outing: words } = useWords();
  const newest = desk.journal.value?.undoable.value[0];
  const press = async () => {
    const served = await undo();
    onServed(served.how === 'refused' ? words.refused(served.rule) : null);
  };
  return (
    <Button field disabled={newest?.kind !== 'clock-framed'} onPress={() => void press()}>
      <Icon name="undo" />
      {words.undo}
    </Button>
  );
}
