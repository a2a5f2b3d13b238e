import type { PlanSet } from '../../../plan/plan.ts';
import type { OtherRow } from '../../../plan/prepare.ts';
import { besidesOfRow } from '../../../plan/rowBesides.ts';
import { BesidesLines } from '../../parts/BesidesLines.tsx';
import { DifferenceFigures } from '../../parts/DifferenceFigures.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Section } from '../../parts/Section.tsx';
import { useHeatWords } from '../../words/planHeat.ts';
import { heatRange, pairHeatWords } from './heatWords.ts';
import { rigWords } from './sentences.ts';
import type { PlanView } from './usePlanView.ts';

interface Props {
  readonly view: PlanView;
  readonly set: PlanSet;
  readonly row: OtherRow;
}

/** One rig against the reference of its set: by cause, in light, in heat, and besides brightness. */
export function PairDetail({ view, set, row }: Props) {
  const words = useHeatWords();
  const { format, heat, plan } = words;
  const besides = besidesOfRow(view.plan, view.gear, view.prepared, set.id, row.rig);
  const pair = view.heat.pairs.find((each) => each.set === set.id && each.other === row.rig);
  const letter = (rig: OtherRow['rig']) => view.rig(rig)?.rig.letter ?? '';
  return (
    <Section title={plan.against(rigWords(words, view, row.rig), letter(set.reference))}>
      <DifferenceFigures differences={row.differences} />
      {pair && (
        <>
          <h3>{heat.pairTitle}</h3>
          <p>{pairHeatWords(words, view, set.id, row.rig)}</p>
          <p class="hint">
            {heat.withBodies(heatRange(words, pair.withBodies))} {heat.unit}
          </p>
        </>
      )}
      {besides?.parallax?.warns && (
        <Notice>{plan.parallaxWarns(format.number(besides.parallax.px, 1))}</Notice>
      )}
      {besides && (
        <BesidesLines
          besides={besides}
          framing={set.framing}
          letters={{ reference: letter(set.reference), other: letter(row.rig) }}
        />
      )}
    </Section>
  );
}
