import { useEffect } from 'preact/hooks';
import { type LightDesk, lightDesk } from '../../../app/light.ts';
import { useApp } from '../../shell/useApp.ts';

/** The desk of the Light place. */
export const useLight = (): LightDesk => lightDesk(useApp().desks);

/** Lets the desk's clock go on while a screen stands. */
export function useWatch(desk: LightDesk): void {
  useEffect(() => desk.watch(), [desk]);
}
