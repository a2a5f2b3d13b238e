import { darkRatioLimit, darkShare, type PixelCounts } from '../science/noise.ts';
import { isRefusal } from '../science/refusal.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import type { Ratio } from '../science/units.ts';
import type { HeatLimit } from './plan.ts';

/** The limit on the ratio of dark currents, from the noise tolerated in the shadows if they are known. */
export function darkLimit(
  shadows: PixelCounts | null,
  { tolerated, unknownRatio }: Pick<HeatLimit, 'tolerated' | 'unknownRatio'>,
): Ratio {
  const share = shadows && darkShare(shadows);
  return share === null || isRefusal(share) ? unknownRatio : darkRatioLimit(share, tolerated);
}

/** The heat that lies a ratio of dark currents above another. */
export const heatAbove = (heat: Doublings, limit: Ratio): Doublings =>
  (heat + Math.log2(limit)) as Doublings;
