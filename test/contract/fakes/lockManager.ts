interface Waiting {
  readonly name: string;
  readonly run: () => Promise<unknown>;
  readonly lose: (cause: unknown) => void;
}

/**
 * The browser's locks, as two windows see them: exclusive, first come first served,
 * given up when the callback's promise ends, or stolen.
 */
export class FakeLockManager {
  readonly #held = new Map<string, Waiting>();
  readonly #queue: Waiting[] = [];

  request<T>(
    name: string,
    options: LockOptions,
    callback: (lock: Lock | null) => T | PromiseLike<T>,
  ): Promise<Awaited<T>> {
    return new Promise((resolve, reject) => {
      const { ifAvailable = false, steal = false, signal } = options;
      const settle = async (lock: Lock | null): Promise<void> => {
        try {
          resolve(await callback(lock));
        } catch (cause) {
          reject(cause);
        }
      };
      const waiting: Waiting = {
        name,
        run: () => settle({ name, mode: 'exclusive' }),
        lose: reject,
      };
      if (steal) {
        this.#held.get(name)?.lose(new DOMException('stolen', 'AbortError'));
        this.#held.delete(name);
        this.#queue.unshift(waiting);
        queueMicrotask(() => this.#grant());
        return;
      }
      if (signal?.aborted === true) {
        reject(signal.reason);
        return;
      }
      if (ifAvailable && this.#isTaken(name)) {
        queueMicrotask(() => void settle(null));
        return;
      }
      this.#queue.push(waiting);
      signal?.addEventListener('abort', () => {
        const at = this.#queue.indexOf(waiting);
        if (at < 0) return;
        this.#queue.splice(at, 1);
        reject(signal.reason);
      });
      queueMicrotask(() => this.#grant());
    });
  }

  #isTaken(name: string): boolean {
    return this.#held.has(name) || this.#queue.some((waiting) => waiting.name === name);
  }

  #grant(): void {
    for (const waiting of [...this.#queue]) {
      if (this.#held.has(waiting.name)) continue;
      this.#queue.splice(this.#queue.indexOf(waiting), 1);
      this.#held.set(waiting.name, waiting);
      void waiting.run().finally(() => {
        // One that was stolen is another's by now.
        if (this.#held.get(waiting.name) === waiting) this.#held.delete(waiting.name);
        this.#grant();
      });
    }
  }
}
