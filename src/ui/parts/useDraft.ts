import { useEffect, useRef, useState } from 'preact/hooks';

/** What a field does with what was typed when it is left: a sentence refuses it, null takes it. */
export type Commit = (text: string) => string | null;

interface Draft {
  readonly text: string;
  readonly fault: string | null;
  readonly onInput: (event: { currentTarget: { value: string } }) => void;
  readonly onBlur: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/**
 * The text in a field between the first key and leaving it.
 *
 * It is committed when the field is left, on Enter, and when the screen goes away under it (the
 * back gesture does not blur a field). A refused text stays in the field with its sentence.
 */
export function useDraft(kept: string, commit: Commit): Draft {
  const [typed, setTyped] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const leave = () => {
    if (typed === null) return;
    const sentence = typed === kept ? null : commit(typed);
    setFault(sentence);
    if (sentence === null) setTyped(null);
  };
  // What was refused was said; going away does not make it good.
  const goAway = fault === null ? leave : () => undefined;
  const latest = useRef(goAway);
  latest.current = goAway;
  useEffect(() => () => latest.current(), []);
  return {
    text: typed ?? kept,
    fault,
    onInput: (event) => setTyped(event.currentTarget.value),
    onBlur: leave,
    onKeyDown: (event) => {
      if (event.key === 'Enter') leave();
    },
  };
}
