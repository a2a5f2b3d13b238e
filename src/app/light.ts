import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Clock } from '../device/clock.ts';
import { browserPosition, type Geolocating, type PositionAnswer } from '../device/position.ts';
import type { Ticker } from '../device/ticker.ts';
import { type Fault, isFault } from '../gear/read.ts';
import { fitScene } from '../light/fit.ts';
import { movedNight } from '../light/movedNight.ts';
import type { Night } from '../light/night.ts';
import { readSite } from '../light/parse.ts';
import { PRACTICE_DATE } from '../light/practice.ts';
import { evOfReading, type MeterReading } from '../light/reading.ts';
import type { Scene } from '../light/scene.ts';
import { SITE_DEFAULTS, type Site, type SiteId } from '../light/site.ts';
import { type SkyTable, type Stretch, skyEnd, skyWithBefore } from '../light/skyTable.ts';
import { parseZoneName, sameZone, type Zone } from '../light/zones.ts';
import { begunInLight } from '../plan/inLight.ts';
import type { SkyCondition } from '../science/cloud.ts';
import type { Place } from '../science/place.ts';
import { isRefusal } from '../science/refusal.ts';
import { later, minutesEast, type UtcMs } from '../science/units.ts';
import { madeOnce } from './desks.ts';
import type { KeptGear } from './keptGear.ts';
import type { KeptPlans } from './keptPlans.ts';
import type { RunDesk } from './run.ts';
import type { SiteDesk } from './sites.ts';
import type { Undo } from './undo.ts';

export type { PositionAnswer } from '../device/position.ts';

/** What the desk needs of the app. */
export interface LightWorld {
  readonly sites: SiteDesk;
  readonly plans: Pick<KeptPlans, 'plans' | 'open' | 'prepared'>;
  readonly gear: Pick<KeptGear, 'gear'>;
  readonly run: Pick<RunDesk, 'state'>;
  readonly undo: Pick<Undo, 'offer'>;
  readonly newId: () => string;
  readonly clock: Clock;
  readonly ticker: Ticker;
  readonly geolocation: Geolocating | undefined;
}

type Coordinates = Pick<Place, 'lat' | 'lon'>;

/** What a site starts from; the rest is as stated (`SITE_DEFAULTS`). */
export interface NewSite extends Coordinates {
  readonly name: string;
  readonly heightM: Site['heightM'];
}

/** A planned frame on the clock. */
export interface PlannedFrame extends Stretch {
  /** Of its rig. */
  readonly letter: string;
}

/** The frames of the open plan, on the evening that it is for. */
export interface Planned {
  /** Of the plan. */
  readonly name: string;
  readonly frames: readonly PlannedFrame[];
}

/** The night of the site in use. */
export type NightState =
  | { readonly kind: 'computing' }
  | { readonly kind: 'ready'; readonly night: Night }
  /** The part that works it out is not on the device. */
  | { readonly kind: 'failed' };

/** The sites with the acts on them, and the light of one of them on one date. */
export interface LightDesk {
  readonly site: ReadonlySignal<Site | null>;
  /** Null = the evening that it is there now. */
  readonly date: ReadonlySignal<string | null>;
  /** What the sky is said to be like; null = nobody has said. */
  readonly cloud: ReadonlySignal<SkyCondition | null>;
  /** To the minute before; moves while somebody watches. */
  readonly now: ReadonlySignal<UtcMs>;
  /** While an outing is in hand here, under the sky that it took along, and at the outing's time. */
  readonly night: ReadonlySignal<NightState>;
  /** The date of the evening shown, where the practice outing walks it at another time; else null. */
  readonly movedFrom: ReadonlySignal<string | null>;
  /** The light of that night, bent by the readings of the outing in hand; null before it is ready. */
  readonly scene: ReadonlySignal<Scene | null>;
  /** Null if the open plan is for another site or evening, or nobody knows when it starts. */
  readonly planned: ReadonlySignal<Planned | null>;
  /** @returns ends the watching. */
  watch(): () => void;
  setDate(date: string | null): void;
  setCloud(cloud: SkyCondition | null): void;
  /** Works the night out again after it failed. */
  tryAgain(): void;

  add(start: NewSite): Promise<SiteId | Fault>;
  change(id: SiteId, part: Partial<Site>): Fault | null;
  /** Other coordinates; a zone that was proposed for the old ones follows. */
  move(id: SiteId, to: Coordinates): Promise<Fault | null>;
  /** The copy of an invented site is its owner's own. */
  copy(id: SiteId, name: string): SiteId | Fault;
  remove(id: SiteId): void;
  /** The zone that probably holds at a place; the device's own where nothing better is known. */
  proposedZone(at: Coordinates): Promise<Zone>;
  whereAmI(): Promise<PositionAnswer>;
}

const MINUTE_MS = 60_000;
/** Before the next solar noon people no longer mean this night by 'tonight' (as in `eveningDate`). */
const TONIGHT_ENDS_S = 6 * 3600;

export function createLightDesk(world: LightWorld): LightDesk {
  const { sites, run, plans, gear, undo, newId, clock, ticker, geolocation } = world;
  const site = sites.inUse;
  const date = signal<string | null>(null);
  /** Undefined = as the plan says, if it does; it is said of one evening at one site. */
  const stated = signal<SkyCondition | null | undefined>(undefined);
  const minute = (): UtcMs => (Math.floor(clock.now().wallMs / MINUTE_MS) * MINUTE_MS) as UtcMs;
  const now = signal(minute());
  const tries = signal(0);

  /** Without its cloud, which is said later. */
  const worked = signal<NightState>({ kind: 'computing' });
  const nightFor = async (of: Site, wanted: string | null): Promise<Night> => {
    const [{ eveningDate }, { nightAt }] = await Promise.all([
      import('../light/night.ts'),
      import('./nights.ts'),
    ]);
    // An invented site has an evening of its own.
    const on = wanted ?? (of.invented ? PRACTICE_DATE : eveningDate(of, now.peek()));
    return nightAt(of, on, null);
  };
  const isOver = computed(() => {
    const state = worked.value;
    if (date.value !== null || state.kind !== 'ready') return false;
    return now.value >= later(state.night.nextNoonMs, -TONIGHT_ENDS_S);
  });
  let asked = 0;
  effect(() => {
    const of = site.value;
    const wanted = date.value;
    void isOver.value;
    void tries.value;
    asked += 1;
    const mine = asked;
    if (!of) return;
    const take = (state: NightState): void => {
      if (mine === asked) worked.value = state;
    };
    take({ kind: 'computing' });
    nightFor(of, wanted).then(
      (night) => take({ kind: 'ready', night }),
      () => take({ kind: 'failed' }),
    );
  });

  /** The open plan, if it is for an evening at this site. */
  const planHere = computed(() => {
    const plan = plans.plans.value.find(({ id }) => id === plans.open.value);
    return plan?.evening && plan.evening.site === site.value?.id ? plan : null;
  });
  const evening = computed(() => `${site.value?.id} ${date.value}`);
  effect(() => {
    void evening.value;
    stated.value = undefined;
  });
  /** The outing in hand, if it is walked here or does not say where. */
  const runHere = computed(() => {
    const state = run.state.value;
    return state && (!state.site || state.site.id === site.value?.id) ? state : null;
  });
  /** The night on the clock of the outing in hand, and the sky that the outing took along for it. */
  const onClock = computed((): { readonly night: Night; readonly own: SkyTable | null } | null => {
    const [state, of] = [worked.value, site.value];
    if (state.kind !== 'ready' || !of) return null;
    const { night } = state;
    const { sky, plan, site: walked } = runHere.value ?? {};
    if (!sky) return { night, own: null };
    // The evening of an invented site is walked at any hour; its sky ends with the night.
    if (walked?.invented && plan?.evening?.date === night.date) {
      return { night: movedNight(night, skyEnd(sky), of.zone), own: sky };
    }
    const isOfIt = sky.startMs >= night.noonMs && sky.startMs < night.nextNoonMs;
    return { night, own: isOfIt ? sky : null };
  });
  const movedMs = computed(() => {
    const state = worked.value;
    return state.kind === 'ready' && onClock.value
      ? onClock.value.night.noonMs - state.night.noonMs
      : 0;
  });
  const cloud = computed(() => {
    if (stated.value !== undefined) return stated.value;
    const own = onClock.value?.own;
    return own ? own.cloud : (planHere.value?.evening?.cloud ?? null);
  });
  const night = computed((): NightState => {
    if (!onClock.value) return worked.value.kind === 'ready' ? { kind: 'computing' } : worked.value;
    const { night: shown, own } = onClock.value;
    const sky = own ? skyWithBefore(own, shown.sky) : shown.sky;
    return { kind: 'ready', night: { ...shown, sky: { ...sky, cloud: cloud.value } } };
  });
  const readings = computed((): readonly MeterReading[] => {
    const state = runHere.value;
    if (!state) return [];
    return state.readings.map(({ at, meter, reading }) => ({
      at: at.wallMs as UtcMs,
      meter,
      ev100: evOfReading(reading),
    }));
  });

  const scene = computed(() => {
    const state = night.value;
    return state.kind === 'ready' ? fitScene(state.night.sky, readings.value) : null;
  });
  const planned = computed((): Planned | null => {
    const [plan, state] = [planHere.value, worked.value];
    if (!plan?.evening || state.kind !== 'ready' || plan.evening.date !== state.night.date)
      return null;
    const prepared = plans.prepared(plan.id).value;
    if (!prepared || !scene.value || !onClock.value) return null;
    const { noonMs, lowestSun } = onClock.value.night;
    // At dawn the same exposures are right again; a list is meant for the evening.
    const side = { fromMs: noonMs, toMs: lowestSun.at };
    const { startMs: stated } = plan.evening;
    const onThisClock = {
      ...plan.evening,
      startMs: stated === null ? null : later(stated, movedMs.value / 1000),
    };
    const begun = begunInLight(
      { ...plan, evening: onThisClock },
      gear.gear.value,
      prepared,
      scene.value,
      side,
    );
    const { startMs } = begun;
    if (startMs === null) return null;
    const letters = new Map(gear.gear.value.rigs.map(({ id, letter }) => [id, letter]));
    const frames = begun.prepared.timeline.frames.map(({ rig, startS, endS }) => ({
      letter: letters.get(rig) ?? '',
      fromMs: later(startMs, startS),
      toMs: later(startMs, endS),
    }));
    return { name: plan.name, frames };
  });

  /** @throws RangeError if the screen shows a site that is not there. */
  const siteOf = (id: SiteId): Site => {
    const found = sites.sites.peek().find((candidate) => candidate.id === id);
    if (found === undefined) throw new RangeError(`no such site: ${id}`);
    return found;
  };
  /** Parses before it puts. */
  const put = (changed: Site): SiteId | Fault => {
    const read = readSite(changed);
    if (isFault(read)) return read;
    sites.put(read, false);
    return read.id;
  };
  const change: LightDesk['change'] = (id, part) => {
    const before = sites.sites.peek().find((candidate) => candidate.id === id);
    // A field commits what is typed in it when its screen goes away, perhaps with its site.
    if (!before) return null;
    const result = put({ ...before, ...part });
    return isFault(result) ? result : null;
  };
  const proposedZone = async (at: Coordinates): Promise<Zone> => {
    try {
      const { zoneAt } = await import('../light/zoneAt.ts');
      const zone = zoneAt(at);
      if (zone) return zone;
    } catch {
      // Without that part the device's own zone is as good a proposal as any.
    }
    const { zone: name, offsetMin } = clock.now();
    const zone = parseZoneName(name);
    return isRefusal(zone) ? { kind: 'fixed', offsetMin: minutesEast(offsetMin) } : zone;
  };

  return {
    site,
    date,
    cloud,
    now,
    night,
    movedFrom: computed(() => {
      const state = worked.value;
      const isMoved = state.kind === 'ready' && Math.abs(movedMs.value) >= MINUTE_MS;
      return isMoved ? state.night.date : null;
    }),
    scene,
    planned,
    watch: () =>
      ticker.start(() => {
        now.value = minute();
      }),
    setDate(wanted) {
      date.value = wanted;
    },
    setCloud(said) {
      stated.value = said;
    },
    tryAgain() {
      tries.value += 1;
    },

    async add({ name, lat, lon, heightM }) {
      const zone = await proposedZone({ lat, lon });
      const id = newId() as SiteId;
      return put({ ...SITE_DEFAULTS, id, name, latDeg: lat, lonDeg: lon, heightM, zone });
    },
    change,
    async move(id, to) {
      const before = siteOf(id);
      const proposedThen = await proposedZone({ lat: before.latDeg, lon: before.lonDeg });
      const zone = sameZone(before.zone, proposedThen) ? await proposedZone(to) : before.zone;
      return change(id, { latDeg: to.lat, lonDeg: to.lon, zone });
    },
    copy: (id, name) => put({ ...siteOf(id), id: newId() as SiteId, name, invented: false }),
    remove(id) {
      const gone = siteOf(id);
      sites.put(gone, true);
      undo.offer({ act: 'deleted', thing: 'site', name: gone.name }, () => sites.put(gone, false));
    },
    proposedZone,
    whereAmI: browserPosition(geolocation).ask,
  };
}

/** The one desk of an app. */
export const lightDesk = madeOnce(createLightDesk);
