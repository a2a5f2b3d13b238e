import { duration } from '../science/units.ts';
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

/** A moment by the audio clock, as it is heard, and by the steady clock. */
interface Pair {
  readonly audioS: number;
  readonly steadyMs: number;
}

/** A running audio clock, and where it stopped once it has. */
interface Player {
  readonly context: AudioContext;
  stopped: Pair | null;
}

/** @param makeContext null where the browser has no audio clock. */
export function webSound(
  makeContext: (() => AudioContext) | null,
  navigator: AudioSessionHolder,
): Sound {
  const changed = new Listeners<[SoundState]>();
  let player: Player | null = null;
  let told: SoundState = makeContext === null ? 'unsupported' : 'needs-tap';

  const state = (): SoundState => {
    if (makeContext === null) return 'unsupported';
    return player?.context.state === 'running' ? 'ready' : 'needs-tap';
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
    let context: AudioContext;
    try {
      context = makeContext();
    } catch {
      // The system gives none now; the next tap asks again, and is served all the same.
      return;
    }
    const started: Player = { context, stopped: null };
    player = started;
    context.addEventListener('statechange', () => {
      started.stopped = context.state === 'running' ? null : (started.stopped ?? readPair(context));
      look();
    });
    resume(context);
    look();
  };

  const renew = (): void => {
    if (player === null || player.context.state === 'running') return;
    // An interrupted context may refuse to resume for good; a new one costs little.
    if (player.context.state !== 'closed') void player.context.close().catch(unheard);
    start();
  };

  return {
    get state() {
      return state();
    },
    onChange: (listener) => changed.add(listener),
    unlock() {
      if (player === null) start();
      else if (player.context.state === 'suspended') resume(player.context);
      else renew();
    },
    renew,
    place(kind, dueMs) {
      if (player === null || state() !== 'ready') return null;
      const playing = player;
      const { context } = playing;
      const now = readPair(context);
      const at = Math.max(now.audioS + (dueMs - now.steadyMs) / 1000, context.currentTime);
      const source = placeTone(context, kind, duration(at));
      return {
        reachedMs() {
          if (context.currentTime < at) return null;
          const then = playing.stopped ?? readPair(context);
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

/** Two readings further apart are not of one moment: some browsers give stale ones. */
const STALE_MS = 1000;

/**
 * The pair from the output takes the loudspeaker's delay into account, up to 0.2 s
 * without a wire; where there is none, the delay stays unknown.
 */
function readPair(context: AudioContext): Pair {
  const now = performance.now();
  const { contextTime, performanceTime } = context.getOutputTimestamp?.() ?? {};
  return contextTime && performanceTime && Math.abs(performanceTime - now) < STALE_MS
    ? { audioS: contextTime, steadyMs: performanceTime }
    : { audioS: context.currentTime, steadyMs: now };
}

function resume(context: AudioContext): void {
  // May stay open until a tap; the state says whether it came.
  void context.resume().catch(unheard);
}

const unheard = (): void => {
  // The context is in no state to obey; 'statechange' and `state` tell the rest.
};
