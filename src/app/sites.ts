import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Site, SiteId } from '../light/site.ts';
import type { Store } from '../store/contract.ts';
import type { Saving } from './saving.ts';

/**
 * The sites, as far as the first script needs them; the acts on them come with the Light place
 * (`light.ts`).
 */
export interface SiteDesk {
  /** Own sites first, by name. */
  readonly sites: ReadonlySignal<readonly Site[]>;
  /** The one that was looked at last, also over a restart; null = none. */
  readonly inUse: ReadonlySignal<Site | null>;
  load(): Promise<void>;
  /** Remembers which one is looked at. */
  use(id: SiteId): void;
  /** Shows a site at once and writes it behind. It has been parsed; `deleted` leaves a tombstone. */
  put(site: Site, deleted: boolean): void;
}

const IN_USE_KEY = 'site-in-use';

export function createSiteDesk({
  store,
  saving,
}: {
  readonly store: Pick<Store, 'sites' | 'putSites' | 'setting' | 'putSetting'>;
  readonly saving: Pick<Saving, 'save'>;
}): SiteDesk {
  const kept = signal<readonly Site[]>([]);
  const used = signal<unknown>(null);
  return {
    sites: kept,
    inUse: computed(() => kept.value.find(({ id }) => id === used.value) ?? null),
    async load() {
      const [sites, last] = await Promise.all([store.sites(), store.setting(IN_USE_KEY)]);
      kept.value = sites.toSorted(ownFirst);
      used.value = last;
    },
    use(id) {
      if (id === used.peek()) return;
      used.value = id;
      saving.save(() => store.putSetting(IN_USE_KEY, id));
    },
    put(site, deleted) {
      const others = kept.peek().filter(({ id }) => id !== site.id);
      kept.value = (deleted ? others : [...others, site]).toSorted(ownFirst);
      saving.save(() => store.putSites([{ site, deleted }]));
    },
  };
}

const ownFirst = (a: Site, b: Site): number =>
  Number(a.invented) - Number(b.invented) || (a.name < b.name ? -1 : 1);
