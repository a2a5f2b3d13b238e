import { readGear } from '../gear/parse.ts';
import { object } from '../gear/read.ts';
import type { Gear } from '../gear/rig.ts';
import { jsonFile } from './json.ts';

/** Gear alone, to hand a body's profile on. */
export const gearFile = jsonFile('evenfall-gear', 1, object<{ gear: Gear }>({ gear: readGear }));
