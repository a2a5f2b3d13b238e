import { Fault } from '../../../gear/read.ts';
import { readCoordinates } from '../../../light/readCoordinates.ts';
import type { Site } from '../../../light/site.ts';
import type { Place } from '../../../science/place.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { degrees } from '../../../science/units.ts';
import type { LightWords } from '../../words/light.ts';

/** Eleven metres: finer than any sky needs. */
const DECIMALS = 4;

/** Coordinates as a screen writes them. */
export function coordinatesWords(
  { latDeg, lonDeg }: Pick<Site, 'latDeg' | 'lonDeg'>,
  { format, light }: LightWords,
): string {
  const figure = (value: number): string => format.number(Math.abs(value), 3);
  return `${light.latitude(figure(latDeg), latDeg >= 0)}, ${light.longitude(figure(lonDeg), lonDeg >= 0)}`;
}

/** Coordinates as a field holds them: what stands in it can be read back. */
export function coordinatesText({ lat, lon }: Pick<Place, 'lat' | 'lon'>): string {
  const half = (value: number, letters: string): string =>
    `${Number(Math.abs(value).toFixed(DECIMALS))} ${letters[value < 0 ? 1 : 0]}`;
  return `${half(lat, 'NS')} ${half(lon, 'EW')}`;
}

/** Typed coordinates, to the last decimal that is kept; or what is wrong with them. */
export function typedCoordinates(typed: string): Pick<Place, 'lat' | 'lon'> | Fault {
  const read = readCoordinates(typed);
  if (isRefusal(read)) return new Fault(read.rule, '', {});
  const rounded = (value: number) => degrees(Number(value.toFixed(DECIMALS)) || 0);
  return { lat: rounded(read.lat), lon: rounded(read.lon) };
}
