import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { type Fault, isFault } from '../../../gear/read.ts';
import { Notice } from '../../parts/Notice.tsx';
import { usePlanWords } from '../../words/plan.ts';

/** Says why an act that stands in no field was refused. */
export interface Refusal {
  /** The sentence, to be drawn beside the act; null if the last act was taken. */
  readonly refusal: ComponentChildren;
  /** Takes the outcome of an act; true if it was done. */
  readonly done: <T>(outcome: T | Fault) => outcome is T;
}

export function useRefusal(): Refusal {
  const { fault } = usePlanWords();
  const [wrong, setWrong] = useState<Fault | null>(null);
  return {
    refusal: wrong && <Notice urgent>{fault(wrong)}</Notice>,
    done: <T,>(outcome: T | Fault): outcome is T => {
      setWrong(isFault(outcome) ? outcome : null);
      return !isFault(outcome);
    },
  };
}
