import { beforeEach, expect, test, vi } from 'vitest';
import { type Browser, createNavigation } from './navigation.ts';

/** A window's history that, as the real one, arrives later when it is told to go back. */
function fakeBrowser(hash: string) {
  const entries: { state: unknown; hash: string }[] = [{ state: null, hash }];
  let index = 0;
  let arrive: () => void = () => {
    throw new Error('nobody listens');
  };
  const pending: (() => void)[] = [];
  const here = () => {
    const entry = entries[index];
    if (entry === undefined) throw new Error('left the page');
    return entry;
  };
  const browser: Browser = {
    location: {
      get hash() {
        return here().hash;
      },
    },
    history: {
      get state() {
        return here().state;
      },
      go(by = 0) {
        pending.push(() => {
          index += by;
          arrive();
        });
      },
      pushState(state, _unused, url) {
        entries.splice(index + 1);
        entries.push({ state, hash: String(url) });
        index += 1;
      },
      replaceState(state, _unused, url) {
        entries[index] = { state, hash: String(url) };
      },
    },
    addEventListener(_type, listener) {
      arrive = listener;
    },
  };
  return {
    browser,
    entries,
    at: () => here().hash,
    settle() {
      for (let act = pending.shift(); act !== undefined; act = pending.shift()) act();
    },
    pressBack() {
      index -= 1;
      arrive();
    },
  };
}

let fake: ReturnType<typeof fakeBrowser>;
beforeEach(() => {
  fake = fakeBrowser('');
});

test('an address opens its detail, an unknown one the first place', () => {
  const at = (hash: string) => createNavigation(fakeBrowser(hash).browser).at.value;
  expect(at('#/log/outing%201/frame')).toEqual({ place: 'log', path: ['outing 1', 'frame'] });
  expect(at('#/elsewhere/x')).toEqual({ place: 'gear', path: [] });
  expect(at('#/plan/%E0%A4%A')).toEqual({ place: 'plan', path: ['%E0%A4%A'] });
});

test('back leads through the details in the order they were opened', () => {
  const navigation = createNavigation(fake.browser);
  navigation.go('gear', 'body', 'b1');
  navigation.go('plan');
  fake.pressBack();
  expect(navigation.at.value).toEqual({ place: 'gear', path: ['body', 'b1'] });
  navigation.back();
  fake.settle();
  expect(navigation.at.value).toEqual({ place: 'gear', path: [] });
});

test('back from a detail that was opened by its address leads up, not out of the app', () => {
  fake = fakeBrowser('#/gear/body');
  const navigation = createNavigation(fake.browser);
  navigation.back();
  expect(navigation.at.value).toEqual({ place: 'gear', path: [] });
  expect(fake.at()).toBe('#/gear');
});

test('a place comes back where it was left, and a second tap leads to its first screen', () => {
  const navigation = createNavigation(fake.browser);
  navigation.go('plan', 'p1');
  navigation.visit('gear');
  navigation.visit('plan');
  expect(navigation.at.value.path).toEqual(['p1']);
  navigation.visit('plan');
  expect(navigation.at.value.path).toEqual([]);
});

test('the back gesture closes what lies over the screen and leaves the screen', () => {
  const navigation = createNavigation(fake.browser);
  navigation.go('gear', 'body', 'b1');
  let open = true;
  navigation.hold(() => {
    open = false;
  });
  fake.pressBack();
  expect(open).toBe(false);
  expect(navigation.at.value.path).toEqual(['body', 'b1']);
  expect(fake.at()).toBe('#/gear/body/b1');
});

test('closing by a button leaves no idle step for the back gesture', () => {
  const navigation = createNavigation(fake.browser);
  navigation.go('gear', 'body', 'b1');
  const release = navigation.hold(() => undefined);
  release();
  release();
  fake.settle();
  fake.pressBack();
  expect(navigation.at.value.path).toEqual([]);
});

test('a move from within a sheet closes it and does not lose the new screen', () => {
  const navigation = createNavigation(fake.browser);
  let release: () => void = () => undefined;
  let closed = 0;
  release = navigation.hold(() => {
    closed += 1;
    release();
  });
  navigation.go('plan', 'p1');
  expect(navigation.at.value).toEqual({ place: 'plan', path: ['p1'] });
  fake.settle();
  expect(closed).toBe(1);
  expect(fake.at()).toBe('#/plan/p1');
  fake.pressBack();
  expect(navigation.at.value).toEqual({ place: 'gear', path: [] });
});

test('one sheet after another in the same breath keeps the history straight', () => {
  const navigation = createNavigation(fake.browser);
  navigation.go('gear', 'body', 'b1');
  const before = fake.entries.length;
  const release = navigation.hold(() => undefined);
  release();
  let second = true;
  navigation.hold(() => {
    second = false;
  });
  fake.settle();
  expect(fake.entries.length).toBe(before + 1);
  fake.pressBack();
  expect(second).toBe(false);
  expect(fake.at()).toBe('#/gear/body/b1');
});

test('a way back that the browser drops does not block the ones after it', () => {
  vi.useFakeTimers();
  try {
    const browser = fakeBrowser('#/gear');
    const navigation = createNavigation(browser.browser);
    const closed = navigation.hold(() => undefined);
    browser.browser.history.go = () => undefined;
    closed();
    navigation.go('plan');
    expect(browser.at()).toBe('#/gear');
    vi.advanceTimersByTime(1000);
    expect(browser.at()).toBe('#/plan');
  } finally {
    vi.useRealTimers();
  }
});
