import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { PlannedFrame } from '../../../plan/frame.ts';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { NightSwitch } from '../../shell/NightSwitch.tsx';
import { useWords } from '../../words/words.ts';
import { MoreSheet } from './MoreSheet.tsx';
import { NextTwo } from './NextTwo.tsx';
import { RigName } from './RigName.tsx';
import { SideActs } from './SideActs.tsx';
import { useRun } from './useRun.ts';
import { VerdictStrip } from './VerdictStrip.tsx';

interface Props {
  /** The name of the step, read out when it changes. */
  readonly title: string;
  /** The frame in hand; null where there is none. */
  readonly frame: PlannedFrame | null;
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
export function StepFrame({ title, frame, act, others, children }: Props) {
  const { state, desk } = useRun();
  const { outing: words } = useWords();
  const [more, setMore] = useState(false);
  return (
    <div class="step">
      <div class="step-scroll">
        <header class="step-head">
          <div class="line">
            <h1 aria-live="polite">{title}</h1>
            {frame && <RigName gear={state.gear} rig={frame.rig} />}
            <NightSwitch />
          </div>
          {frame && <Whereabouts frame={frame} />}
          <ScreenMark lock={desk.screenLock.value} />
        </header>
        <NextTwo after={frame} />
        <div class="step-body">{children}</div>
      </div>
      <footer class="step-foot">
        <VerdictStrip />
        {others && <div class="side-acts">{others}</div>}
        <div class="side-acts">
          <SideActs />
          <Button field onPress={() => setMore(true)}>
            <Icon name="more" />
            {words.more}
          </Button>
        </div>
        {act}
      </footer>
      {more && <MoreSheet onClose={() => setMore(false)} />}
    </div>
  );
}

/** Set, intent, pass and repeat of a frame. */
function Whereabouts({ frame }: { readonly frame: PlannedFrame }) {
  const { state } = useRun();
  const { outing: words } = useWords();
  const place = state.plan.sets.findIndex(({ id }) => id === frame.set);
  const set = state.plan.sets[place];
  if (!set) return null;
  const light =
    set.kind === 'capped-dark'
      ? state.plan.sets.slice(0, place).findLast(({ kind }) => kind !== 'capped-dark')
      : set;
  const passes = light?.passes ?? set.passes;
  const retake = state.made.some(({ planned }) => planned.key === frame.key);
  const parts = [
    words.setOf(place + 1, state.plan.sets.length),
    passes > 1 ? words.passOf(frame.pass, passes) : null,
    set.repeats > 1 ? words.repeatOf(frame.repeat, set.repeats) : null,
    retake ? words.retake : null,
  ];
  return (
    <>
      <p class="intent">{set.intent}</p>
      <p class="where">{parts.filter(Boolean).join(' · ')}</p>
      {set.kind === 'capped-dark' && <p class="cap">{words.cappedDark}</p>}
      {set.kind === 'flat' && <p class="cap">{words.flat}</p>}
    </>
  );
}

function ScreenMark({ lock }: { readonly lock: 'held' | 'not-held' | 'unsupported' }) {
  const { outing: words } = useWords();
  return <p class="screen-mark">{lock === 'held' ? words.screenKeptOn : words.screenNotKept}</p>;
}
