import type { Measure, WhyUntold } from '../../../../log/pair/measures.ts';
import type { Finding, Verdict } from '../../../../log/pair/uses.ts';
import { causeWords } from '../../../parts/causeWords.ts';
import type { JudgingWords } from '../../../words/judging.ts';

function whyWords(words: JudgingWords, why: WhyUntold): string {
  const { whyUntold } = words.judging;
  return why.what === 'causes' || why.what === 'width'
    ? whyUntold[why.what](causeWords(words, why.causes))
    : whyUntold[why.what];
}

/** A limit or a figure as it is written: two decimals where it has stops. */
const figureOf = ({ format }: JudgingWords, measure: Measure, value: number): string =>
  format.number(
    value,
    measure === 'framing' || measure === 'parallax' ? 1 : measure === 'bit-depth' ? 0 : 2,
  );

/** 'light per area differs by 0.09 stop' */
export function findingWords(words: JudgingWords, finding: Finding): string {
  const { judging } = words;
  const { measure } = finding;
  const what = judging.measure[measure];
  const unit = judging.unit[measure];
  const figure = (value: number) => figureOf(words, measure, value);
  if (finding.says === 'untold') return judging.unknownOf(what, whyWords(words, finding.why));
  const { span, limit } = finding;
  if (measure === 'dark-frame')
    return span.value === 0 ? judging.alike(what) : judging.unlike(what);
  if (finding.says === 'across') {
    return judging.across(what, figure(span.least), figure(span.most), unit, figure(limit));
  }
  const size = figure(Math.abs(span.value));
  return size === figure(0) ? judging.alike(what) : judging.differsBy(what, size, unit);
}

/**
 * A verdict as one sentence. A no is told by what lies beyond, a 'cannot be told' by what hinders it,
 * a yes by all that was looked at.
 */
export function verdictWords(words: JudgingWords, { use, fit, findings }: Verdict): string {
  const { judging } = words;
  const of = (...says: Finding['says'][]) =>
    findings
      .filter((finding) => says.includes(finding.says))
      .map((finding) => findingWords(words, finding))
      .join(', ');
  switch (fit) {
    case 'fit':
      return judging.fit(judging.use[use], of('within'));
    case 'not-fit':
      return judging.notFit(judging.use[use], of('beyond'));
    case 'untold':
      return judging.untold(
        judging.use[use],
        findings.length === 0 ? judging.nothingLookedAt : of('across', 'untold'),
      );
  }
}
