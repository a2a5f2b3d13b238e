import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Device } from '../device/device.ts';
import type { Store } from '../store/contract.ts';
import { type CueDesk, createCueDesk } from './cueDesk.ts';
import type { KeptDrafts } from './drafts.ts';
import type { SpokenWords } from './exposureCues.ts';
import { createFileDesk, type FileDesk } from './files.ts';
import type { GearWorld } from './gear.ts';
import type { GearFileWorld } from './gearFiles.ts';
import { createKeptGear, type KeptGear } from './keptGear.ts';
import { createKeptPlans, type KeptPlans } from './keptPlans.ts';
import type { LightWorld } from './light.ts';
import { createLogDesk, type LogDesk } from './log.ts';
import { type Browser, createNavigation, type Navigation } from './navigation.ts';
import type { PlanWorld } from './plans.ts';
import { createPreferences, type Language, type Preferences, type Theme } from './preferences.ts';
import { createReadiness, type Readiness } from './readiness.ts';
import { createRunDesk, type RunDesk } from './run.ts';
import type { SafetyWorld } from './safetyCopy.ts';
import { createSaving, type Saving } from './saving.ts';
import { createSiteDesk, type SiteDesk } from './sites.ts';
import { createTheme } from './theme.ts';
import { createUndo, type Undo } from './undo.ts';

/**
 * What the desks are made of that load later (`drafts.ts`, `gear.ts`, `gearFiles.ts`, `light.ts`,
 * `plans.ts`).
 */
export type DeskWorld = GearWorld &
  GearFileWorld &
  LightWorld &
  PlanWorld & { readonly drafts: KeptDrafts; readonly safety: SafetyWorld };

/** The whole app as the screens see it: signals to show, acts to call. */
export interface App {
  readonly version: string;
  readonly navigation: Navigation;
  readonly preferences: Preferences;
  /** The theme on the screen, chosen or by the sun. */
  readonly theme: ReadonlySignal<Theme>;
  readonly saving: Saving;
  readonly undo: Undo;
  readonly readiness: Readiness;
  readonly gear: KeptGear;
  readonly plans: KeptPlans;
  readonly sites: SiteDesk;
  readonly desks: DeskWorld;
  readonly run: RunDesk;
  readonly log: LogDesk;
  readonly files: FileDesk;
  readonly cues: CueDesk;
  /** Black from edge to edge, also the system's bars, as long as it is asked for. */
  goDark(dark: boolean): void;
  /** The local calendar day, YYYY-MM-DD. */
  today(): string;
  /** On iOS in a tab nothing entered reaches the installed app: install comes first. */
  readonly installFirst: boolean;
  /** Started from the home screen, in a window of its own. */
  readonly installed: boolean;
  /** The app has never been used on this device: the first screen is due. */
  readonly firstStart: ReadonlySignal<boolean>;
  /**
   * Answers the first screen with the practice outing.
   *
   * @throws what the browser throws if the part that holds it is not on the device.
   */
  tryPractice(): Promise<void>;
  /** Answers the first screen with a body of one's own. */
  beginWithOwnBody(): void;
  /** Answers the first screen with what was backed up elsewhere. */
  beginWithBackup(): void;
  /** A newer version waits, and nothing runs that it would interrupt. */
  readonly updateOffered: ReadonlySignal<boolean>;
  applyUpdate(): void;
}

/** What the app is made of; everything of the browser comes in here. */
export interface Parts {
  readonly version: string;
  readonly store: Store;
  readonly device: Device;
  readonly browser: Browser;
  /** The device asks for dark screens; decides the theme until the user does. */
  readonly startsDark: boolean;
  readonly applyUpdate: () => void;
  /** The language until the user chooses one. */
  readonly startsIn: Language;
  /** What the voice says, in the language in use. */
  readonly spoken: () => SpokenWords;
}

/** The grounds of the two themes (theme/tokens.css), for the system's bars around the page. */
const PAGE_THEMES = {
  day: { name: 'day', ground: '#fafaf7', scheme: 'light' },
  night: { name: 'night', ground: '#000000', scheme: 'dark' },
} as const;

const DRAFTS_KEY = 'drafts';

/**
 * Puts the app together and reads what is kept.
 *
 * @throws StoreFault if the store cannot be read.
 */
export async function createApp(parts: Parts): Promise<App> {
  const { device, store } = parts;
  const saving = createSaving();
  const undo = createUndo();
  const readiness = createReadiness({ persistence: device.persistence });
  const preferences = createPreferences({ ...parts, saving });
  const onFirstOwnBody = readiness.askToKeep;
  const gear = createKeptGear({ store, saving, onFirstOwnBody });
  const plans = createKeptPlans({ store, gear: gear.gear, saving });
  const sites = createSiteDesk({ store, saving });
  const loads = [preferences, gear, plans, sites].map((desk) => desk.load());
  // All at once: one question after the other would hold up the first screen.
  const [writer, outings, foundDrafts] = await Promise.all([
    store.writer(),
    store.outings(),
    store.setting(DRAFTS_KEY),
    ...loads,
  ]);
  const run = createRunDesk({
    store,
    writer,
    clock: device.clock,
    newId: device.ids.make,
    ticker: device.ticker,
    wakeLock: device.wakeLock,
    locks: device.locks,
    cues: device.cues,
    spoken: parts.spoken,
    siteOf: ({ evening }) => sites.sites.peek().find(({ id }) => id === evening?.site) ?? null,
    skyOver: async (...asked) => (await import('./eveningSky.ts')).outingSky(...asked),
  });
  const { version } = parts;
  const { share, clock, locks, ticker, geolocation } = device;
  const newId = device.ids.make;
  const log = createLogDesk({ store, writer, clock, newId, locks, run, version });
  const files = createFileDesk({
    store,
    share,
    clock,
    saving,
    gear,
    plans,
    sites,
    log,
    run,
    version,
    onFirstOwnBody,
  });
  const theme = createTheme({ preferences, run, sites, store, saving, clock, ticker });
  await Promise.all([run.resume(outings), files.load(), theme.load()]);
  const navigation = createNavigation(parts.browser);
  // Whoever starts the app in the middle of an evening wants the evening.
  if (run.underWay.peek() && parts.browser.location.hash === '') navigation.replace('outing');
  const dark = signal(false);
  effect(() => {
    const shown = PAGE_THEMES[theme.shown.value];
    device.setPageTheme(dark.value ? { ...shown, ground: PAGE_THEMES.night.ground } : shown);
  });
  return {
    version: parts.version,
    navigation,
    preferences,
    theme: theme.shown,
    saving,
    undo,
    readiness,
    gear,
    plans,
    sites,
    desks: {
      drafts: {
        found: foundDrafts,
        keep: (drafts) => saving.save(() => store.putSetting(DRAFTS_KEY, drafts)),
      },
      sites,
      plans,
      gear,
      files,
      run,
      undo,
      newId,
      clock,
      ticker,
      geolocation,
      share,
      version,
      safety: { pick: device.saveFilePicker, run, files, store, saving, clock },
    },
    run,
    log,
    files,
    cues: createCueDesk(device.cues, preferences),
    goDark: (wanted) => {
      dark.value = wanted;
    },
    today() {
      const { wallMs, offsetMin } = device.clock.now();
      return new Date(wallMs + offsetMin * 60_000).toISOString().slice(0, 10);
    },
    installFirst: device.platform.installFirst,
    installed: device.platform.installed,
    firstStart: computed(
      () => !preferences.current.value.welcomed && gear.gear.value.bodies.length === 0,
    ),
    async tryPractice() {
      const { addPractice } = await import('./practice.ts');
      addPractice({ gear, plans, sites });
      preferences.change({ welcomed: true });
      navigation.replace('plan');
    },
    beginWithOwnBody() {
      preferences.change({ welcomed: true });
      navigation.go('gear', 'body', 'new');
    },
    beginWithBackup() {
      preferences.change({ welcomed: true });
      navigation.go('log', 'files');
    },
    updateOffered: computed(() => readiness.updateWaits.value && !run.underWay.value),
    applyUpdate: parts.applyUpdate,
  };
}
