import type { Name, Role, Within } from './phone.ts';

/** Longer than what the app takes for the bounce of a finger. */
const LIFT_MS = 450;

/** A hand lifts its finger between two presses of one button, however fast the machine is. */
export class Hand {
  #last = { what: '', at: Number.NEGATIVE_INFINITY };

  /** Waits until this may be pressed again, which it is then taken to be. */
  async lifted(role: Role, name: Name, { within }: Within = {}): Promise<void> {
    const what = [role, name, within?.role, within?.name].join();
    const wait = this.#last.at + LIFT_MS - performance.now();
    if (what === this.#last.what && wait > 0) {
      await new Promise((lifted) => setTimeout(lifted, wait));
    }
    this.#last = { what, at: performance.now() };
  }
}
