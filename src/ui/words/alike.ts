import type { Language } from '../../app/preferences.ts';

/**
 * The shape of a dictionary without its sentences: what another language has to fill in. A sentence
 * that is missing, misspelt or takes other figures than the English one does not compile. The
 * `value` of a choice is what it stands for, and no word.
 */
export type Alike<Base> = Base extends string
  ? string
  : Base extends (...figures: infer Figures) => infer Said
    ? (...figures: Figures) => Alike<Said>
    : Base extends object
      ? { readonly [Key in keyof Base]: Key extends 'value' ? Base[Key] : Alike<Base[Key]> }
      : Base;

/** A dictionary in every language, to be picked from by the language in use. */
export type InEachLanguage<Base> = Readonly<Record<Language, Alike<Base>>>;
