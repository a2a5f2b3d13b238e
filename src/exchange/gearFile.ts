import type { Gear } from '../gear/rig.ts';
import { jsonFile } from './json.ts';

/** Gear alone, to hand a body's profile on. */
export const gearFile = jsonFile<{ gear: Gear }>('evenfall-gear', 2);
