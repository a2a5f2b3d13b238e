import { nineInTen } from '../../../../light/forecast.ts';
import type { PairFigures } from '../../../../log/pair/figures.ts';
import { Section } from '../../../parts/Section.tsx';
import { useJudgingWords } from '../../../words/judging.ts';

/** How each cause of a pair is known, and how wide it is. */
export function KnownBy({ figures }: { readonly figures: PairFigures }) {
  const words = useJudgingWords();
  const { format, judging, pair } = words;
  return (
    <Section title={judging.knownTitle}>
      <dl class="log-facts">
        {figures.causes.map(({ cause, by, sigma, difference }) => (
          <div key={cause}>
            <dt>{pair.causes[cause].replaceAll('\u00ad', '')}</dt>
            <dd class={by === 'unknown' ? 'unknown' : undefined}>
              {judging.knownBy[by]}
              {difference.known &&
                (sigma === null
                  ? `, ${judging.widthUnknown}`
                  : sigma > 0 && ` ${judging.width(format.number(nineInTen(sigma), 2))}`)}
            </dd>
          </div>
        ))}
      </dl>
      <p class="hint">{judging.knownHint}</p>
    </Section>
  );
}
