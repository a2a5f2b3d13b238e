import type { Place } from '../science/place.ts';
import { type Degrees, degrees, type Metres, metres } from '../science/units.ts';
import type { Zone } from './zones.ts';

declare const siteId: unique symbol;

export type SiteId = string & { readonly [siteId]: true };

/** A spot to photograph from. */
export interface Site {
  readonly id: SiteId;
  readonly name: string;
  /** North positive. */
  readonly latDeg: Degrees;
  /** East positive, -180 to 180. */
  readonly lonDeg: Degrees;
  /** Above the sea; it moves sun and moon by less than anyone can see. */
  readonly heightM: Metres;
  readonly zone: Zone;
  /** How high the terrain stands where the sun goes down, above level; 0 = open. */
  readonly ridgeDeg: Degrees;
  readonly note: string;
  /** True for the practice outing's site, which is marked as invented and left out of backups. */
  readonly invented: boolean;
}

/** What a site is taken to be until someone says otherwise: at sea level, open to the horizon. */
export const SITE_DEFAULTS = {
  heightM: metres(0),
  ridgeDeg: degrees(0),
  note: '',
  invented: false,
} as const satisfies Partial<Site>;

/** Where a site is, for the sciences. */
export const placeOf = ({ latDeg, lonDeg, heightM }: Site): Place => ({
  lat: latDeg,
  lon: lonDeg,
  height: heightM,
});
