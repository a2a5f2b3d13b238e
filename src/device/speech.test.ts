import { describe, expect, it, vi } from 'vitest';
import { browserSpeech } from './speech.ts';

const voice = (name: string, lang: string, localService: boolean): SpeechSynthesisVoice => ({
  name,
  lang,
  localService,
  default: false,
  voiceURI: name,
});

const parts = (voices: SpeechSynthesisVoice[]) => ({
  synthesis: {
    speak: vi.fn(),
    cancel: vi.fn(),
    getVoices: () => voices,
    onvoiceschanged: null as (() => void) | null,
  },
  utter: (text: string) => ({ text, lang: '', voice: null }) as SpeechSynthesisUtterance,
  language: () => 'en',
});

const NEAR = voice('near', 'en_US', true);
const SECOND = voice('second', 'en-GB', true);

describe('the voice', () => {
  it('is one of the language that needs no network, and no other is offered', () => {
    const all = parts([voice('far', 'en-GB', false), voice('foreign', 'de-DE', true), NEAR]);
    const speech = browserSpeech(all);
    expect(speech.voices).toEqual([{ id: 'near', name: 'near' }]);
    expect(speech.say('ten', '')).toBe(true);
    expect(all.synthesis.speak.mock.calls).toEqual([[{ text: 'ten', lang: 'en_US', voice: NEAR }]]);
  });

  it('is the chosen one, or the first if that is gone', () => {
    const all = parts([NEAR, SECOND]);
    const speech = browserSpeech(all);
    speech.say('ten', 'second');
    speech.say('ten', 'removed');
    expect(all.synthesis.speak.mock.calls.map(([{ voice }]) => voice)).toEqual([SECOND, NEAR]);
  });

  it('keeps silent where every voice needs a network, and says that it does', () => {
    const all = parts([voice('far', 'en-GB', false)]);
    expect(browserSpeech(all).say('ten', 'far')).toBe(false);
    expect(all.synthesis.speak).not.toHaveBeenCalled();
  });

  it('is told of when the browser finds it late', () => {
    const voices: SpeechSynthesisVoice[] = [];
    const all = parts(voices);
    const speech = browserSpeech(all);
    let told = 0;
    const end = speech.onVoices(() => {
      told += 1;
    });
    voices.push(NEAR);
    all.synthesis.onvoiceschanged?.();
    expect([told, speech.voices.length]).toEqual([1, 1]);
    end();
    all.synthesis.onvoiceschanged?.();
    expect(told).toBe(1);
  });

  it('drops what is still being said: an old number would mislead', () => {
    const all = parts([NEAR]);
    const order: string[] = [];
    all.synthesis.cancel.mockImplementation(() => order.push('cancel'));
    all.synthesis.speak.mockImplementation(() => order.push('speak'));
    browserSpeech(all).say('nine', '');
    expect(order).toEqual(['cancel', 'speak']);
  });

  it('is let out by one tap, without a word, and only once', () => {
    const all = parts([]);
    const speech = browserSpeech(all);
    speech.unlock();
    speech.unlock();
    expect(all.synthesis.speak.mock.calls.map(([{ text }]) => text)).toEqual(['']);
  });

  it('is missing in some browsers, which is no fault', () => {
    const speech = browserSpeech({ ...parts([]), synthesis: undefined });
    speech.unlock();
    speech.hush();
    expect([speech.say('ten', ''), speech.voices]).toEqual([false, []]);
  });
});
