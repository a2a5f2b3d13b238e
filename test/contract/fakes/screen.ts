/** The system's side of the screen lock: grants, refuses, takes back. */
export class FakeScreen {
  /** What the next requests get. */
  answer: 'grants' | 'refuses' | 'takes back at once' = 'grants';
  requests = 0;
  readonly held = new Set<WakeLockSentinel>();

  async request(type: WakeLockType): Promise<WakeLockSentinel> {
    this.requests += 1;
    await Promise.resolve();
    if (this.answer === 'refuses') throw new DOMException('hidden', 'NotAllowedError');
    const { held } = this;
    const sentinel = Object.assign(new EventTarget(), {
      type,
      released: false,
      onrelease: null,
      async release() {
        if (sentinel.released) return;
        sentinel.released = true;
        held.delete(sentinel);
        sentinel.dispatchEvent(new Event('release'));
      },
    });
    held.add(sentinel);
    if (this.answer === 'takes back at once') await sentinel.release();
    return sentinel;
  }

  /** As when the page is hidden or the battery runs low. */
  async takeBack(): Promise<void> {
    for (const sentinel of [...this.held]) await sentinel.release();
  }
}
