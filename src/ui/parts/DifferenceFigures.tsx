import { CAUSES, type Cause, type KnownOrUnknown, type WhyUnknown } from '../../plan/causes.ts';
import { type Differences, evenUp, type Figure as Sum } from '../../plan/differences.ts';
import type { Stops } from '../../science/units.ts';
import { usePairWords } from '../words/pair.ts';
import { causeWords } from './causeWords.ts';
import { Figure } from './Figure.tsx';
import { Figures } from './Figures.tsx';
import { fadeOf, widthWords } from './fadeWords.ts';
import { Table } from './Table.tsx';
import './DifferenceFigures.css';

interface Props {
  readonly differences: Differences;
  /** By what stands above it on its screen. */
  readonly heading?: 'h2' | 'h3';
}

/** A pair by cause, with the sum, the even-up and the figures of light, planned or made. */
export function DifferenceFigures({ differences, heading: Heading = 'h3' }: Props) {
  const words = usePairWords();
  const { format, pair } = words;
  const { lines, sum, residual, light } = differences;
  const free = residual === null;
  const fade = fadeOf(differences);
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
      {...(missing.length > 0 && { note: pair.without(causeWords(words, missing)) })}
    />
  );
  return (
    <>
      <div class="cause-table">
        <Table
          caption={pair.byCause}
          stack="never"
          columns={[
            { key: 'cause', head: pair.cause },
            { key: 'difference', head: pair.difference, figures: true },
            ...(free
              ? []
              : [
                  { key: 'target', head: pair.target, figures: true },
                  { key: 'residual', head: pair.residual, figures: true },
                ]),
          ]}
          rows={lines.map((line) => ({
            key: line.cause,
            cells: {
              cause: line.counted
                ? pair.causes[line.cause]
                : `${pair.causes[line.cause]}, ${pair.inOffset}`,
              difference: (
                <>
                  {known(line.difference)} <Width of={line.difference} />
                </>
              ),
              target: figure(line.target),
              residual: known(line.residual),
            },
          }))}
          foot={{
            key: 'sum',
            cells: {
              cause: pair.sum,
              difference: figure(sum.stops),
              residual: figure(residual?.stops ?? null),
            },
          }}
        />
      </div>
      <p class="hint">
        {pair.plusIs} {pair.evenUpIs(format.stopsFine(evenUp(differences).stops))}
        {fade && ` ${pair.fadeFrom[fade.estimate.from]}`}
        {reasons(lines).map(
          ([why, causes]) => ` ${pair.whyUnknown(why, causeWords(words, causes))}`,
        )}
      </p>
      <Heading>{pair.light}</Heading>
      <Figures>
        {shown(pair.perArea, light.perArea)}
        {shown(pair.rendered, sum)}
        {shown(pair.whole, light.wholeSensor)}
        {shown(pair.crop, light.commonCrop)}
      </Figures>
    </>
  );
}

/** How sure a difference is that was worked out and not set; below it where the column is narrow. */
function Width({ of }: { readonly of: KnownOrUnknown }) {
  const width = widthWords(usePairWords(), of);
  return width && <span class="width">{width}</span>;
}

/** The causes that are unknown, by why they are. */
function reasons(
  lines: Differences['lines'],
): readonly (readonly [WhyUnknown, readonly Cause[]])[] {
  const byReason = new Map<WhyUnknown, Cause[]>();
  for (const cause of CAUSES) {
    const difference = lines.find((line) => line.cause === cause)?.difference;
    if (!difference || difference.known) continue;
    byReason.set(difference.why, [...(byReason.get(difference.why) ?? []), cause]);
  }
  return [...byReason];
}
