import type { EventKind, OutingEvent } from '../../src/outing/events.ts';
import { fold } from '../../src/outing/fold.ts';
import { inOrder } from '../../src/outing/sequence.ts';
import { mulberry32, type Random, seed } from '../../src/science/mulberry32.ts';
import { type Asked, asked, seeAsked, setUp, until, wake } from '../journeys/acts/run.ts';
import type { AppWindow, Phone } from '../journeys/driver/phone.ts';
import { goTo } from '../journeys/places.ts';
import { backup, EXPOSURE_S, journalOnDisk, LEAD_IN_S, PLAN, RIGS } from './outing.ts';

/*
 * Random acts, random death, and a look at what came back. The harness keeps its own list of what the
 * screen acknowledged; what lies in the journal afterwards must be that, in that order, each once, and
 * at most one tap more. By seed, so that a failure can be played again.
 */

/** What a hand did, as the journal must tell it. */
type Written = readonly EventKind[];

/** What the screen said when the phone died, and what the phone says afterwards. */
export interface Death {
  readonly seed: number;
  readonly acknowledged: number;
  /** Events of the tap that was in the air. */
  readonly inTheAir: number;
  /** In mid-exposure: by how many seconds the countdown was off. */
  readonly timerOffS: number | null;
}

/** Events that the app writes by itself, as remarks. */
const REMARKS: ReadonlySet<EventKind> = new Set(['cue-late']);

const head = async (window: AppWindow) => (await window.read('main', /^/)).split('Night')[0] ?? '';

interface Act {
  readonly says: Written;
  readonly weight: number;
  do(): Promise<void>;
}

/** One evening that goes on over any number of deaths. */
export class Deaths {
  readonly #phone: Phone;
  readonly #address: string;
  /** What the screen has acknowledged of the outing under way. */
  #said: EventKind[] = [];
  #nowMs = Date.UTC(2027, 1, 12, 17, 0);

  constructor(phone: Phone, address: string) {
    this.#phone = phone;
    this.#address = address;
  }

  get #window(): AppWindow {
    return this.#phone.window;
  }

  /** Takes the plan in. */
  async begin(): Promise<void> {
    await this.#window.clock.start(new Date(this.#nowMs));
    await this.#window.open(this.#address);
    await goTo(this.#window, 'Log');
    await this.#window.tap('button', /^Backup and restore/);
    await this.#window.upload('Choose a file', { name: 'backup.json', bytes: backup() });
    await this.#window.tap('button', 'Take it in');
    await this.#window.see(/^Taken in/);
    await this.#startOuting();
  }

  async #startOuting(): Promise<void> {
    await this.#window.tap('button', 'Outing');
    await this.#window.tap('button', `Start ${PLAN}`);
    await setUp(this.#window, RIGS);
    this.#said = (await journalOnDisk(this.#window)).map(({ kind }) => kind);
  }

  /** Some acts, then death at a random instant: between two acts, or in the middle of one. */
  async die(from: number): Promise<Death> {
    const random = mulberry32(seed(from));
    const acts = 2 + Math.floor(random() * 6);
    for (let act = 0; act < acts; act += 1) await this.#act(random, 450);
    let inTheAir: Written = [];
    // At the very moment of an acknowledgement, or with a tap in the air.
    if (random() < 0.4) await this.#act(random, 0);
    else {
      const act = await this.#choose(random);
      inTheAir = act.says;
      const doing = act.do();
      // The tap may die with the browser.
      doing.catch(() => undefined);
      await new Promise((now) => setTimeout(now, random() * 120));
    }
    const wallMs = await this.#wall();
    await this.#phone.kill();
    await this.#phone.restart();
    this.#nowMs = wallMs + 1000 * Math.floor(random() * 6);
    await this.#window.clock.start(new Date(this.#nowMs));
    await this.#window.open(this.#address);
    await this.#window.seeThe(
      'heading',
      /^(Mount|Focus|Dial|Expose|Exposing|Record|Rest|Paused|List done)$/,
    );
    return this.#compare(from, inTheAir);
  }

  async #wall(): Promise<number> {
    try {
      return await this.#window.evaluate(() => Date.now(), undefined);
    } catch {
      return this.#nowMs;
    }
  }

  async #compare(from: number, inTheAir: Written): Promise<Death> {
    const events = await journalOnDisk(this.#window);
    const problem = (what: string) =>
      new Error(
        `seed ${from}: ${what}\n  said: ${this.#said.join(' ')}\n  kept: ${events.map(({ kind }) => kind).join(' ')}`,
      );
    const kept = inOrder(events).filter(({ kind }) => !REMARKS.has(kind));
    const kinds = kept.map(({ kind }) => kind);
    const said = this.#said;
    if (said.some((kind, at) => kinds[at] !== kind)) throw problem('what was said is not kept');
    const more = kinds.slice(said.length);
    const whole = more.length === 0 || more.join() === inTheAir.join();
    if (!whole)
      throw problem(`kept beside it: ${more.join(' ')}; in the air: ${inTheAir.join(' ')}`);
    if (new Set(events.map(({ id }) => id)).size < events.length) throw problem('an event twice');
    gapless(events, problem);
    foldsFromEveryPrefix(kept, problem);
    this.#said = kinds;
    if (said.length < kinds.length) await this.#window.see(/Last recorded: /);
    const timerOffS = await this.#timerOff(problem);
    return { seed: from, acknowledged: said.length, inTheAir: more.length, timerOffS };
  }

  /** By how many seconds the countdown differs from what the start on disk says. */
  async #timerOff(problem: (what: string) => Error): Promise<number | null> {
    if ((await asked(this.#window)) !== 'Exposing') return null;
    const events = await journalOnDisk(this.#window);
    const start = events.findLast(({ kind }) => kind === 'exposure-started');
    const shown = await this.#window.evaluate(
      () => ({
        text: document.querySelector('[role=timer]')?.textContent ?? '',
        wallMs: Date.now(),
      }),
      undefined,
    );
    const [, minutes, seconds] = /(\d+):(\d\d)/.exec(shown.text) ?? [];
    if (start === undefined || seconds === undefined)
      throw problem(`a timer reads '${shown.text}'`);
    const open = (shown.wallMs - start.wallMs) / 1000 - LEAD_IN_S;
    const left = shown.text.includes('Shutter opens in') ? -open : EXPOSURE_S - open;
    // Whole seconds, counted up to the next one.
    const off = Number(minutes) * 60 + Number(seconds) - left;
    if (off < -0.2 || off > 1.2) {
      throw problem(`the countdown is off by ${off.toFixed(1)} s: '${shown.text}'`);
    }
    return off;
  }

  /**
   * One act, seen through to the screen's acknowledgement.
   *
   * @param pauseMs until a hand acts again; the app takes a quicker one for a bounce.
   */
  async #act(random: Random, pauseMs: number): Promise<void> {
    const act = await this.#choose(random);
    const before = await head(this.#window);
    await act.do();
    if (act.says.length === 0) return;
    await until(
      async () => (await head(this.#window)) !== before || act.says.includes('extra-shot'),
      `the screen to acknowledge ${act.says.join(', ')}`,
    );
    // Nothing on these screens counts extra shots: the app's own line says what was done last.
    if (act.says.includes('extra-shot')) await this.#window.see('Extra shot');
    await new Promise((over) => setTimeout(over, pauseMs));
    this.#said = [...this.#said, ...act.says];
  }

  async #choose(random: Random): Promise<Act> {
    const step = await asked(this.#window);
    if (step === 'List done') {
      await this.#again();
      return this.#choose(random);
    }
    const possible = this.#possible(step);
    let at = random() * possible.reduce((sum, { weight }) => sum + weight, 0);
    for (const act of possible) {
      at -= act.weight;
      if (at <= 0) return act;
    }
    throw new Error(`nothing to do at ${step}`);
  }

  /** The list is done: the outing ends, and the next begins. */
  async #again(): Promise<void> {
    await this.#window.tap('button', 'End the outing');
    await seeAsked(this.#window, 'Ended');
    await this.#window.tap('button', 'Put the outing aside');
    await this.#startOuting();
  }

  #possible(step: Asked): readonly Act[] {
    const window = this.#window;
    const tap = (name: string | RegExp) => () => window.tap('button', name);
    const pause: Act = {
      says: ['paused'],
      weight: 0.5,
      do: async () => {
        await window.tap('button', 'More');
        await window.tap('button', 'Pause');
      },
    };
    switch (step) {
      case 'Mount':
        return [{ says: ['mounted'], weight: 3, do: tap(/is on the tripod$/) }, pause];
      case 'Focus':
        return [{ says: ['setup-ticked'], weight: 3, do: tap('Focus is fixed') }];
      case 'Dial':
        return [{ says: ['dialled'], weight: 3, do: tap('Dials are set') }, pause];
      case 'Rest':
        return [{ says: ['rest-skipped'], weight: 3, do: tap('Skip the rest') }];
      case 'Expose':
        return [{ says: ['exposure-started'], weight: 4, do: tap(/^Start/) }, pause];
      case 'Exposing':
        return [
          {
            says: [],
            weight: 3,
            do: async () => {
              await window.clock.advance(1000 * (LEAD_IN_S + EXPOSURE_S + 1));
              await wake(window);
              await seeAsked(window, 'Record');
            },
          },
          { says: ['undone'], weight: 0.5, do: tap('Undo') },
          {
            says: [],
            weight: 1,
            do: () => window.clock.advance(2000),
          },
        ];
      case 'Record':
        return [{ says: ['recorded'], weight: 4, do: tap('Record as planned') }];
      case 'Paused':
        return [{ says: ['resumed'], weight: 1, do: tap('Go on') }];
      default:
        throw new Error(`no act is known at ${step}`);
    }
  }
}

/** Each writer counts without a gap. */
function gapless(events: readonly OutingEvent[], problem: (what: string) => Error): void {
  const counts = new Map<string, number[]>();
  for (const { writer, seq } of events) counts.set(writer, [...(counts.get(writer) ?? []), seq]);
  for (const seqs of counts.values()) {
    seqs.sort((a, b) => a - b);
    if (seqs.some((seq, at) => seq !== at + 1)) throw problem(`a gap: ${seqs.join(' ')}`);
  }
}

/** However much of a journal is there, it tells a possible run. */
function foldsFromEveryPrefix(
  events: readonly OutingEvent[],
  problem: (what: string) => Error,
): void {
  for (let length = 1; length <= events.length; length += 1) {
    const state = fold(events.slice(0, length));
    if (state === null) throw problem(`the first ${length} events tell nothing`);
    const keys = new Set(state.planned.keys());
    const stray = state.made.find(({ planned }) => !keys.has(planned.key));
    if (stray) throw problem(`after ${length} events a frame belongs to no set`);
  }
}
