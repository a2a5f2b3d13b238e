import { computed, type ReadonlySignal } from '@preact/signals';
import type { LogFrame } from '../log/frames.ts';
import { countedFrames, ledgersOf, type SetLedger } from '../log/ledger.ts';
import {
  countedByKey,
  type FrameHeat,
  frameHeat,
  type HeatLine,
  heatLine,
} from '../log/ledgerHeat.ts';
import { sceneOf } from '../outing/light.ts';
import type { OutingLog } from './log.ts';

/** What is worked out of a log at the desk: it comes with the ledger's screens. */
export interface LogFigures {
  /** Each other rig against the reference of each set. */
  readonly ledgers: ReadonlySignal<readonly SetLedger[]>;
  /** The heat line of a pair, in no sum; null if no pass is complete. */
  heat(ledger: SetLedger): HeatLine | null;
  /** How warm a sensor was in the middle of a frame. */
  frameHeat(frame: LogFrame): FrameHeat;
}

const known = new WeakMap<OutingLog, LogFigures>();

/** The figures of a log, worked out when they are first asked for and anew when the journal moves on. */
export function figuresOf(log: OutingLog): LogFigures {
  const figures = known.get(log) ?? workOut(log);
  known.set(log, figures);
  return figures;
}

function workOut({ frames, journal: { state } }: OutingLog): LogFigures {
  const counted = computed(() => countedFrames(frames.value));
  const scene = computed(() => sceneOf(state.value));
  return {
    ledgers: computed(() => {
      const { plan, gear } = state.value;
      return ledgersOf(plan, gear, counted.value, scene.value);
    }),
    heat: (ledger) => heatLine(state.value, ledger, countedByKey(frames.value)),
    frameHeat: (frame) => frameHeat(state.value, frame),
  };
}
