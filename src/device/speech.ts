/** A voice that needs no network. */
export interface Speech {
  readonly supported: boolean;
  /** Call it in a tap: some browsers keep silent until the first words came from one. */
  unlock(): void;
  /** Says it now, instead of what is still being said. */
  say(text: string): void;
  hush(): void;
}

/** The parts of the browser that speak. */
export interface SpeechParts {
  readonly synthesis: Pick<SpeechSynthesis, 'speak' | 'cancel' | 'getVoices'> | undefined;
  readonly utter: (text: string) => SpeechSynthesisUtterance;
  /** Language of the text, as a BCP 47 tag. */
  readonly language: () => string;
}

export function browserSpeech({ synthesis, utter, language }: SpeechParts): Speech {
  let unlocked = false;
  return {
    unlock() {
      if (unlocked || synthesis === undefined) return;
      unlocked = true;
      synthesis.speak(utter(''));
    },
    supported: synthesis !== undefined,
    say(text) {
      if (synthesis === undefined) return;
      const utterance = utter(text);
      utterance.lang = language();
      // A voice from the network is silent in the field.
      utterance.voice =
        synthesis
          .getVoices()
          .find((voice) => voice.localService && sameLanguage(voice.lang, utterance.lang)) ?? null;
      synthesis.cancel();
      synthesis.speak(utterance);
    },
    hush() {
      synthesis?.cancel();
    },
  };
}

const sameLanguage = (a: string, b: string): boolean =>
  a.split(/[-_]/)[0]?.toLowerCase() === b.split(/[-_]/)[0]?.toLowerCase();
