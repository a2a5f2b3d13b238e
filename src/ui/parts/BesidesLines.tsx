import type { Besides, Both } from '../../plan/besides.ts';
import type { Framing } from '../../plan/plan.ts';
import './BesidesLines.css';
import { useWords } from '../words/words.ts';
import { Disclosure } from './Disclosure.tsx';

interface Props {
  readonly besides: Besides;
  readonly framing: Framing;
  readonly letters: Both<string>;
}

/** What sets a pair apart besides brightness, each in its own unit, in no sum. */
export function BesidesLines({ besides, framing, letters }: Props) {
  const { format, plan } = useWords();
  const factor = (value: number) => plan.factorOf(format.number(value, 2));
  const signed = (value: number) =>
    value > 0 ? `+${format.number(value, 1)}` : format.number(value, 1);
  const both = <T,>({ reference, other }: Both<T>, write: (value: T) => string) =>
    plan.both(letters.reference, write(reference), letters.other, write(other));
  const percent = (share: number) => plan.percent(format.number(share * 100, 0));
  const metres = (mm: number) => plan.metresOf(format.plain(mm / 1000, mm < 10_000 ? 1 : 0));
  const { parallax, angleOfView } = besides;
  const lines: readonly (readonly [string, string | null])[] = [
    [plan.angle, plan.angles(signed(angleOfView.horizontal), signed(angleOfView.vertical))],
    [plan.shown, both(besides.commonCrop, percent)],
    [
      plan.framedBy(plan.framings[framing]),
      framing === 'pixels-per-degree'
        ? factor(besides.framingRatio)
        : plan.takesIn(letters.other, format.number(besides.framingRatio, 2)),
    ],
    [plan.perDegree, both(besides.pixelsPerDegree, (value) => format.number(value, 0))],
    [plan.pupil, factor(besides.pupilRatio)],
    [plan.depth, factor(besides.depthOfFieldRatio)],
    [plan.hyperfocal, both(besides.hyperfocalMm, metres)],
    [plan.airy, both(besides.airyPx, (value) => plan.px(format.number(value, 1)))],
    [plan.motion, factor(besides.timeRatio)],
    [plan.parallax, parallax && plan.px(format.number(parallax.px, 1))],
    [plan.overstated, plan.stops(format.stopsFine(besides.diagonalOverstates))],
    [plan.darkFrame, both(besides.takesDarkFrame, (takes) => (takes ? plan.yes : plan.no))],
    [plan.bits, both(besides.bitDepth, (bits) => `${bits}`)],
  ];
  return (
    <Disclosure
      label={plan.besides}
      stated={plan.besidesInShort(
        signed(angleOfView.horizontal),
        format.number(besides.depthOfFieldRatio, 2),
      )}
    >
      <dl class="besides">
        {lines.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd class={value === null ? 'unknown' : undefined}>{value ?? plan.parallaxUnknown}</dd>
          </div>
        ))}
      </dl>
    </Disclosure>
  );
}
