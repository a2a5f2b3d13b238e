import type { Body } from '../gear/body.ts';
import type { Assembled } from '../gear/rig.ts';
import type { SensorFormat } from '../science/formats.ts';
import { diagonal } from '../science/formats.ts';
import type { Ratio } from '../science/units.ts';
import {
  AT_INFINITY,
  edgesWithin,
  pixelPitch,
  pixelsPerDegree,
  type Framing as View,
} from '../science/view.ts';
import type { Framing } from './plan.ts';

export const formatOf = ({ widthMm, heightMm }: Body): SensorFormat => ({
  width: widthMm,
  height: heightMm,
});

/** What a rig sees, focused far. */
export const viewOf = ({ body, lens }: Assembled): View => ({
  format: formatOf(body),
  focal: lens.focalMm,
  magnification: AT_INFINITY,
});

/** Pixels per degree of a rig on its lens axis. */
export const samplingOf = ({ body, lens }: Assembled) =>
  pixelsPerDegree(lens.focalMm, pixelPitch(body.widthMm, body.pixelsWide));

/**
 * How much more of the scene the other rig takes in than the reference, by the set's framing rule:
 * the ratio of the widths, heights or diagonals as seen on the landmark, or of the pixels per
 * degree. 1 = framed alike. Two prime lenses seldom are.
 */
export function framingRatio(rule: Framing, reference: Assembled, other: Assembled): Ratio {
  const edges = edgesWithin(viewOf(other), viewOf(reference));
  switch (rule) {
    case 'width':
      return edges.horizontal;
    case 'height':
      return edges.vertical;
    case 'diagonal':
      return ((diagonal(formatOf(other.body)) / other.lens.focalMm) *
        (reference.lens.focalMm / diagonal(formatOf(reference.body)))) as Ratio;
    case 'pixels-per-degree':
      return (samplingOf(other) / samplingOf(reference)) as Ratio;
  }
}
