/** Makes names that no other phone makes. */
export interface Ids {
  make(): string;
}

/** Random names: 128 bits in hexadecimal digits. Not every browser makes UUIDs, and none needs them. */
export const randomIds: Ids = {
  make: () =>
    crypto
      .getRandomValues(new Uint8Array(16))
      .reduce((id, byte) => id + byte.toString(16).padStart(2, '0'), ''),
};
