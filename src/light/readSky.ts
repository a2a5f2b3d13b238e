import { nullable, number, oneOf } from '../gear/read.ts';
import { SKY_CONDITIONS } from '../science/cloud.ts';
import { parseUtc } from '../science/units.ts';

/*
 * What plans and skies have in common. Apart from the rest, which asks for time zones: plans are
 * read in the first script.
 */

/** The last instant that a date can name. */
const MOST_MS = 8.64e15;

export const readUtc = number(parseUtc, -MOST_MS, MOST_MS);

/** What a sky is said to be like; null = nobody has said. */
export const readCloud = nullable(oneOf(SKY_CONDITIONS));
