import { firstLoadAim, firstLoadLimit, partSizes } from '../../.ci/sizes.mjs';
import type { Bench } from './ratio.ts';

/** The weight of what a phone loads first, and of each part that comes later. */
export const bench: Bench = async (app) => {
  const { first, later } = partSizes(app);
  const load = first.reduce((total, { bytes }) => total + bytes, 0);
  const unit = 'B gzip';
  return [
    { name: 'first load, the aim', unit, measured: load, against: firstLoadAim, aim: 1 },
    { name: 'first load, the limit', unit, measured: load, against: firstLoadLimit, aim: 1 },
    ...later.map(({ file, bytes }) => ({
      name: `later part ${file.replace(/^assets\//, '')}, first load`,
      unit,
      measured: bytes,
      against: load,
    })),
  ];
};
