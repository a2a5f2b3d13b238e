/** The letters a rig can carry; four bodies are as many as one evening bears. */
export const LETTERS = ['A', 'B', 'C', 'D'] as const;
export type Letter = (typeof LETTERS)[number];

/** The plain sign beside each letter, so that nothing rests on colour alone. */
export const SIGN: Readonly<Record<Letter, string>> = { A: '●', B: '■', C: '▲', D: '◆' };
