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
  synthesis: { speak: vi.fn(), cancel: vi.fn(), getVoices: () => voices },
  utter: (text: string) => ({ text, lang: '', voice: null }) as SpeechSynthesisUtterance,
  language: () => 'en',
});

describe('the voice', () => {
  it('is one of the language that needs no network', () => {
    const all = parts([
      voice('far', 'en-GB', false),
      voice('near but foreign', 'de-DE', true),
      voice('near', 'en_US', true),
    ]);
    browserSpeech(all).say('ten');
    expect(all.synthesis.speak.mock.calls).toEqual([
      [{ text: 'ten', lang: 'en', voice: expect.objectContaining({ name: 'near' }) }],
    ]);
  });

  it('is left to the system where there is no such one', () => {
    const all = parts([voice('far', 'en-GB', false)]);
    browserSpeech(all).say('ten');
    expect(all.synthesis.speak.mock.calls).toEqual([[{ text: 'ten', lang: 'en', voice: null }]]);
  });

  it('drops what is still being said: an old number would mislead', () => {
    const all = parts([]);
    const order: string[] = [];
    all.synthesis.cancel.mockImplementation(() => order.push('cancel'));
    all.synthesis.speak.mockImplementation(() => order.push('speak'));
    browserSpeech(all).say('nine');
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
    speech.say('ten');
    speech.hush();
    expect(speech.supported).toBe(false);
  });
});
