import { beforeEach, describe, expect, it } from 'vitest';
import { FakePage } from '../../test/contract/fakes/page.ts';
import { FakeScreen } from '../../test/contract/fakes/screen.ts';
import { type ScreenLock, screenWakeLock, type WakeLock } from './wakeLock.ts';

let page: FakePage;
let screen: FakeScreen;
let lock: WakeLock;
let told: ScreenLock[];

beforeEach(() => {
  page = new FakePage();
  screen = new FakeScreen();
  lock = screenWakeLock(page, screen);
  told = [];
  lock.onChange((state) => told.push(state));
});

const settled = () => new Promise((done) => setImmediate(done));

describe('the screen is kept on', () => {
  it('from the tap that asks until it is given up', async () => {
    expect(lock.state).toBe('not-held');
    await lock.take();
    expect([lock.state, screen.held.size]).toEqual(['held', 1]);
    await lock.release();
    expect([lock.state, screen.held.size]).toEqual(['not-held', 0]);
    expect(told).toEqual(['held', 'not-held']);
  });

  it('with one lock, however often it is asked for', async () => {
    await Promise.all([lock.take(), lock.take()]);
    await lock.take();
    expect(screen.requests).toBe(1);
  });

  it('again after each return, and the loss in between is told', async () => {
    await lock.take();
    await screen.takeBack();
    page.hide();
    expect(lock.state).toBe('not-held');
    page.show(['visibilitychange', 'pageshow', 'focus']);
    await settled();
    expect([lock.state, screen.held.size]).toEqual(['held', 1]);
    expect(told).toEqual(['held', 'not-held', 'held']);
  });

  it('not again after a return if nobody wants it any more', async () => {
    await lock.take();
    await lock.release();
    page.show();
    await settled();
    expect([lock.state, screen.requests]).toEqual(['not-held', 1]);
  });

  it('not when it is refused, and the next tap asks again', async () => {
    screen.answer = 'refuses';
    await lock.take();
    expect(lock.state).toBe('not-held');
    screen.answer = 'grants';
    await lock.take();
    expect(lock.state).toBe('held');
  });

  it('not when it was taken back before it was given: that must not look like success', async () => {
    screen.answer = 'takes back at once';
    await lock.take();
    expect(lock.state).toBe('not-held');
  });

  it('not when it was given up while the system still thought about it', async () => {
    const taking = lock.take();
    await lock.release();
    await taking;
    expect([lock.state, screen.held.size]).toEqual(['not-held', 0]);
  });

  it('not where the browser cannot', async () => {
    const none = screenWakeLock(page, undefined);
    await none.take();
    page.show();
    await none.release();
    expect(none.state).toBe('unsupported');
  });
});
