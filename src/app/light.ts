import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Clock } from '../device/clock.ts';
import { browserPosition, type Geolocating, type PositionAnswer } from '../device/position.ts';
import type { Ticker } from '../device/ticker.ts';
import { type Fault, isFault } from '../gear/read.ts';
import { fitScene } from '../light/fit.ts';
import type { Night } from '../light/night.ts';
import { readSite } from '../light/parse.ts';
import { PRACTICE_DATE } from '../light/practice.ts';
import { evOfReading, type MeterReading } from '../light/reading.ts';
import { assumedScene, type Scene } from '../light/scene.ts';
import { SITE_DEFAULTS, type Site, type SiteId } from '../light/site.ts';
import type { Stretch } from '../light/skyTable.ts';
import { parseZoneName, sameZone, type Zone } from '../light/zones.ts';
import { bestStart } from '../plan/light.ts';
import type { Plan } from '../plan/plan.ts';
import { type Prepared, preparePlan } from '../plan/prepare.ts';
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
  /**
   * To the minute before; moves while somebody watches. While the practice outing is in hand, now
   * on its own evening.
   */
  readonly now: ReadonlySignal<UtcMs>;
  readonly night: ReadonlySignal<NightState>;
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

/** When a list is to begin: as it says, or when the light is right for it; null = nobody knows. */
function plannedStart(plan: Plan, prepared: Prepared, scene: Scene, night: Night): UtcMs | null {
  // At dawn the same exposures are right again; a list is meant for the evening.
  const side = { fromMs: night.noonMs, toMs: night.lowestSun.at };
  return plan.evening?.startMs ?? bestStart(plan, prepared, scene, side)?.startMs ?? null;
}

const MINUTE_MS = 60_000;
/** Before the next solar noon people no longer mean this night by 'tonight' (as in `eveningDate`). */
const TONIGHT_ENDS_S = 6 * 3600;
const MOST_NIGHTS = 12;

export function createLightDesk(world: LightWorld): LightDesk {
  const { sites, run, plans, gear, undo, newId, clock, ticker, geolocation } = world;
  const site = sites.inUse;
  const date = signal<string | null>(null);
  /** Undefined = as the plan says, if it does; it is said of one evening at one site. */
  const stated = signal<SkyCondition | null | undefined>(undefined);
  const minute = (): UtcMs => (Math.floor(clock.now().wallMs / MINUTE_MS) * MINUTE_MS) as UtcMs;
  const now = signal(minute());
  const tries = signal(0);

  /** Without its cloud, which is said later and changes no position. */
  const worked = signal<NightState>({ kind: 'computing' });
  const nights = new Map<string, Night>();
  const nightFor = async (of: Site, wanted: string | null): Promise<Night> => {
    const { eveningDate, nightOf } = await import('../light/night.ts');
    // An invented site has an evening of its own.
    const on = wanted ?? (of.invented ? PRACTICE_DATE : eveningDate(of, now.peek()));
    const key = JSON.stringify([on, of.latDeg, of.lonDeg, of.heightM, of.ridgeDeg, of.zone]);
    const known = nights.get(key);
    if (known) return known;
    const night = nightOf(of, on, null);
    const [oldest] = nights.keys();
    if (nights.size >= MOST_NIGHTS && oldest !== undefined) nights.delete(oldest);
    nights.set(key, night);
    return night;
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
  const cloud = computed(() =>
    stated.value === undefined ? (planHere.value?.evening?.cloud ?? null) : stated.value,
  );
  const evening = computed(() => `${site.value?.id} ${date.value}`);
  effect(() => {
    void evening.value;
    stated.value = undefined;
  });
  const night = computed((): NightState => {
    const state = worked.value;
    if (state.kind !== 'ready') return state;
    const sky = { ...state.night.sky, cloud: cloud.value };
    return { kind: 'ready', night: { ...state.night, sky } };
  });
  /** The outing in hand, if it is walked here or does not say where. */
  const runHere = computed(() => {
    const state = run.state.value;
    return state && (!state.site || state.site.id === site.value?.id) ? state : null;
  });
  /** The outing whose sky stands on another clock, as that of an invented site does. */
  const movedOuting = computed(() => (runHere.value?.site?.invented ? runHere.value.outing : null));
  /** From the clock to the evening that is drawn. */
  const shiftS = computed((): number => {
    const state = night.value;
    const moved = movedOuting.value && run.state.peek();
    const { sky, plan, gear: carried } = moved || {};
    if (!sky || !plan || !carried || state.kind !== 'ready') return 0;
    if (plan.evening?.date !== state.night.date) return 0;
    const started = plannedStart(
      plan,
      preparePlan(plan, carried),
      assumedScene(state.night.sky),
      state.night,
    );
    return started === null ? 0 : (started - sky.startMs) / 1000;
  });
  const readings = computed((): readonly MeterReading[] => {
    const state = runHere.value;
    if (!state) return [];
    return state.readings.map(({ at, meter, reading }) => ({
      at: later(at.wallMs as UtcMs, shiftS.value),
      meter,
      ev100: evOfReading(reading),
    }));
  });

  const scene = computed(() => {
    const state = night.value;
    return state.kind === 'ready' ? fitScene(state.night.sky, readings.value) : null;
  });
  const planned = computed((): Planned | null => {
    const [plan, state] = [planHere.value, night.value];
    if (!plan || state.kind !== 'ready' || plan.evening?.date !== state.night.date) return null;
    const prepared = plans.prepared(plan.id).value;
    if (!prepared || !scene.value) return null;
    const startMs = plannedStart(plan, prepared, scene.value, state.night);
    if (startMs === null) return null;
    const letters = new Map(gear.gear.value.rigs.map(({ id, letter }) => [id, letter]));
    const frames = prepared.timeline.frames.map(({ rig, startS, endS }) => ({
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
    now: computed(() => later(now.value, shiftS.value)),
    night,
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
