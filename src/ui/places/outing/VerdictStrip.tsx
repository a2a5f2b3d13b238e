import { VERDICTS } from '../../../outing/events.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { rigText } from './RigName.tsx';
import { useRun } from './useRun.ts';

/**
 * What the last frame looks like, while its rig still stands. One tap; all but
 * good offer a retake at once. Gone when the next frame starts.
 */
export function VerdictStrip() {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  const last = state.made.at(-1);
  if (!last?.recordedAt || state.open.length > 0 || state.phase !== 'running') return null;
  const { rig, key } = last.planned;
  if (!state.mounted.includes(rig)) return null;
  const waits = state.queue.some((frame) => frame.key === key);
  return (
    <fieldset class="verdicts">
      <legend>{words.verdict.ask(rigText(state.gear, rig))}</legend>
      <div class="verdict-row">
        {VERDICTS.map((verdict) => (
          <button
            key={verdict}
            type="button"
            class="verdict"
            aria-pressed={last.verdict === verdict}
            onClick={() => void tap({ tap: 'judge', made: last.id, verdict })}
          >
            {words.verdict.words[verdict]}
          </button>
        ))}
      </div>
      {last.verdict && last.verdict !== 'good' && !waits && (
        <Button field onPress={() => void tap({ tap: 'retake', frame: key })}>
          {words.verdict.retake}
        </Button>
      )}
    </fieldset>
  );
}
