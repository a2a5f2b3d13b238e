/** Makes names that no other phone makes. */
export interface Ids {
  make(): string;
}

/** Random (version 4) UUIDs. */
export const randomIds: Ids = { make: () => crypto.randomUUID() };
