import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Clock } from '../device/clock.ts';
import type { Ticker } from '../device/ticker.ts';
import type { Site, SiteId } from '../light/site.ts';
import { isDark, type Stretch, skyEnd } from '../light/skyTable.ts';
import type { UtcMs } from '../science/units.ts';
import type { Store } from '../store/contract.ts';
import type { Preferences, Theme } from './preferences.ts';
import type { RunDesk } from './run.ts';
import type { Saving } from './saving.ts';
import type { SiteDesk } from './sites.ts';

/** When it is dark at a site, as far as it was worked out. */
interface DarkHours extends Stretch {
  readonly site: SiteId;
  readonly dark: readonly Stretch[];
}

/** What this module needs of the app. */
interface ThemeWorld {
  readonly preferences: Preferences;
  readonly run: Pick<RunDesk, 'state' | 'underWay'>;
  readonly sites: Pick<SiteDesk, 'inUse'>;
  readonly store: Pick<Store, 'setting' | 'putSetting'>;
  readonly saving: Pick<Saving, 'save'>;
  readonly clock: Clock;
  readonly ticker: Ticker;
}

/** The theme on the screen. */
export interface ThemeDesk {
  readonly shown: ReadonlySignal<Theme>;
  /** Reads when it is dark. To be awaited before the first screen, which must not flash. */
  load(): Promise<void>;
}

const KEY = 'dark-hours';
const MINUTE_MS = 60_000;
/** The first screen comes first. */
const WAIT_MS = 1500;

/**
 * The theme that the user chose or, by the sun, night from civil dusk to civil dawn: by the sky of
 * the outing under way, else of the site in use, else what was chosen last. By the sun it changes
 * between frames only.
 */
export function createTheme(world: ThemeWorld): ThemeDesk {
  const { preferences, run, sites, store, saving, clock, ticker } = world;
  const now = signal(0 as UtcMs);
  const known = signal<DarkHours | null>(null);
  const bySun = computed(() => preferences.current.value.bySun);

  const knownFor = ({ id }: Site, at: UtcMs): DarkHours | null => {
    const hours = known.value;
    return hours?.site === id && at >= hours.fromMs && at < hours.toMs ? hours : null;
  };
  const wanted = computed((): Theme => {
    const chosen = preferences.current.value.theme;
    if (!bySun.value) return chosen;
    const at = now.value;
    const sky = run.underWay.value ? run.state.value?.sky : null;
    const site = sites.inUse.value;
    const hours = sky && at >= sky.startMs && at <= skyEnd(sky) ? sky : site && knownFor(site, at);
    if (!hours) return chosen;
    return isDark(hours, at) ? 'night' : 'day';
  });

  /** Works out the next half day at a site, with a part that loads later. */
  const learn = async (site: Site): Promise<void> => {
    const { skyForOuting } = await import('../light/skyOver.ts');
    const from = clock.now().wallMs as UtcMs;
    const { startMs, clearEv100, dark } = skyForOuting(site, from, null);
    const toMs = (startMs + clearEv100.length * MINUTE_MS) as UtcMs;
    const hours: DarkHours = { site: site.id, fromMs: startMs, toMs, dark };
    known.value = hours;
    saving.save(() => store.putSetting(KEY, hours));
  };

  const shown = signal<Theme>(wanted.peek());
  effect(() => {
    const theme = wanted.value;
    const exposing = (run.state.value?.open.length ?? 0) > 0;
    if (!bySun.value || !exposing) shown.value = theme;
  });
  effect(() => {
    if (!bySun.value) return;
    return ticker.start(() => {
      now.value = (Math.floor(clock.now().wallMs / MINUTE_MS) * MINUTE_MS) as UtcMs;
    });
  });
  effect(() => {
    const site = sites.inUse.value;
    if (!bySun.value || !site || knownFor(site, now.value)) return;
    const timer = setTimeout(() => {
      // Without that part the last choice stays, and the next minute tries again.
      learn(site).catch(() => undefined);
    }, WAIT_MS);
    return () => clearTimeout(timer);
  });

  return {
    shown,
    async load() {
      known.value = readDarkHours(await store.setting(KEY));
    },
  };
}

const isStretch = (value: unknown): value is Stretch =>
  typeof (value as Stretch | null)?.fromMs === 'number' &&
  typeof (value as Stretch).toMs === 'number';

/** What another version kept counts only if it has these fields. */
function readDarkHours(kept: unknown): DarkHours | null {
  const { site, dark } = Object(kept) as Partial<DarkHours>;
  return isStretch(kept) && typeof site === 'string' && Array.isArray(dark) && dark.every(isStretch)
    ? (kept as DarkHours)
    : null;
}
