/** Whether a stated value is still its default. Both are plain data with their fields in one order. */
export const same = <T>(value: T, standard: T): boolean =>
  JSON.stringify(value) === JSON.stringify(standard);
