import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Clock } from '../device/clock.ts';
import type { Cues } from '../device/cues.ts';
import type { OutingLocks, Ownership } from '../device/locks.ts';
import type { Ticker } from '../device/ticker.ts';
import type { ScreenLock, WakeLock } from '../device/wakeLock.ts';
import type { Gear } from '../gear/rig.ts';
import type { Site } from '../light/site.ts';
import type { SkyTable } from '../light/skyTable.ts';
import type { Draft, OutingEvent } from '../outing/events.ts';
import { fold } from '../outing/fold.ts';
import type { EventId, OutingId, WriterId } from '../outing/ids.ts';
import type { Instant } from '../outing/instant.ts';
import type { Tap } from '../outing/next.ts';
import { allResting, type Resting } from '../outing/rest.ts';
import { seal } from '../outing/seal.ts';
import type { RunState } from '../outing/state.ts';
import { type Step, stepAt } from '../outing/step.ts';
import type { Plan } from '../plan/plan.ts';
import { preparePlan } from '../plan/prepare.ts';
import { stopsStart } from '../plan/problems.ts';
import type { UtcMs } from '../science/units.ts';
import type { OutingSummary, Store, StoreFault } from '../store/contract.ts';
import { type SpokenWords, tellExposures } from './exposureCues.ts';
import { faultOf, type Journal, openJournal, type Served } from './journal.ts';
import { createRunLight, type RunLight } from './runLight.ts';

/** What running an outing needs of the world. */
export interface RunWorld {
  readonly store: Store;
  readonly writer: WriterId;
  readonly clock: Clock;
  readonly newId: () => string;
  readonly ticker: Ticker;
  readonly wakeLock: WakeLock;
  readonly locks: OutingLocks;
  readonly cues: Cues;
  /** In the language in use. */
  readonly spoken: () => SpokenWords;
  /** Where a plan is to be walked; null where it does not say. */
  readonly siteOf: (plan: Plan) => Site | null;
  /** The sky over a site from now on. Comes with a part that loads later, so that it may fail. */
  readonly skyOver: (plan: Plan, gear: Gear, site: Site, now: UtcMs) => Promise<SkyTable>;
}

/** Where an outing stands that two windows want, as each of them says it. */
export type HandOver =
  | 'none'
  /** This window has asked and waits. */
  | 'asking'
  /** It was given up for this window. */
  | 'taken'
  /** The other one did not answer, and it was taken all the same. */
  | 'stolen'
  /** The other one holds what is not saved, and keeps it. */
  | 'kept'
  /** It was this window's, but what the other one wrote cannot be read: given back. */
  | 'unread'
  /** This window has given it up, or it was taken from it as it did not answer. */
  | 'given';

export type Started =
  | { readonly how: 'started' }
  /** One at a time: heat, swaps and fade of two would mix. */
  | { readonly how: 'another-runs' }
  | { readonly how: 'plan-has-problems' }
  | { readonly how: 'not-saved'; readonly fault: StoreFault };

/** The outing in hand and what it asks for now. */
export interface RunDesk {
  /** Null when no outing is in hand. */
  readonly journal: ReadonlySignal<Journal | null>;
  readonly state: ReadonlySignal<RunState | null>;
  readonly step: ReadonlySignal<Step | null>;
  readonly resting: ReadonlySignal<readonly Resting[]>;
  readonly light: RunLight;
  /** The clock as last looked at; moves about five times a second while an outing is in hand. */
  readonly now: ReadonlySignal<Instant>;
  readonly screenLock: ReadonlySignal<ScreenLock>;
  readonly ownership: ReadonlySignal<Ownership>;
  readonly handOver: ReadonlySignal<HandOver>;
  /** True from a start-up that found an outing under way until the next tap. */
  readonly cameBack: ReadonlySignal<boolean>;
  /**
   * The browser threw stored events away under us and they were written again from memory: how
   * many. Null = it did not happen.
   */
  readonly savedAgain: ReadonlySignal<number | null>;
  /** A newer version in another window needs the database: this window has to be loaded anew. */
  readonly mustReload: ReadonlySignal<boolean>;
  /** Whether an outing is under way: no update, no second outing. */
  readonly underWay: ReadonlySignal<boolean>;
  /**
   * Takes the outing in hand again that nobody has ended. To be awaited before the first screen.
   *
   * @param outings those of this device.
   * @throws StoreFault if the store cannot be read.
   */
  resume(outings: readonly OutingSummary[]): Promise<void>;
  start(plan: Plan, gear: Gear): Promise<Started>;
  /** Takes an outing of this device in hand again. */
  open(outing: OutingId): Promise<void>;
  /** Puts an ended outing aside. */
  leave(): void;
  /**
   * Keeps the clock going and the screen on while a clock is looked at, also after the end.
   *
   * @returns ends it.
   */
  showClock(): () => void;
  /** Serves a tap: unlocks sound and keeps the screen on, which some browsers allow only then. */
  tap(tap: Tap): Promise<Served>;
  undo(): Promise<Served>;
  /** Tries to bring what is held in memory to disk. */
  saveAgain(): Promise<Served>;
  /**
   * Takes the outing in hand over from the window that has it: that one finishes its write and gives
   * it up, or it is taken from it if it does not answer. `handOver` says what came of it.
   */
  takeOver(): Promise<void>;
}

/** How long a start waits for the part that knows the sky. */
const SKY_WITHIN_MS = 5000;

export function createRunDesk(world: RunWorld): RunDesk {
  const journal = signal<Journal | null>(null);
  const now = signal(world.clock.now() as Instant);
  const ownership = signal<Ownership>('owner');
  const handOver = signal<HandOver>('none');
  /** Another window has asked: no further tap is taken while the last ones are written. */
  let giving = false;
  const screenLock = signal<ScreenLock>(world.wakeLock.state);
  const cameBack = signal(false);
  const savedAgain = signal<number | null>(null);
  const mustReload = signal(false);
  const state = computed(() => journal.value?.state.value ?? null);
  const step = computed(() => state.value && stepAt(state.value, now.value));
  const underWay = computed(() => state.value !== null && state.value.phase !== 'ended');
  const clocksShown = signal(0);
  const awake = computed(() => underWay.value || clocksShown.value > 0);

  const look = (): Instant => {
    now.value = world.clock.now() as Instant;
    return now.peek();
  };
  const newId = () => world.newId() as EventId;

  world.wakeLock.onChange((lock) => {
    screenLock.value = lock;
  });
  world.store.onClosed(({ kind }) => {
    if (kind === 'newer') {
      mustReload.value = true;
      return;
    }
    const events = journal.peek()?.events.peek();
    if (!events) return;
    world.store.merge(events).then(
      (lost) => {
        if (lost > 0) savedAgain.value = lost;
      },
      // The next tap meets the same disk and says so.
      () => undefined,
    );
  });
  // The clock is looked at and the screen kept on only while there is something to walk or to see.
  effect(() => {
    if (!awake.value) return;
    void world.wakeLock.take();
    const stop = world.ticker.start(look);
    return () => {
      stop();
      void world.wakeLock.release();
    };
  });

  const take = async (outing: OutingId, events: readonly OutingEvent[]): Promise<void> => {
    ownership.value = await world.locks.claim(outing);
    handOver.value = 'none';
    look();
    const { store, writer } = world;
    const mayWrite = () => ownership.peek() !== 'elsewhere';
    journal.value = openJournal(outing, events, { store, writer, now: look, newId, mayWrite });
  };

  /** The journal of this outing, if it is the one in hand. */
  const inHand = (outing: string): Journal | null => {
    const mine = journal.peek();
    return mine?.outing === outing ? mine : null;
  };
  world.locks.onAsked(async (outing) => {
    const mine = inHand(outing);
    if (!mine || ownership.peek() !== 'owner') return false;
    giving = true;
    try {
      // Waits for every tap that was made before.
      if ((await mine.retry()).how !== 'recorded') return false;
      ownership.value = 'elsewhere';
      handOver.value = 'given';
      return true;
    } finally {
      giving = false;
    }
  });
  world.locks.onStolen((outing) => {
    if (!inHand(outing)) return;
    ownership.value = 'elsewhere';
    handOver.value = 'given';
  });
  world.locks.onWritten((outing) => {
    const mine = inHand(outing);
    // A disk that cannot be read now is read at the next word; whoever takes over is told.
    const later = () => undefined;
    if (mine && ownership.peek() !== 'owner') mine.refresh().catch(later);
    if (journal.peek() === null) begunElsewhere().catch(later);
  });
  effect(() => {
    const mine = journal.value;
    if (mine && mine.events.value.length > 0 && ownership.peek() !== 'elsewhere')
      world.locks.tellWritten(mine.outing);
  });

  /** Takes the outing in hand that is under way on this device, perhaps in another window. */
  const begunElsewhere = async (): Promise<void> => desk.resume(await world.store.outings());

  /** A start waits for nothing that it can do without: null if the sky does not come. */
  const skyInTime = (plan: Plan, gear: Gear, site: Site): Promise<SkyTable | null> =>
    Promise.race([
      world.skyOver(plan, gear, site, look().wallMs as UtcMs).catch(() => null),
      new Promise<null>((give) => {
        setTimeout(() => give(null), SKY_WITHIN_MS);
      }),
    ]);
  /** From the tap until the journal has begun. */
  let starting = false;

  /** Two windows never write one outing: the other one's taps would take our numbers. */
  const writable = (): Journal | null =>
    ownership.peek() === 'elsewhere' || giving ? null : journal.peek();

  const served = (answer: Served): Served => {
    look();
    if (answer.how === 'recorded' || answer.how === 'not-saved') cameBack.value = false;
    return answer;
  };

  const desk: RunDesk = {
    journal,
    state,
    step,
    resting: computed(() => (state.value ? allResting(state.value, now.value) : [])),
    light: createRunLight(state, now),
    now,
    screenLock,
    ownership,
    handOver,
    cameBack,
    savedAgain,
    mustReload,
    underWay,
    async resume(outings) {
      // The one that was begun last here is the only one that can be under way.
      for (const { outing } of outings.toSorted((a, b) => b.firstWallMs - a.firstWallMs)) {
        const events = await world.store.events(outing);
        if (!events.some(isStartOf(world.writer))) continue;
        if (fold(events)?.phase === 'ended') return;
        await take(outing, events);
        cameBack.value = true;
        return;
      }
    },
    async start(plan, gear) {
      if (underWay.peek() || starting) return { how: 'another-runs' };
      const { frames, problems } = preparePlan(plan, gear);
      if (problems.some(stopsStart)) return { how: 'plan-has-problems' };
      starting = true;
      const outing = world.newId() as OutingId;
      const site = world.siteOf(plan);
      try {
        // Another window may have begun one since this one looked.
        await begunElsewhere();
        if (underWay.peek()) return { how: 'another-runs' };
        const sky = site && (await skyInTime(plan, gear, site));
        const data = { plan, gear: gearOf(plan, gear), frames, site, sky };
        const draft: Draft = { id: newId(), kind: 'outing-started', data };
        const place = { outing, writer: world.writer, seq: 1 };
        const begun = seal([draft], look(), place);
        await world.store.append(begun);
        // Not read back: it is on the disk, and a disk that answers no more does not unmake it.
        await take(outing, begun);
        return { how: 'started' };
      } catch (cause) {
        return { how: 'not-saved', fault: faultOf(cause) };
      } finally {
        starting = false;
      }
    },
    async open(outing) {
      if (journal.peek()?.outing !== outing) await take(outing, await world.store.events(outing));
    },
    leave() {
      const outing = journal.peek()?.outing;
      if (outing) world.locks.release(outing);
      journal.value = null;
    },
    showClock() {
      clocksShown.value += 1;
      return () => {
        clocksShown.value -= 1;
      };
    },
    async tap(tap) {
      world.cues.unlock();
      if (underWay.peek()) void world.wakeLock.take();
      return served(await (writable()?.tap(tap) ?? NOT_HERE));
    },
    async undo() {
      return served(await (writable()?.undo() ?? NOT_HERE));
    },
    async saveAgain() {
      return served(await (writable()?.retry() ?? NOT_HERE));
    },
    async takeOver() {
      const mine = journal.peek();
      if (!mine || ownership.peek() !== 'elsewhere' || handOver.peek() === 'asking') return;
      handOver.value = 'asking';
      const asked = await world.locks.ask(mine.outing);
      const silent = asked === 'silent';
      const got = silent ? await world.locks.steal(mine.outing) : asked;
      if (got !== 'owner') {
        handOver.value = 'kept';
        return;
      }
      try {
        await mine.refresh();
      } catch {
        world.locks.release(mine.outing);
        handOver.value = 'unread';
        return;
      }
      ownership.value = 'owner';
      handOver.value = silent ? 'stolen' : 'taken';
      cameBack.value = true;
      look();
    },
  };

  tellExposures({
    cues: world.cues,
    state,
    look,
    words: world.spoken,
    onLateEnd(made, lateS) {
      // The app's own remark; the frame's time is the body's and stays as it is.
      void writable()?.tap({ tap: 'cue-late', made, lateS });
    },
  });

  return desk;
}

const isStartOf =
  (writer: WriterId) =>
  (event: OutingEvent): boolean =>
    event.kind === 'outing-started' && event.writer === writer;

/** No outing is in hand, or another window has it. */
const NOT_HERE: Served = { how: 'refused', rule: 'runs-elsewhere' };

/** Only what the plan uses is frozen into its outing. */
function gearOf(plan: Plan, gear: Gear): Gear {
  const rigs = gear.rigs.filter(({ id }) => plan.rigs.includes(id));
  return {
    rigs,
    bodies: gear.bodies.filter(({ id }) => rigs.some(({ bodyId }) => bodyId === id)),
    lenses: gear.lenses.filter(({ id }) => rigs.some(({ lensId }) => lensId === id)),
  };
}
