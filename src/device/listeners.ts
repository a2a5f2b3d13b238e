/** Those who asked to be told; telling goes on when one of them ends its listening. */
export class Listeners<T extends readonly unknown[]> {
  readonly #all = new Set<(...told: T) => void>();

  /** @returns ends the listening. */
  add(listener: (...told: T) => void): () => void {
    this.#all.add(listener);
    return () => {
      this.#all.delete(listener);
    };
  }

  tell(...told: T): void {
    for (const listener of [...this.#all]) listener(...told);
  }
}
