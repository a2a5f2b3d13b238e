import type { Page } from '../../../src/device/page.ts';
import { watchPage } from '../../../src/device/page.ts';

/** A page that is looked at and hidden by hand. */
export class FakePage implements Page {
  readonly #document = Object.assign(new EventTarget(), {
    visibilityState: 'visible' as DocumentVisibilityState,
  });
  readonly #window = new EventTarget();
  readonly #page = watchPage(this.#document as unknown as Document, this.#window as Window);

  get visible(): boolean {
    return this.#page.visible;
  }

  onReturn(listener: () => void): () => void {
    return this.#page.onReturn(listener);
  }

  onHidden(listener: () => void): () => void {
    return this.#page.onHidden(listener);
  }

  hide(): void {
    this.#document.visibilityState = 'hidden';
    this.#document.dispatchEvent(new Event('visibilitychange'));
  }

  /** Comes back into sight with these events, as one system or another sends them. */
  show(events: readonly string[] = ['visibilitychange']): void {
    this.#document.visibilityState = 'visible';
    for (const type of events)
      (type === 'pageshow' || type === 'focus' ? this.#window : this.#document).dispatchEvent(
        new Event(type),
      );
  }
}
