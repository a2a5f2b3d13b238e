import type { Seconds } from '../science/units.ts';
import { Listeners } from './listeners.ts';
import { type CueKind, placeTone } from './tones.ts';

/** 'needs-tap': the browser lets nothing sound before the next tap on the page. */
export type SoundState = 'ready' | 'needs-tap' | 'unsupported';

/** A cue on the audio clock. */
export interface Placed {
  /** Steady milliseconds (Clock's `monoMs`) at which the audio clock got there; null = not yet. */
  reachedMs(): number | null;
  cancel(): void;
}

/** The loudspeaker. */
export interface Sound {
  readonly state: SoundState;
  /** @returns ends the listening. */
  onChange(listener: (state: SoundState) => void): () => void;
  /** Call it in a tap. Cheap when all is well. */
  unlock(): void;
  /** Call it at each return into sight: what the system interrupted is made anew. */
  renew(): void;
  /**
   * Puts a cue on the audio clock, so that it sounds on time even if the page is
   * throttled.
   *
   * @param dueMs Steady milliseconds (Clock's `monoMs`); a past one sounds now.
   * @returns null unless the state is 'ready'.
   */
  place(kind: CueKind, dueMs: number): Placed | null;
}

/** What the system is told the sound is for, where it asks. */
interface AudioSessionHolder {
  readonly audioSession?: { type: string };
}

/** @param makeContext null where the browser has no audio clock. */
export function webSound(
  makeContext: (() => AudioContext) | null,
  navigator: AudioSessionHolder,
): Sound {
  const changed = new Listeners<[SoundState]>();
  let context: AudioContext | null = null;
  let told: SoundState = makeContext === null ? 'unsupported' : 'needs-tap';

  const state = (): SoundState => {
    if (makeContext === null) return 'unsupported';
    return context?.state === 'running' ? 'ready' : 'needs-tap';
  };
  const look = (): void => {
    const now = state();
    if (now === told) return;
    told = now;
    changed.tell(now);
  };

  const start = (): void => {
    if (makeContext === null) return;
    // 'playback' sounds in spite of the silent switch, which is what a cue is for.
    if (navigator.audioSession !== undefined) navigator.audioSession.type = 'playback';
    context = makeContext();
    context.addEventListener('statechange', look);
    resume(context);
    look();
  };

  const renew = (): void => {
    if (context === null || context.state === 'running') return;
    // An interrupted context may refuse to resume for good; a new one costs little.
    context.removeEventListener('statechange', look);
    if (context.state !== 'closed') void context.close().catch(unheard);
    start();
  };

  return {
    get state() {
      return state();
    },
    onChange: (listener) => changed.add(listener),
    unlock() {
      if (context === null) start();
      else if (context.state === 'suspended') resume(context);
      else renew();
    },
    renew,
    place(kind, dueMs) {
      const playing = context;
      if (playing === null || playing.state !== 'running') return null;
      const now = readClocks(playing);
      const at = Math.max(now.audioS + (dueMs - now.steadyMs) / 1000, playing.currentTime);
      const source = placeTone(playing, kind, at as Seconds);
      return {
        reachedMs() {
          if (playing.currentTime < at) return null;
          const then = readClocks(playing);
          return then.steadyMs - (then.audioS - at) * 1000;
        },
        cancel() {
          source.stop();
          source.disconnect();
        },
      };
    },
  };
}

/**
 * One moment by the audio clock as it is heard and by the steady clock. The pair
 * from the output takes the loudspeaker's delay into account, up to 0.2 s without a
 * wire; where it is not given, the delay is unknown.
 */
function readClocks(context: AudioContext): { readonly audioS: number; readonly steadyMs: number } {
  const { contextTime, performanceTime } = context.getOutputTimestamp?.() ?? {};
  return contextTime && performanceTime
    ? { audioS: contextTime, steadyMs: performanceTime }
    : { audioS: context.currentTime, steadyMs: performance.now() };
}

function resume(context: AudioContext): void {
  // May stay open until a tap; the state says whether it came.
  void context.resume().catch(unheard);
}

const unheard = (): void => {
  // The context is in no state to obey; 'statechange' and `state` tell the rest.
};
