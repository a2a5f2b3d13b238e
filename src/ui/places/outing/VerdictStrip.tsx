import { useState } from 'preact/hooks';
import { VERDICTS, type Verdict } from '../../../outing/events.ts';
import type { MadeId } from '../../../outing/ids.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { rigText } from './RigName.tsx';
import { useRun } from './useRun.ts';

/** Below this height five verdicts and three dials do not fit together, nor beside another act. */
const LOW = matchMedia('(max-height: 760px)');

/**
 * What the last frame looks like, while its rig still stands. One tap; all but
 * good offer a retake at once. It folds once it was said, and is gone when the
 * next frame starts.
 */
export function VerdictStrip({ short }: { readonly short: boolean }) {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  const [opened, setOpened] = useState<MadeId | null>(null);
  const last = state.made.at(-1);
  if (!last?.recordedAt || state.open.length > 0 || state.phase !== 'running') return null;
  const { rig, key } = last.planned;
  if (!state.mounted.includes(rig)) return null;
  const open = opened === last.id;
  const shown =
    open || (last.verdict === null && !short && !LOW.matches) ? VERDICTS : shortList(last.verdict);
  const waits = state.queue.some((frame) => frame.key === key);
  const judge = async (verdict: Verdict) => {
    setOpened(null);
    await tap({ tap: 'judge', made: last.id, verdict });
  };
  return (
    <fieldset class="verdicts">
      <legend>{words.verdict.ask(rigText(state.gear, rig))}</legend>
      <div class="verdict-row">
        {shown.map((verdict) => (
          <button
            key={verdict}
            type="button"
            class="verdict"
            aria-pressed={last.verdict === verdict}
            onClick={() => void judge(verdict)}
          >
            {words.verdict.words[verdict]}
          </button>
        ))}
        {shown.length < VERDICTS.length && (
          <button type="button" class="verdict" onClick={() => setOpened(last.id)}>
            {last.verdict === null ? words.verdict.notGood : words.verdict.other}
          </button>
        )}
        {last.verdict && last.verdict !== 'good' && !waits && !open && (
          <Button field onPress={() => void tap({ tap: 'retake', frame: key })}>
            {words.verdict.retake}
          </Button>
        )}
      </div>
    </fieldset>
  );
}

const shortList = (said: Verdict | null): readonly Verdict[] => [said ?? 'good'];
