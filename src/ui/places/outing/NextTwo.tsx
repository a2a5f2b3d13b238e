import type { PlannedFrame } from '../../../plan/frame.ts';
import { useWords } from '../../words/words.ts';
import { settingsLine } from './marks.ts';
import { RigName } from './RigName.tsx';
import { useRun } from './useRun.ts';

/** The next two frames after the one in hand, always in sight. */
export function NextTwo({ after }: { readonly after: PlannedFrame }) {
  const { state } = useRun();
  const words = useWords();
  const waiting = state.queue.filter(({ key }) => key !== after.key).slice(0, 2);
  return (
    <section class="next-two" aria-label={words.outing.next}>
      {waiting.length === 0 ? (
        <p>{words.outing.nextNone}</p>
      ) : (
        <ol>
          {waiting.map((frame) => (
            <li key={frame.key}>
              <RigName gear={state.gear} rig={frame.rig} />
              <span class="marks">{settingsLine(words, frame.settings)}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
