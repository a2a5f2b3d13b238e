import { CAUSES, type Cause, type KnownOrUnknown, type WhyUnknown } from '../../../plan/causes.ts';
import { evenUp, type Figure as Sum } from '../../../plan/differences.ts';
import type { PlanSet } from '../../../plan/plan.ts';
import type { OtherRow } from '../../../plan/prepare.ts';
import type { Stops } from '../../../science/units.ts';
import { Figure } from '../../parts/Figure.tsx';
import { Figures } from '../../parts/Figures.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Section } from '../../parts/Section.tsx';
import { Table } from '../../parts/Table.tsx';
import { useWords } from '../../words/words.ts';
import { BesidesLines } from './BesidesLines.tsx';
import { causeWords, rigWords } from './sentences.ts';
import type { PlanView } from './usePlanView.ts';

interface Props {
  readonly view: PlanView;
  readonly set: PlanSet;
  readonly row: OtherRow;
}

/** One rig against the reference of its set: by cause, in light, and besides brightness. */
export function PairDetail({ view, set, row }: Props) {
  const words = useWords();
  const { format, plan } = words;
  const { differences, besides } = row;
  const letter = (rig: OtherRow['rig']) => view.rig(rig)?.rig.letter ?? '';
  const { lines, sum, residual, light } = differences;
  const free = residual === null;
  const known = (value: KnownOrUnknown | null) =>
    value?.known ? (
      format.stopsFine(value.stops)
    ) : (
      <span class="unknown">{words.parts.unknown}</span>
    );
  const figure = (stops: Stops | null) => (stops === null ? '' : format.stopsFine(stops));
  const shown = (label: string, { stops, missing }: Sum) => (
    <Figure
      label={label}
      value={format.stopsFine(stops)}
      note={plan.without(causeWords(words, missing))}
    />
  );
  return (
    <Section title={plan.against(rigWords(words, view, row.rig), letter(set.reference))}>
      <div class="cause-table">
        <Table
          caption={plan.byCause}
          stack="never"
          columns={[
            { key: 'cause', head: plan.cause },
            { key: 'difference', head: plan.difference, figures: true },
            ...(free
              ? []
              : [
                  { key: 'target', head: plan.target, figures: true },
                  { key: 'residual', head: plan.residual, figures: true },
                ]),
          ]}
          rows={lines.map((line) => ({
            key: line.cause,
            cells: {
              cause: line.counted
                ? plan.causes[line.cause]
                : `${plan.causes[line.cause]}, ${plan.inOffset}`,
              difference: known(line.difference),
              target: figure(line.target),
              residual: known(line.residual),
            },
          }))}
          foot={{
            key: 'sum',
            cells: {
              cause: plan.sum,
              difference: figure(sum.stops),
              residual: figure(residual?.stops ?? null),
            },
          }}
        />
      </div>
      <p class="hint">
        {plan.plusIs} {plan.evenUpIs(format.stopsFine(evenUp(differences).stops))}
        {reasons(lines).map(
          ([why, causes]) => ` ${plan.whyUnknown(why, causeWords(words, causes))}`,
        )}
      </p>
      <h3>{plan.light}</h3>
      <Figures>
        {shown(plan.perArea, light.perArea)}
        {shown(plan.rendered, sum)}
        {shown(plan.whole, light.wholeSensor)}
        {shown(plan.crop, light.commonCrop)}
      </Figures>
      {besides.parallax?.warns && (
        <Notice>{plan.parallaxWarns(format.number(besides.parallax.px, 1))}</Notice>
      )}
      <BesidesLines
        besides={besides}
        framing={set.framing}
        letters={{ reference: letter(set.reference), other: letter(row.rig) }}
      />
    </Section>
  );
}

/** The causes that are unknown, by why they are. */
function reasons(
  lines: OtherRow['differences']['lines'],
): readonly (readonly [WhyUnknown, readonly Cause[]])[] {
  const byReason = new Map<WhyUnknown, Cause[]>();
  for (const cause of CAUSES) {
    const difference = lines.find((line) => line.cause === cause)?.difference;
    if (!difference || difference.known) continue;
    byReason.set(difference.why, [...(byReason.get(difference.why) ?? []), cause]);
  }
  return [...byReason];
}
