import { assemble } from '../../src/gear/rig.ts';
import type { Scene } from '../../src/light/scene.ts';
import { framesOf } from '../../src/log/frames.ts';
import { countedFrames, ledgersOf } from '../../src/log/ledger.ts';
import { judge } from '../../src/log/pair/judgement.ts';
import { USUAL_LIMITS } from '../../src/log/pair/uses.ts';
import type { Draft, OutingEvent, Reading } from '../../src/outing/events.ts';
import { fold } from '../../src/outing/fold.ts';
import type { EventId, OutingId, SessionId, WriterId } from '../../src/outing/ids.ts';
import type { Instant } from '../../src/outing/instant.ts';
import { sceneOf, setInHand, setInLight, wantedReading } from '../../src/outing/light.ts';
import { next, type Tap } from '../../src/outing/next.ts';
import { rematches } from '../../src/outing/rematch.ts';
import { seal } from '../../src/outing/seal.ts';
import type { RunState } from '../../src/outing/state.ts';
import { type Step, stepAt } from '../../src/outing/step.ts';
import type { PlannedFrame } from '../../src/plan/frame.ts';
import { ev100 } from '../../src/science/exposure.ts';
import { must } from '../../src/science/refusal.ts';
import {
  type Ev,
  ev,
  fNumber,
  iso,
  later,
  type Stops,
  seconds,
  type UtcMs,
} from '../../src/science/units.ts';
import { openShutter } from './shutter.ts';
import { GEAR, type Task } from './task.ts';
import type { Stated, Walked } from './ways.ts';
import { chanceOf } from './world/chance.ts';
import { handsOf, meterOf } from './world/hands.ts';
import type { Exposed } from './world/truth.ts';

/*
 * The same evening with the app: its plan, its order, its steps, the readings that it asks for, the
 * settings by which it follows the light, its journal, log and ledger. All through its own modules,
 * without a screen: what a screen would ask is answered by simulated hands.
 */

/** What of the app is used. */
export interface Use {
  /** Whether a reading is taken when it is asked for. */
  readonly readings: boolean;
  readonly rests: boolean;
}

/** 95 times in a hundred, for a normal distribution. */
const NINETY_FIVE = 1.96;

class Outing {
  private events: readonly OutingEvent[] = [];
  private made: RunState | null = null;
  private ids = 0;
  private at: UtcMs;
  private readonly start: UtcMs;

  constructor({ plan, prepared, site, sky, startMs }: Task) {
    this.at = Math.ceil(startMs) as UtcMs;
    this.start = startMs;
    const data = { plan, gear: GEAR, frames: prepared.frames, site, sky };
    this.write([{ id: this.newId(), kind: 'outing-started', data }]);
  }

  get now(): UtcMs {
    return this.at;
  }

  get state(): RunState {
    this.made ??= fold(this.events);
    if (!this.made) throw new Error('the outing has not started');
    return this.made;
  }

  instant(): Instant {
    return {
      wallMs: this.at,
      offsetMin: 0,
      zone: 'Etc/UTC',
      monoMs: this.at - this.start,
      session: 'session' as SessionId,
    };
  }

  step(): Step {
    return stepAt(this.state, this.instant());
  }

  /** Time goes by, in whole milliseconds as on a phone and never none at all. */
  pass(s: number): void {
    this.at = Math.max(this.at + 1, Math.ceil(later(this.at, s))) as UtcMs;
  }

  tap(tap: Tap): void {
    const moment = { now: this.instant(), newId: () => this.newId() };
    this.write(must(next(this.state, tap, moment)));
    // No two taps in one instant: undo takes them for one.
    this.pass(0);
  }

  private write(drafts: readonly Draft[]): void {
    const place = {
      outing: 'outing' as OutingId,
      writer: 'writer' as WriterId,
      seq: this.events.length + 1,
    };
    this.events = [...this.events, ...seal(drafts, this.instant(), place)];
    this.made = null;
  }

  private newId(): EventId {
    this.ids += 1;
    return `event-${this.ids}` as EventId;
  }
}

/** What a meter shows is entered by clicks of a third. */
const shown = (seen: Ev): Reading => ({ kind: 'ev', ev100: ev(Math.round(3 * seen) / 3) });

/** A test frame at a whole number of doublings, judged by thirds. */
function testFrame(seen: Ev): Reading {
  const [n, s] = [fNumber(4), iso(6400)];
  const doublings = Math.round(ev100(n, seconds(1), s) - seen);
  const t = seconds(2 ** doublings);
  return { kind: 'test-frame', n, t, s, thirdsOver: Math.round(3 * (seen - ev100(n, t, s))) };
}

/** Walks an evening with the app. */
export function walkWithApp(task: Task, use: Use): Walked {
  const { evening } = task;
  const plan = use.rests ? task.plan : { ...task.plan, rest: { kind: 'none' as const } };
  const hands = handsOf(chanceOf(evening.seed, 'hands with the app'));
  const meters = {
    reading: meterOf(chanceOf(evening.seed, 'meter')),
    'test-frame': meterOf(chanceOf(evening.seed, 'test frames')),
  };
  const outing = new Outing({ ...task, plan });
  const really = new Map<EventId, Exposed>();
  let scene: Scene | null = sceneOf(outing.state);

  const read = (wanted: 'reading' | 'test-frame'): void => {
    outing.pass(hands.takes(wanted));
    const seen = meters[wanted](evening.scene(outing.now));
    const reading = wanted === 'reading' ? shown(seen) : testFrame(seen);
    outing.tap({ tap: 'reading', meter: wanted, reading });
    scene = sceneOf(outing.state);
  };

  /** What the line about the light offers while nothing is open. */
  const followTheLight = (): void => {
    const wanted = scene && wantedReading(scene, outing.state, outing.now);
    if (wanted && use.readings) read(wanted);
    const hand = setInHand(outing.state);
    if (!scene || !hand) return;
    const inLight = setInLight(scene, hand, plan.light.tolerance, outing.now);
    if (inLight?.how !== 'off') return;
    const [offer] = rematches(outing.state, scene, hand, outing.now).toSorted(
      (a, b) => Math.abs(a.miss) - Math.abs(b.miss),
    );
    if (offer) outing.tap({ tap: 'rematch', set: hand.set.id, rigs: offer.rigs });
  };

  const expose = (frame: PlannedFrame, short: boolean): void => {
    const rig = assemble(GEAR, frame.rig);
    if (!rig) throw new Error(`no rig ${frame.rig}`);
    outing.pass(hands.takes('settle'));
    const going = hands.exposure();
    const leadIn = rig.body.selfTimer.usedS ?? 0;
    if (!short) outing.tap({ tap: 'start', frame: frame.key });
    const saidMs = later(outing.now, leadIn);
    const opened = openShutter(rig, frame, saidMs, going);
    if (short) {
      // It is tapped when the shutter has closed already.
      outing.pass(leadIn + going.openLateS + opened.t);
      outing.tap({ tap: 'taken', frame: frame.key, otherwise: true });
    }
    const [made] = outing.state.open;
    if (!made) throw new Error('no frame is open');
    really.set(made, {
      set: frame.set,
      letter: rig.rig.letter,
      openedMs: opened.openedMs,
      t: opened.t,
      exposure: opened.exposure,
    });
    if (!short) outing.pass((later(opened.openedMs, opened.t) - outing.now) / 1000);
    if (frame.settings.time.kind === 'bulb') {
      outing.pass(-going.closeLateS);
      outing.tap({ tap: 'closed', made });
    } else {
      // The screen counts from the tap, and takes no record before the time is over.
      outing.pass((later(short ? outing.now : saidMs, frame.exact.t) - outing.now) / 1000);
      outing.pass(hands.takes('tap'));
      outing.tap({ tap: 'record', made, settings: opened.settings });
    }
    if (going.spoilt) {
      outing.tap({ tap: 'judge', made, verdict: 'moved' });
      outing.tap({ tap: 'retake', frame: frame.key });
    }
  };

  for (const rig of plan.rigs) outing.tap({ tap: 'tick', rig, item: 'focus-fixed', done: true });
  outing.tap({ tap: 'begin-frames' });
  for (;;) {
    followTheLight();
    const step = outing.step();
    switch (step.kind) {
      case 'mount':
        // The first rig stands already when the list is begun.
        if (outing.state.made.length > 0) outing.pass(hands.takes('swap'));
        outing.tap({ tap: 'mounted', frame: step.next.key });
        break;
      case 'dial':
        outing.pass(hands.takes('dial'));
        outing.tap({ tap: 'dialled', frame: step.frame.key });
        break;
      case 'rest':
        outing.pass(step.resting.leftS);
        break;
      case 'busy':
        outing.pass(step.leftS);
        break;
      case 'expose': {
        const [frame] = step.frames;
        if (!frame || step.frames.length > 1) throw new Error('one rig at a time is simulated');
        expose(frame, step.short);
        break;
      }
      case 'list-done': {
        return walked(task, outing.state, really);
      }
      default:
        throw new Error(`nobody expected the step ${step.kind}`);
    }
  }
}

/** The evening as it is in the log, beside what really happened. */
function walked({ startMs }: Task, state: RunState, really: ReadonlyMap<EventId, Exposed>): Walked {
  const frames = framesOf(state);
  const exposures = frames.flatMap(({ id }) => really.get(id) ?? []);
  const counted = new Map(
    frames.flatMap(({ id, planned, counts }) => {
      const exposed = really.get(id);
      return exposed && counts ? [[planned.key, exposed] as const] : [];
    }),
  );
  const letterOf = (id: PlannedFrame['rig']): string => assemble(GEAR, id)?.rig.letter ?? '';
  const ledgers = ledgersOf(state.plan, GEAR, countedFrames(frames), sceneOf(state));
  const stated = ledgers.flatMap((ledger): Stated[] => {
    const { set, reference, other, mean, weights } = ledger;
    const fade = mean?.lines.find(({ cause }) => cause === 'fade')?.difference;
    const { whole } = judge(state, ledger, frames, USUAL_LIMITS);
    if (!mean || !whole || !fade?.known) return [];
    return [
      {
        set,
        reference: letterOf(reference),
        other: letterOf(other),
        stops: mean.sum.stops,
        weights: new Map(
          [...weights].flatMap(([key, weight]) => {
            const exposed = counted.get(key);
            return exposed ? [[exposed, weight] as const] : [];
          }),
        ),
        half: (NINETY_FIVE * whole.figures.sum.sigma) as Stops,
      },
    ];
  });
  return { exposures, switchedOn: startMs, stated };
}
