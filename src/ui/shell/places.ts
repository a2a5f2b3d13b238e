import type { FunctionComponent } from 'preact';
import type { App } from '../../app/app.ts';
import type { Place } from '../../app/navigation.ts';
import { GearPlace } from '../places/gear/GearPlace.tsx';
import { Outing } from '../places/outing/Outing.tsx';

/** A place of the app and how the frame treats it. */
interface PlaceEntry {
  readonly place: Place;
  readonly Content: FunctionComponent;
  /**
   * While it answers true the place has the whole screen: no bar whose targets a glove could hit.
   * The place then shows `NightSwitch` and its own way out.
   */
  readonly bare?: (app: App) => boolean;
}

/** The places that have landed, in the order of the work. Each draws a `Screen` or a `Split`. */
export const LANDED: readonly PlaceEntry[] = [
  { place: 'gear', Content: GearPlace },
  {
    place: 'outing',
    Content: Outing,
    bare: ({ run }) => run.underWay.value && run.state.value?.phase !== 'setting-up',
  },
];
