/** The options of a choice, from a table of words. */
export const options = <K extends string>(words: Readonly<Record<K, string>>) =>
  (Object.keys(words) as K[]).map((value) => ({ value, label: words[value] }));

/** The same with a second line each. */
export const optionsWithNotes = <K extends string>(
  words: Readonly<Record<K, { readonly label: string; readonly note: string }>>,
) => (Object.keys(words) as K[]).map((value) => ({ value, ...words[value] }));
