/** The letters a rig can carry; four bodies are as many as one evening bears. */
export const LETTERS = ['A', 'B', 'C', 'D'] as const;
export type Letter = (typeof LETTERS)[number];
