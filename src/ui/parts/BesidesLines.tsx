import type { Besides, Both } from '../../plan/besides.ts';
import type { Framing } from '../../plan/plan.ts';
import './BesidesLines.css';
import { usePairWords } from '../words/pair.ts';
import { Disclosure } from './Disclosure.tsx';

interface Props {
  readonly besides: Besides;
  readonly framing: Framing;
  readonly letters: Both<string>;
}

/** What sets a pair apart besides brightness, each in its own unit, in no sum. */
export function BesidesLines({ besides, framing, letters }: Props) {
  const { format, pair } = usePairWords();
  const factor = (value: number) => pair.factorOf(format.number(value, 2));
  const signed = (value: number) =>
    value > 0 ? `+${format.number(value, 1)}` : format.number(value, 1);
  const both = <T,>({ reference, other }: Both<T>, write: (value: T) => string) =>
    pair.both(letters.reference, write(reference), letters.other, write(other));
  const percent = (share: number) => pair.percent(format.number(share * 100, 0));
  const metres = (mm: number) => pair.metresOf(format.plain(mm / 1000, mm < 10_000 ? 1 : 0));
  const { parallax, angleOfView } = besides;
  const lines: readonly (readonly [string, string | null])[] = [
    [pair.angle, pair.angles(signed(angleOfView.horizontal), signed(angleOfView.vertical))],
    [pair.shown, both(besides.commonCrop, percent)],
    [
      pair.framedBy(pair.framings[framing]),
      framing === 'pixels-per-degree'
        ? factor(besides.framingRatio)
        : pair.takesIn(letters.other, format.number(besides.framingRatio, 2)),
    ],
    [pair.perDegree, both(besides.pixelsPerDegree, (value) => format.number(value, 0))],
    [pair.pupil, factor(besides.pupilRatio)],
    [pair.depth, factor(besides.depthOfFieldRatio)],
    [pair.hyperfocal, both(besides.hyperfocalMm, metres)],
    [pair.airy, both(besides.airyPx, (value) => pair.px(format.number(value, 1)))],
    [pair.motion, factor(besides.timeRatio)],
    [pair.parallax, parallax && pair.px(format.number(parallax.px, 1))],
    [pair.overstated, pair.stops(format.stopsFine(besides.diagonalOverstates))],
    [pair.darkFrame, both(besides.takesDarkFrame, (takes) => (takes ? pair.yes : pair.no))],
    [pair.bits, both(besides.bitDepth, (bits) => `${bits}`)],
  ];
  return (
    <Disclosure
      label={pair.besides}
      stated={pair.besidesInShort(
        signed(angleOfView.horizontal),
        format.number(besides.depthOfFieldRatio, 2),
      )}
    >
      <dl class="besides">
        {lines.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd class={value === null ? 'unknown' : undefined}>{value ?? pair.parallaxUnknown}</dd>
          </div>
        ))}
      </dl>
    </Disclosure>
  );
}
