import { useEffect, useState } from 'preact/hooks';
import type { PlannedEvening } from '../../../app/eveningSky.ts';
import type { Gear } from '../../../gear/rig.ts';
import type { Site } from '../../../light/site.ts';
import { preparedInLight } from '../../../plan/inLight.ts';
import { type PlanLight, planLight, withPredictedFade } from '../../../plan/light.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Prepared } from '../../../plan/prepare.ts';
import { useApp } from '../../shell/useApp.ts';

/** A plan in the light of its evening. */
export type InLight =
  /** No evening is stated. */
  | { readonly how: 'none' }
  | { readonly how: 'site-gone' }
  | { readonly how: 'computing'; readonly site: Site }
  /** The part that works it out is not on the device. */
  | { readonly how: 'failed'; readonly site: Site }
  /** No set looks at the light, or the sky is not known for the whole list. */
  | { readonly how: 'no-light'; readonly site: Site }
  | {
      readonly how: 'ready';
      readonly site: Site;
      readonly evening: PlannedEvening;
      readonly light: PlanLight;
      /** The plan worked out with its fade: rests weighed by it, and what each pair will meet. */
      readonly faded: Prepared;
    };

/** A plan as it was laid on its light. */
interface Laid {
  readonly of: Prepared;
  readonly evening: PlannedEvening;
  /** Null if no set looks at the light, or the sky is not known for the whole list. */
  readonly in: Pick<Extract<InLight, { how: 'ready' }>, 'light' | 'faded'> | null;
}

function laid(plan: Plan, gear: Gear, prepared: Prepared, { scene, side }: PlannedEvening) {
  const weighed = preparedInLight(plan, gear, prepared, scene, side);
  const light = planLight(plan, gear, weighed, scene, side);
  return light && { light, faded: withPredictedFade(plan, gear, weighed, scene, light.startMs) };
}

const NONE: InLight = { how: 'none' };

/** A plan laid on its light, a moment after each change: the hand does not wait for it. */
export function useEvening(plan: Plan | undefined, gear: Gear, prepared: Prepared | null): InLight {
  const { sites } = useApp();
  const site = sites.sites.value.find(({ id }) => id === plan?.evening?.site);
  const key = plan?.evening && site && JSON.stringify([plan.evening, site]);
  const [night, setNight] = useState<{
    readonly key: string;
    readonly evening: PlannedEvening | null;
  } | null>(null);
  useEffect(() => {
    if (!key || !plan || !site) return;
    let wanted = true;
    const take = (evening: PlannedEvening | null) => {
      if (wanted) setNight({ key, evening });
    };
    import('../../../app/eveningSky.ts').then(
      ({ plannedEvening }) => take(plannedEvening(plan, site)),
      () => take(null),
    );
    return () => {
      wanted = false;
    };
    // The key holds all of plan and site that matters.
  }, [key]);

  const evening = night?.key === key ? night?.evening : undefined;
  const [last, setLast] = useState<Laid | null>(null);
  useEffect(() => {
    if (!evening || !plan || !prepared) return;
    const timer = setTimeout(() => {
      setLast({ of: prepared, evening, in: laid(plan, gear, prepared, evening) });
    });
    return () => clearTimeout(timer);
  }, [evening, plan, gear, prepared]);

  if (!plan?.evening) return NONE;
  if (!site) return { how: 'site-gone' };
  if (evening === null) return { how: 'failed', site };
  if (!evening || !prepared || last?.of !== prepared || last.evening !== evening) {
    return { how: 'computing', site };
  }
  return last.in ? { how: 'ready', site, evening, ...last.in } : { how: 'no-light', site };
}
