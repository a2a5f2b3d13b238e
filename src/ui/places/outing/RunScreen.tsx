import { useEffect, useState } from 'preact/hooks';
import type { Journal, Served } from '../../../app/journal.ts';
import type { Step } from '../../../outing/step.ts';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { BusyStep } from './BusyStep.tsx';
import { DialStep } from './DialStep.tsx';
import { EndedStep } from './EndedStep.tsx';
import { ExposeStep } from './ExposeStep.tsx';
import { FocusStep } from './FocusStep.tsx';
import { ListDoneStep } from './ListDoneStep.tsx';
import { MountStep } from './MountStep.tsx';
import { NotSavedNotice } from './NotSavedNotice.tsx';
import { OpenStep } from './OpenStep.tsx';
import { PausedStep } from './PausedStep.tsx';
import { RestStep } from './RestStep.tsx';
import { SetUp } from './SetUp.tsx';
import { safetyNotice } from './safetyParts.ts';
import { useMainAct } from './useMainAct.ts';
import { type Run, RunContext } from './useRun.ts';
import { WindowNotice } from './WindowNotice.tsx';

/** A write that takes longer than this is said to be going on (field practice: the eye forgives less). */
const SAY_WRITING_AFTER_MS = 300;

/** The outing in hand, at the step it asks for. */
export function RunScreen() {
  const { run: desk } = useApp();
  const { outing: words } = useWords();
  const [said, setSaid] = useState<string | null>(null);
  const state = desk.state.value;
  const step = desk.step.value;
  const journal = desk.journal.value;
  useMainAct();
  if (!state || !step || !journal) return null;
  const answered = (served: Served, done: string | null = null): Served => {
    setSaid(served.how === 'refused' ? words.refused(served.rule) : done);
    return served;
  };
  const last = journal.undoable.value[0];
  const run: Run = {
    desk,
    state,
    tap: async (tap) => answered(await desk.tap(tap)),
    undo: async () => answered(await desk.undo(), last ? words.undone(words.did[last.kind]) : null),
  };
  return (
    <RunContext.Provider value={run}>
      <div class="run">
        <div class="run-said" role="status">
          <Recording journal={journal} />
          {said && <p>{said}</p>}
          {desk.cameBack.value && last && <p>{words.cameBack(words.did[last.kind])}</p>}
          {desk.savedAgain.value !== null && <p>{words.savedAgain(desk.savedAgain.value)}</p>}
          {desk.mustReload.value && <p>{words.mustReload}</p>}
        </div>
        <div class="run-notices">
          <WindowNotice />
          <NotSavedNotice />
          <safetyNotice.Content />
        </div>
        <StepScreen step={step} />
      </div>
    </RunContext.Provider>
  );
}

/** Says that a tap is being written. By itself, as drawing the whole screen would hold the write up. */
function Recording({ journal }: { readonly journal: Journal }) {
  const { outing: words } = useWords();
  const lasts = useLasting(journal.writing.value, SAY_WRITING_AFTER_MS);
  return lasts ? <p>{words.writing}</p> : null;
}

function StepScreen({ step }: { readonly step: Step }) {
  switch (step.kind) {
    case 'set-up':
      return <SetUp />;
    case 'mount':
      return <MountStep step={step} />;
    case 'focus':
      return <FocusStep step={step} />;
    case 'dial':
      return <DialStep step={step} />;
    case 'rest':
      return <RestStep step={step} />;
    case 'busy':
      return <BusyStep step={step} />;
    case 'expose':
      return <ExposeStep step={step} />;
    case 'open':
      return <OpenStep step={step} />;
    case 'paused':
      return <PausedStep />;
    case 'list-done':
      return <ListDoneStep />;
    case 'ended':
      return <EndedStep />;
    default:
      return step satisfies never;
  }
}

/** True once `value` has been true for `ms` without a break. */
function useLasting(value: boolean, ms: number): boolean {
  const [lasts, setLasts] = useState(false);
  useEffect(() => {
    if (!value) {
      setLasts(false);
      return;
    }
    const timer = setTimeout(() => setLasts(true), ms);
    return () => clearTimeout(timer);
  }, [value, ms]);
  return lasts;
}
