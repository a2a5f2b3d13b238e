import { nineInTen } from '../../light/forecast.ts';
import type { Besides } from '../../plan/besides.ts';
import type { Cause } from '../../plan/causes.ts';
import type { HeatLine } from '../ledgerHeat.ts';
import type { PairFigures, Wide } from './figures.ts';

/*
 * What a pair is judged by: each difference in its own unit, as the span in which it lies. Nothing
 * is summed over units.
 */

/** What is looked at. Each has one unit and one limit. */
export const MEASURES = [
  /** Stops of light on the same area, whatever its ISO. */
  'light-per-area',
  /** Stops of brightness before any even-up. */
  'rendered',
  /** Stops of ISO as set: the gain. */
  'iso',
  /** Stops of exposure time: dark current and motion gather over it. */
  'time',
  /** Stops of dark current. */
  'heat',
  /** Stops of aperture by which the depths of field lie apart, whole frames at equal viewing size. */
  'depth-of-field',
  /** Stops of aperture by which the discs of diffraction lie apart against their frames. */
  'diffraction',
  /** Per cent by which the one takes in more, by the set's framing rule. */
  'framing',
  /** Pixels by which the nearest subject shifts. */
  'parallax',
  /** Bits of the raw file. */
  'bit-depth',
  /** 0 where both or neither take a dark frame in the camera, else 1. */
  'dark-frame',
] as const;
export type Measure = (typeof MEASURES)[number];

/** The span in which a difference lies, its sign taken away only by the limit. */
export interface Span {
  readonly known: true;
  readonly value: number;
  readonly least: number;
  readonly most: number;
}

/** Why a measure cannot be told. */
export type WhyUntold =
  | { readonly what: 'causes'; readonly causes: readonly Cause[] }
  | { readonly what: 'width'; readonly causes: readonly Cause[] }
  | { readonly what: 'heat' | 'parallax' | 'pass' };

export type Measured = Span | { readonly known: false; readonly why: WhyUntold };
export type Measures = Readonly<Record<Measure, Measured>>;

const exactly = (value: number): Span => ({ known: true, value, least: value, most: value });
const untold = (why: WhyUntold): Measured => ({ known: false, why });

function spanOf({ stops, sigma, missing, unsure }: Wide, causes: readonly Cause[]): Measured {
  const gone = missing.filter((cause) => causes.includes(cause));
  if (gone.length > 0) return untold({ what: 'causes', causes: gone });
  const loose = unsure.filter((cause) => causes.includes(cause));
  if (loose.length > 0) return untold({ what: 'width', causes: loose });
  const half = nineInTen(sigma);
  return { known: true, value: stops, least: stops - half, most: stops + half };
}

function ofCause(figures: PairFigures, cause: Cause): Measured {
  const line = figures.causes.find((each) => each.cause === cause);
  if (!line?.difference.known) return untold({ what: 'causes', causes: [cause] });
  const { stops } = line.difference;
  return spanOf(
    { stops, sigma: line.sigma ?? stops, missing: [], unsure: line.sigma === null ? [cause] : [] },
    [cause],
  );
}

/** The disc against its frame's diagonal grows with the f-number over the diagonal. */
const discRatio = ({ airyPx, pixelsPerDegree }: Besides): number =>
  airyPx.other / pixelsPerDegree.other / (airyPx.reference / pixelsPerDegree.reference);

/** @param heat null and `besides` null where no pass is complete. */
export function measuresOf(
  figures: PairFigures,
  heat: HeatLine | null,
  besides: Besides | null,
): Measures {
  const from = (of: (besides: Besides) => Measured): Measured =>
    besides ? of(besides) : untold({ what: 'pass' });
  return {
    'light-per-area': spanOf(figures.perArea, ['time', 'aperture', 'transmission', 'fade']),
    rendered: spanOf(figures.sum, ['time', 'aperture', 'iso', 'offset', 'transmission', 'fade']),
    iso: ofCause(figures, 'iso'),
    time: ofCause(figures, 'time'),
    heat: !heat
      ? untold({ what: 'pass' })
      : heat.known
        ? {
            known: true,
            value: heat.byHistory.usual,
            least: heat.byHistory.least,
            most: heat.byHistory.most,
          }
        : untold({ what: 'heat' }),
    'depth-of-field': from(({ depthOfFieldRatio }) => exactly(2 * Math.log2(depthOfFieldRatio))),
    diffraction: from((given) => exactly(2 * Math.log2(discRatio(given)))),
    framing: from(({ framingRatio }) => exactly(100 * (framingRatio - 1))),
    parallax: from(({ parallax }) =>
      parallax ? exactly(parallax.px) : untold({ what: 'parallax' }),
    ),
    'bit-depth': from(({ bitDepth }) => exactly(bitDepth.other - bitDepth.reference)),
    'dark-frame': from(({ takesDarkFrame }) =>
      exactly(takesDarkFrame.other === takesDarkFrame.reference ? 0 : 1),
    ),
  };
}
