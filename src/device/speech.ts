import { Listeners } from './listeners.ts';

/** A voice that needs no network. */
export interface Voice {
  readonly id: string;
  readonly name: string;
}

/** What the device says aloud, by voices that need no network: others are silent in the field. */
export interface Speech {
  /** Those of the page's language. Empty where there are none, or while the browser looks for them. */
  readonly voices: readonly Voice[];
  /**
   * Called when the browser has found its voices, which some do late.
   *
   * @returns ends the listening.
   */
  onVoices(listener: () => void): () => void;
  /** Call it in a tap: some browsers keep silent until the first words came from one. */
  unlock(): void;
  /**
   * Says it now, instead of what is still being said.
   *
   * @param voice Its id; one that is not there is the first there is.
   * @returns false where there is no voice.
   */
  say(text: string, voice: string): boolean;
  hush(): void;
}

/** The parts of the browser that speak. */
export interface SpeechParts {
  readonly synthesis:
    | Pick<SpeechSynthesis, 'speak' | 'cancel' | 'getVoices' | 'onvoiceschanged'>
    | undefined;
  readonly utter: (text: string) => SpeechSynthesisUtterance;
  /** Language of the text, as a BCP 47 tag. */
  readonly language: () => string;
}

export function browserSpeech({ synthesis, utter, language }: SpeechParts): Speech {
  const found = new Listeners<[]>();
  let unlocked = false;
  // As a property: not every browser lets one listen to its voices.
  if (synthesis) synthesis.onvoiceschanged = () => found.tell();
  const usable = (): readonly SpeechSynthesisVoice[] =>
    (synthesis?.getVoices() ?? []).filter(
      ({ localService, lang }) => localService && sameLanguage(lang, language()),
    );
  return {
    get voices() {
      return usable().map(({ voiceURI, name }) => ({ id: voiceURI, name }));
    },
    onVoices: (listener) => found.add(listener),
    unlock() {
      if (unlocked || synthesis === undefined) return;
      unlocked = true;
      synthesis.speak(utter(''));
    },
    say(text, wanted) {
      const voices = usable();
      const voice = voices.find(({ voiceURI }) => voiceURI === wanted) ?? voices[0];
      if (synthesis === undefined || voice === undefined) return false;
      const utterance = utter(text);
      utterance.lang = voice.lang;
      utterance.voice = voice;
      synthesis.cancel();
      synthesis.speak(utterance);
      return true;
    },
    hush() {
      synthesis?.cancel();
    },
  };
}

const sameLanguage = (a: string, b: string): boolean =>
  a.split(/[-_]/)[0]?.toLowerCase() === b.split(/[-_]/)[0]?.toLowerCase();
