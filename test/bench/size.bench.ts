import { rm } from 'node:fs/promises';
import { firstLoadAim, firstLoadLimit, partSizes } from '../../.ci/sizes.mjs';
import { buildApp } from '../journeys/driver/build.ts';
import type { Ratio } from './ratio.ts';

const sum = (parts: readonly { readonly bytes: number }[]): number =>
  parts.reduce((total, { bytes }) => total + bytes, 0);

/** The weight of what a phone loads first, and of the parts that come later. */
export async function bench(): Promise<readonly Ratio[]> {
  const folder = await buildApp();
  const { first, later } = partSizes(folder);
  await rm(folder, { recursive: true });
  const load = sum(first);
  return [
    { name: 'first load, gzip, against the aim', measured: load, against: firstLoadAim, unit: 'B' },
    {
      name: 'first load, gzip, against the limit',
      measured: load,
      against: firstLoadLimit,
      unit: 'B',
    },
    {
      name: 'later parts, gzip, against the first load',
      measured: sum(later),
      against: load,
      unit: 'B',
    },
  ];
}
