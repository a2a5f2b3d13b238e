import type { Clock, Moment } from '../../../src/device/clock.ts';

/** A clock that moves only by hand. Begins on an invented evening in the practice outing's zone. */
export class FakeClock implements Clock {
  wallMs = Date.UTC(2027, 1, 12, 17, 30);
  monoMs = 1000;
  #loads = 1;

  now(): Moment<string> {
    const { wallMs, monoMs } = this;
    return { wallMs, offsetMin: 0, zone: 'Etc/UTC', monoMs, session: `session-${this.#loads}` };
  }

  /** Both clocks go on. */
  pass(ms: number): void {
    this.wallMs += ms;
    this.monoMs += ms;
  }

  /** Only the wall clock goes on: the phone slept, or somebody set it. */
  jump(ms: number): void {
    this.wallMs += ms;
  }

  /** The page is loaded anew. */
  reload(): void {
    this.monoMs = 0;
    this.#loads += 1;
  }
}
