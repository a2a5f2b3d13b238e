import lookUp from '@photostructure/tz-lookup';
import type { Place } from '../science/place.ts';
import { isRefusal } from '../science/refusal.ts';
import { minutesEast } from '../science/units.ts';
import { parseZoneName, type Zone } from './zones.ts';

/*
 * The only module that knows the zone lookup, which weighs as much as half of the app: it loads
 * later.
 */

const AT_SEA = /^Etc\/GMT(?:([+-])(\d+))?$/;

/**
 * The zone that probably holds at a place, to be shown as a proposal that can be changed: the
 * lookup is coarse and errs for about one inhabited place in twenty (its authors' own figure), near
 * borders and where law and custom differ. At sea it is the ship's zone, a fixed offset.
 *
 * @returns null where this browser does not know the zone.
 */
export function zoneAt({ lat, lon }: Pick<Place, 'lat' | 'lon'>): Zone | null {
  const name = lookUp(lat, lon);
  const atSea = AT_SEA.exec(name);
  if (atSea) {
    // These names count the other way round: Etc/GMT+3 is three hours behind.
    const hours = Number(atSea[2] ?? 0) * (atSea[1] === '+' ? -1 : 1);
    return { kind: 'fixed', offsetMin: minutesEast(hours * 60 || 0) };
  }
  const zone = parseZoneName(name);
  return isRefusal(zone) ? null : zone;
}
