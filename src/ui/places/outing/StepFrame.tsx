import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { PlannedFrame } from '../../../plan/frame.ts';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { keysUsed, mayPress } from '../../shell/mainAct.ts';
import { NightSwitch } from '../../shell/NightSwitch.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { LightLine } from './LightLine.tsx';
import { Cost } from './laterCost.tsx';
import { MoreSheet } from './MoreSheet.tsx';
import { NextTwo } from './NextTwo.tsx';
import { RestReminder } from './RestReminder.tsx';
import { RigName } from './RigName.tsx';
import { SideActs } from './SideActs.tsx';
import { useRun } from './useRun.ts';
import { VerdictStrip } from './VerdictStrip.tsx';

interface Props {
  /** The name of the step, read out when it changes; takes the focus of what went with the last step. */
  readonly title: string;
  /** The frame in hand; null where there is none. */
  readonly frame: PlannedFrame | null;
  /** Which try of the frame this is, where it has begun. */
  readonly attempt?: number;
  /** The one act of this step, in reach of the thumb. */
  readonly act?: ComponentChildren;
  /** Further acts of this step, above the one. */
  readonly others?: ComponentChildren;
  readonly children: ComponentChildren;
}

/**
 * The frame of every step of the run. What is only read stands at the top;
 * what the thumb needs stands at the foot: side acts, then the one act.
 */
export function StepFrame(props: Props) {
  const { title, frame, attempt, act, others, children } = props;
  const { state, desk } = useRun();
  const { outing: words, cues: say } = useWords();
  const [more, setMore] = useState(false);
  // Before it is asked for: nothing may move under the thumb.
  useEffect(Cost.fetch, []);
  const set = state.plan.sets.find(({ id }) => id === frame?.set);
  return (
    <div class="step">
      <div class="step-scroll">
        <header class="step-head">
          <div class="line">
            {frame && (
              // Side by side the same step goes from rig to rig: then only this is new.
              <span aria-live="polite">
                <RigName gear={state.gear} rig={frame.rig} />
              </span>
            )}
            <h1 aria-live="polite" tabIndex={-1}>
              {title}
            </h1>
            <NightSwitch />
          </div>
          {set && <p class="intent">{set.intent}</p>}
          {frame && <Whereabouts frame={frame} attempt={attempt} />}
        </header>
        {frame && <NextTwo after={frame} />}
        {frame && <LightLine />}
        <RestReminder />
        <div class="step-body">{children}</div>
      </div>
      <footer class="step-foot">
        <VerdictStrip short={Boolean(others)} />
        {others && <div class="side-acts">{others}</div>}
        <div class="side-acts">
          <SideActs />
          <Button field onPress={() => setMore(true)}>
            <Icon name="more" />
            {words.more}
          </Button>
        </div>
        {keysUsed.value && mayPress(desk.step.value) && <p class="key-hint">{say.keyHint}</p>}
        {act}
      </footer>
      {more && <MoreSheet onClose={() => setMore(false)} />}
    </div>
  );
}

interface WhereaboutsProps {
  readonly frame: PlannedFrame;
  readonly attempt: number | undefined;
}

/** Set, pass and repeat of a frame, whether the screen stays on and the cues are heard. */
function Whereabouts({ frame, attempt }: WhereaboutsProps) {
  const { state, desk } = useRun();
  const { cues } = useApp();
  const { outing: words, cues: say } = useWords();
  const { silent, sound } = cues.choices.value;
  const place = state.plan.sets.findIndex(({ id }) => id === frame.set);
  const set = state.plan.sets[place];
  if (!set) return null;
  const light =
    set.kind === 'capped-dark'
      ? state.plan.sets.slice(0, place).findLast(({ kind }) => kind !== 'capped-dark')
      : set;
  const passes = light?.passes ?? set.passes;
  const tries = state.made.filter(({ planned }) => planned.key === frame.key).length;
  const parts = [
    words.setOf(place + 1, state.plan.sets.length),
    passes > 1 ? words.passOf(frame.pass, passes) : null,
    set.repeats > 1 ? words.repeatOf(frame.repeat, set.repeats) : null,
    (attempt ?? tries + 1) > 1 ? words.retake : null,
    words.framesLeft(state.queue.length),
    say.screen[desk.screenLock.value],
    silent ? say.silent : null,
    sound && !silent && cues.sound.value === 'needs-tap' ? say.soundNeedsTap : null,
  ];
  return (
    <>
      <p class="where">{parts.filter(Boolean).join(' · ')}</p>
      {set.kind === 'capped-dark' && <p class="cap">{words.cappedDark}</p>}
      {/* At a rest the body is off, and its countdown needs the room. */}
      {set.kind === 'capped-series' && desk.step.value?.kind !== 'rest' && (
        <p class="cap">{words.cappedSeries}</p>
      )}
      {set.kind === 'flat' && <p class="cap">{words.flat}</p>}
    </>
  );
}
