import type { FunctionComponent } from 'preact';
import type { App } from '../../app/app.ts';
import type { Place } from '../../app/navigation.ts';
import { LogPlace } from '../places/log/LogPlace.tsx';
import { Outing } from '../places/outing/Outing.tsx';
import { laterScreen } from './later.tsx';

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

const light = laterScreen(
  'light',
  async () => (await import('../places/light/LightPlace.tsx')).LightPlace,
);
const gear = laterScreen(
  'gear',
  async () => (await import('../places/gear/GearPlace.tsx')).GearPlace,
);
const plan = laterScreen(
  'plan',
  async () => (await import('../places/plan/PlanPlace.tsx')).PlanPlace,
);

/** Brings the places of the desk in once the first screen stands, so that none waits for them. */
export const fetchLaterPlaces = (): void => {
  gear.fetch();
  light.fetch();
  plan.fetch();
};

/** The places that have landed, in the order of the work. Each draws a `Screen` or a `Split`. */
export const LANDED: readonly PlaceEntry[] = [
  { place: 'gear', Content: gear.Content },
  { place: 'light', Content: light.Content },
  { place: 'plan', Content: plan.Content },
  {
    place: 'outing',
    Content: Outing,
    bare: ({ run }) => run.underWay.value && run.state.value?.phase !== 'setting-up',
  },
  { place: 'log', Content: LogPlace },
];
