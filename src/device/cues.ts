import { duration, type Seconds } from '../science/units.ts';
import type { Clock } from './clock.ts';
import { Listeners } from './listeners.ts';
import type { Page } from './page.ts';
import type { Placed, Sound, SoundState } from './sound.ts';
import type { Speech, Voice } from './speech.ts';
import type { CueKind } from './tones.ts';
import type { Vibration } from './vibration.ts';

/** One moment of an exposure that is to be told. */
export interface Cue {
  /** Null: a moment that only the voice tells. */
  readonly kind: CueKind | null;
  /** On the steady clock (Clock's `monoMs`) of this page load. */
  readonly dueMs: number;
  /** What the voice says then; null = nothing. */
  readonly spoken: string | null;
}

export interface CueChoices {
  readonly sound: boolean;
  readonly vibration: boolean;
  readonly speech: boolean;
  /** The id of the voice; empty = the first there is. */
  readonly voice: string;
  /** Nothing is heard or felt, whatever is chosen above. */
  readonly silent: boolean;
}

export type CueChannel = 'sound' | 'vibration' | 'speech';

/** The end of an exposure that reached nobody in time. */
export interface LateEnd {
  readonly exposure: string;
  /** From when it was due until it could be heard or seen. */
  readonly lateS: Seconds;
}

export interface Cues {
  /** What the loudspeaker would do now. */
  readonly sound: SoundState;
  /** @returns ends the listening. */
  onSound(listener: (state: SoundState) => void): () => void;
  /** Whether the device can be felt at all. */
  readonly vibrates: boolean;
  /** The voices to choose from; none need a network. */
  readonly voices: readonly Voice[];
  /** Called when there are others. @returns ends the listening. */
  onVoices(listener: () => void): () => void;
  choose(choices: CueChoices): void;
  /** Call it in each tap: browsers let sound out only after one. */
  unlock(): void;
  /**
   * Tells these moments of an exposure, instead of those it had before. Several
   * exposures may run. Of what is past already only the end is told, late.
   */
  schedule(exposure: string, cues: readonly Cue[]): void;
  /** Tells nothing more of an exposure: closed, undone or recorded. */
  cancel(exposure: string): void;
  /**
   * Called when an 'end' came more than a second late: the page was hidden or
   * stopped and nothing sounded, or sound was chosen and the system kept it back.
   *
   * @returns ends the listening.
   */
  onLate(listener: (late: LateEnd) => void): () => void;
  /**
   * Lets one channel be tried, whatever is chosen. Call it in a tap.
   *
   * @param spoken What the voice says.
   */
  try(channel: CueChannel, spoken: string): Promise<'done' | 'needs-tap' | 'unsupported'>;
}

export interface CueParts {
  readonly clock: Clock;
  readonly page: Page;
  readonly sound: Sound;
  readonly vibration: Vibration;
  readonly speech: Speech;
}

/** What a shutter pressed by hand may differ by anyway (our choice). */
const LATE_MS = 1000;
/** The audio clock is asked again after this, while it has not got to a cue that is due. */
const SETTLE_MS = 250;
/** What is said at the end of one exposure is not cut off by the countdown of another (our choice). */
const LAST_WORD_MS = 1000;
/** How long a try waits for the loudspeaker after the tap that unlocks it. */
const WAKE_MS = 1000;

/*
 * A cue waits for its time, is given out, and goes when it is known to have come
 * through:
 *
 *     waiting --due and visible--> given (vibrated, spoken) --came through--> gone
 *        |                           |  ^------- not yet: the sound stands still
 *        +---- cancel, too old ------+----> gone
 *
 * It has come through when the audio clock got to it (if sound is chosen and there
 * is any), else when the page was visible after it was due.
 */
interface Pending {
  readonly exposure: string;
  readonly cue: Cue;
  placed: Placed | null;
  given: boolean;
  timer: ReturnType<typeof setTimeout> | undefined;
}

/** Until the choices are known. */
const NOTHING: CueChoices = {
  sound: false,
  vibration: false,
  speech: false,
  voice: '',
  silent: true,
};

/** Cues over the given parts of the device. */
export function createCues({ clock, page, sound, vibration, speech }: CueParts): Cues {
  const late = new Listeners<[LateEnd]>();
  const pending = new Set<Pending>();
  let choices: CueChoices = NOTHING;
  let lastWordMs = Number.NEGATIVE_INFINITY;

  const now = (): number => clock.now().monoMs;
  const chosen = (channel: CueChannel): boolean => choices[channel] && !choices.silent;
  const sounds = (): boolean => chosen('sound') && sound.state !== 'unsupported';
  /** Only the end is worth telling late; an old 'near the end' would mislead. */
  const tooOld = ({ kind, dueMs }: Cue): boolean => kind !== 'end' && now() - dueMs > LATE_MS;

  const drop = (one: Pending): void => {
    clearTimeout(one.timer);
    one.placed?.cancel();
    pending.delete(one);
  };

  const wake = (one: Pending, inMs: number): void => {
    clearTimeout(one.timer);
    one.timer = setTimeout(() => attend(one), inMs);
  };

  const give = ({ kind, spoken }: Cue): void => {
    if (kind && chosen('vibration')) vibration.vibrate(kind);
    if (!chosen('speech') || spoken === null) return;
    if (kind === 'end') lastWordMs = now();
    else if (now() - lastWordMs < LAST_WORD_MS) return;
    speech.say(spoken, choices.voice);
  };

  /** When it came through; null = not yet. */
  const cameThroughMs = ({ placed, cue }: Pending): number | null => {
    if (cue.kind && sounds()) return placed?.reachedMs() ?? null;
    return page.visible ? now() : null;
  };

  const attend = (one: Pending): void => {
    const { cue, exposure } = one;
    const lateMs = now() - cue.dueMs;
    if (lateMs < 0) {
      wake(one, -lateMs);
      return;
    }
    if (tooOld(cue)) {
      drop(one);
      return;
    }
    if (!one.given && page.visible) {
      one.given = true;
      give(cue);
    }
    const throughMs = cameThroughMs(one);
    if (throughMs === null) {
      // Else there is nothing to wait for but a tap, a return, or the loudspeaker.
      if (sounds() && sound.state === 'ready') wake(one, SETTLE_MS);
      return;
    }
    clearTimeout(one.timer);
    pending.delete(one);
    // Only an end gets here so late.
    if (throughMs - cue.dueMs > LATE_MS)
      late.tell({ exposure, lateS: duration(Math.round(throughMs - cue.dueMs) / 1000) });
  };

  /** Puts the sound where it belongs by the clocks as they run now. */
  const place = (one: Pending): void => {
    one.placed?.cancel();
    const { kind, dueMs } = one.cue;
    one.placed = kind && sounds() && !tooOld(one.cue) ? sound.place(kind, dueMs) : null;
  };

  /** After anything that may have shifted a clock or freed the loudspeaker. */
  const attendAll = (): void => {
    for (const one of [...pending]) {
      // Whoever is told of a late one may have cancelled another.
      if (!pending.has(one)) continue;
      if (typeof one.placed?.reachedMs() !== 'number') place(one);
      attend(one);
    }
  };

  page.onReturn(() => {
    sound.renew();
    attendAll();
  });
  sound.onChange(attendAll);

  const cancel = (exposure: string): void => {
    for (const one of [...pending]) if (one.exposure === exposure) drop(one);
  };

  /** Ready now, or within a moment after the tap that asked. */
  const awake = (): Promise<boolean> => {
    if (sound.state === 'ready') return Promise.resolve(true);
    return new Promise((resolve) => {
      const end = sound.onChange((state) => {
        if (state === 'ready') finish(true);
      });
      const timer = setTimeout(() => finish(false), WAKE_MS);
      const finish = (ready: boolean): void => {
        end();
        clearTimeout(timer);
        resolve(ready);
      };
    });
  };

  return {
    get sound() {
      return sound.state;
    },
    onSound: (listener) => sound.onChange(listener),
    vibrates: vibration.supported,
    get voices() {
      return speech.voices;
    },
    onVoices: (listener) => speech.onVoices(listener),
    choose(next) {
      choices = next;
      if (!chosen('speech')) speech.hush();
      for (const one of pending) place(one);
    },
    unlock() {
      sound.unlock();
      if (chosen('speech')) speech.unlock();
      attendAll();
    },
    schedule(exposure, cues) {
      cancel(exposure);
      for (const cue of cues) {
        const one: Pending = { exposure, cue, placed: null, given: false, timer: undefined };
        pending.add(one);
        place(one);
        attend(one);
      }
    },
    cancel,
    onLate: (listener) => late.add(listener),
    async try(channel, spoken) {
      switch (channel) {
        case 'sound':
          if (sound.state === 'unsupported') return 'unsupported';
          sound.unlock();
          if (!(await awake())) return 'needs-tap';
          sound.place('end', now());
          return 'done';
        case 'vibration':
          if (!vibration.supported) return 'unsupported';
          return vibration.vibrate('end') ? 'done' : 'needs-tap';
        case 'speech':
          return speech.say(spoken, choices.voice) ? 'done' : 'unsupported';
      }
    },
  };
}
