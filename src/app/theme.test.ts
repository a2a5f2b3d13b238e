import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { FakeClock } from '../../test/contract/fakes/clock.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import type { Site, SiteId } from '../light/site.ts';
import type { SkyTable } from '../light/skyTable.ts';
import type { MadeId } from '../outing/ids.ts';
import type { RunState } from '../outing/state.ts';
import { degrees, ev, utc } from '../science/units.ts';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { createPreferences, type Preferences } from './preferences.ts';
import { createSaving } from './saving.ts';
import { createTheme, type ThemeDesk } from './theme.ts';

const HOUR_MS = 3_600_000;
/** 17:30 on the practice evening; there civil dusk comes at 17:52. */
const clock = new FakeClock();
const begin = clock.wallMs;
const state = signal<RunState | null>(null);
const underWay = signal(false);
const inUse = signal<Site | null>(null);
let store: ReturnType<typeof memoryStore>;
let preferences: Preferences;
let theme: ThemeDesk;
let tick = () => {};

const start = (): ThemeDesk =>
  createTheme({
    preferences,
    run: { state, underWay },
    sites: { inUse },
    store,
    saving: createSaving(),
    clock,
    ticker: {
      start(look) {
        tick = look;
        look();
        return () => {
          tick = () => {};
        };
      },
    },
  });

beforeEach(() => {
  clock.wallMs = begin;
  state.value = null;
  underWay.value = false;
  inUse.value = null;
  store = memoryStore({ makeId: () => 'writer', reader: eventReader });
  preferences = createPreferences({
    store,
    saving: createSaving(),
    startsDark: false,
    startsIn: 'en',
  });
  theme = start();
});
afterEach(() => {
  preferences.change({ bySun: false });
});

const goTo = (ms: number): void => {
  clock.wallMs = ms;
  tick();
};

/** Dark from one hour on, for four hours. */
const sky: SkyTable = {
  startMs: utc(begin),
  clearEv100: Array.from({ length: 60 * 8 }, () => ev(0)),
  cloud: null,
  dark: [{ fromMs: utc(begin + HOUR_MS), toMs: utc(begin + 5 * HOUR_MS) }],
};
const outing = (open: readonly string[]): RunState =>
  ({ sky, open: open as readonly MadeId[] }) as RunState;

test('what was chosen holds until the sun is to decide, and where nothing is known of it', () => {
  expect(theme.shown.value).toBe('day');
  preferences.change({ theme: 'night' });
  expect(theme.shown.value).toBe('night');
  preferences.change({ bySun: true });
  expect(theme.shown.value).toBe('night');
  preferences.change({ theme: 'day' });
  expect(theme.shown.value).toBe('day');
});

test('by the sun it is night from civil dusk to dawn of the outing under way', () => {
  preferences.change({ bySun: true, theme: 'night' });
  state.value = outing([]);
  underWay.value = true;
  expect(theme.shown.value).toBe('day');
  goTo(begin + HOUR_MS - 60_000);
  expect(theme.shown.value).toBe('day');
  goTo(begin + HOUR_MS);
  expect(theme.shown.value).toBe('night');
  goTo(begin + 5 * HOUR_MS);
  expect(theme.shown.value).toBe('day');
  // Past the end of its sky the last choice holds again.
  goTo(begin + 9 * HOUR_MS);
  expect(theme.shown.value).toBe('night');
});

test('it waits for the frame that is exposing, but not when the user asks', () => {
  preferences.change({ bySun: true });
  underWay.value = true;
  state.value = outing(['frame-1']);
  goTo(begin + 2 * HOUR_MS);
  expect(theme.shown.value).toBe('day');
  state.value = outing([]);
  expect(theme.shown.value).toBe('night');
  state.value = outing(['frame-2']);
  goTo(begin + 6 * HOUR_MS);
  expect(theme.shown.value).toBe('night');
  preferences.change({ bySun: false, theme: 'day' });
  expect(theme.shown.value).toBe('day');
});

test('without an outing the site in use decides, worked out by a later part and remembered', async () => {
  inUse.value = PRACTICE_SITE;
  preferences.change({ bySun: true, theme: 'night' });
  expect(theme.shown.value).toBe('night');
  await vi.waitFor(() => expect(theme.shown.value).toBe('day'), { timeout: 10_000 });
  goTo(Date.UTC(2027, 1, 12, 17, 52));
  expect(theme.shown.value).toBe('day');
  goTo(Date.UTC(2027, 1, 12, 17, 53));
  expect(theme.shown.value).toBe('night');

  const again = start();
  expect(again.shown.value).toBe('night');
  goTo(begin);
  expect(again.shown.value).toBe('night');
  await again.load();
  // Without waiting for any part.
  expect(again.shown.value).toBe('day');
  // Another site's hours are not taken for this one's.
  inUse.value = { ...PRACTICE_SITE, id: 'south' as SiteId, latDeg: degrees(-54.9) };
  expect(again.shown.value).toBe('night');
}, 20_000);

test('what another version remembered of the dark is left', async () => {
  await store.putSetting('dark-hours', { site: PRACTICE_SITE.id, fromMs: 0, toMs: 4e12, dark: 1 });
  inUse.value = PRACTICE_SITE;
  preferences.change({ bySun: true, theme: 'night' });
  await theme.load();
  expect(theme.shown.value).toBe('night');
});
