import { type GearDesk, gearDesk } from '../../../app/gear.ts';
import { useApp } from '../../shell/useApp.ts';

/** The acts on the gear. */
export const useGearDesk = (): GearDesk => gearDesk(useApp().desks);
