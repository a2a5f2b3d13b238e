import { assemble } from '../../../gear/rig.ts';
import type { Step } from '../../../outing/step.ts';
import { viewOf } from '../../../plan/framing.ts';
import { edgesWithin } from '../../../science/view.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { rigText } from './RigName.tsx';
import { StepFrame } from './StepFrame.tsx';
import { useRun } from './useRun.ts';

/** Another rig onto the tripod: what stays in place, and where the reference's edges fall. */
export function MountStep({ step }: { readonly step: Extract<Step, { kind: 'mount' }> }) {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  const set = state.plan.sets.find(({ id }) => id === step.next.set);
  const [only] = step.rigs;
  const single = step.rigs.length === 1 && only !== undefined;
  return (
    <StepFrame
      title={words.step.mount}
      frame={step.next}
      act={
        <Button rank="act" onPress={() => void tap({ tap: 'mounted', frame: step.next.key })}>
          {single ? words.mount.act(rigText(state.gear, only)) : words.mount.actAll}
        </Button>
      }
    >
      <p>
        {state.mounted.length > 0 && words.mount.takeOff} {words.mount.lock}
      </p>
      <p>
        {words.mount.landmark} {set && words.mount.rule[set.framing]}
      </p>
      {set &&
        step.rigs.map((rig) =>
          rig === set.reference ? (
            <p key={rig}>{words.mount.reference}</p>
          ) : (
            <Edges key={rig} rig={rig} reference={set.reference} />
          ),
        )}
    </StepFrame>
  );
}

/** The reference's frame within this rig's, drawn to scale and said in words. */
function Edges({
  rig,
  reference,
}: Record<'rig' | 'reference', Extract<Step, { kind: 'mount' }>['rigs'][number]>) {
  const { state } = useRun();
  const { outing: words, format } = useWords();
  const mine = assemble(state.gear, rig);
  const its = assemble(state.gear, reference);
  if (!mine || !its) return null;
  const edges = edgesWithin(viewOf(its), viewOf(mine));
  const where = (part: number): string => {
    const percent = Math.round(part * 100);
    if (percent === 100) return words.mount.same;
    return percent < 100
      ? words.mount.inside(format.number(percent, 0))
      : words.mount.outside(format.number(percent - 100, 0));
  };
  const height = (100 * mine.body.heightMm) / mine.body.widthMm;
  const room = Math.max(1, edges.horizontal, edges.vertical);
  const [w, h] = [100 * edges.horizontal, height * edges.vertical];
  const box = [-50 * room - 3, (-height / 2) * room - 3, 100 * room + 6, height * room + 6];
  return (
    <figure class="edges">
      <svg viewBox={box.join(' ')} role="img" aria-label={words.mount.drawing}>
        <rect x={-50} y={-height / 2} width={100} height={height} class="mine" />
        <rect x={-w / 2} y={-h / 2} width={w} height={h} class="its" />
        <path d="M-4 0H4M0 -4V4" class="mine" />
      </svg>
      <figcaption>{words.mount.edges(where(edges.horizontal), where(edges.vertical))}</figcaption>
    </figure>
  );
}
