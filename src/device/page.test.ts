import { describe, expect, it, vi } from 'vitest';
import { FakePage } from '../../test/contract/fakes/page.ts';
import { watchPage } from './page.ts';

describe('the page', () => {
  it.each(['visibilitychange', 'pageshow', 'focus', 'resume'])(
    'is seen to come back by %s alone, for no system sends all of them',
    (event) => {
      const page = new FakePage();
      const returned = vi.fn();
      page.onReturn(returned);
      page.hide();
      expect([page.visible, returned.mock.calls.length]).toEqual([false, 0]);
      page.show([event]);
      expect([page.visible, returned.mock.calls.length]).toEqual([true, 1]);
    },
  );

  // Seen to fail with `=== 'visible'`: no countdown would ever run there.
  it('of a browser that does not say whether it is seen is taken to be seen', () => {
    const events = new EventTarget();
    const mute = { addEventListener: events.addEventListener.bind(events) } as unknown as Document;
    const page = watchPage(mute, events as Window);
    const returned = vi.fn();
    page.onReturn(returned);
    events.dispatchEvent(new Event('focus'));
    expect([page.visible, returned.mock.calls.length]).toEqual([true, 1]);
  });

  it('that is frozen unseen does not count as looked at when it thaws', () => {
    const page = new FakePage();
    const [returned, hidden] = [vi.fn(), vi.fn()];
    page.onReturn(returned);
    const stop = page.onHidden(hidden);
    page.hide();
    expect(hidden).toHaveBeenCalledTimes(1);
    stop();
    page.hide();
    expect(hidden).toHaveBeenCalledTimes(1);
    expect(returned).not.toHaveBeenCalled();
  });
});
