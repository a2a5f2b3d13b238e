/** A tone as it was asked for. */
export interface Asked {
  /** Seconds of its context's clock. */
  readonly at: number;
  readonly context: FakeAudioContext;
  readonly samples: number;
  stopped: boolean;
}

/** The loudspeaker of a phone: all its contexts, and the clock on the wall of its mixer. */
export class FakeSpeaker {
  /** How a new context begins, and whether a resume is obeyed: only after a tap. */
  allowed = true;
  /** The audio clocks stand still, though nothing says so. */
  hangs = false;
  /** Delay from the audio clock to the ear, in seconds. */
  delayS = 0;
  readonly asked: Asked[] = [];
  readonly contexts: FakeAudioContext[] = [];

  readonly makeContext = (): AudioContext => {
    const context = new FakeAudioContext(this);
    this.contexts.push(context);
    return context as unknown as AudioContext;
  };

  /** Time goes by; only running contexts count it. */
  pass(ms: number): void {
    if (!this.hangs) for (const context of this.contexts) context.pass(ms);
  }

  /** The system takes the loudspeaker away: a call, the lock screen. */
  interrupt(): void {
    this.allowed = false;
    for (const context of this.contexts) context.become('interrupted');
  }

  /** What would be heard from now on: asked for and not stopped, in a context that runs. */
  get toSound(): readonly Asked[] {
    return this.asked.filter(
      ({ stopped, context, at }) =>
        !stopped && context.state === 'running' && at >= context.currentTime,
    );
  }
}

export class FakeAudioContext extends EventTarget {
  state: AudioContextState = 'suspended';
  currentTime = 0;
  readonly sampleRate = 8000;
  readonly destination = {};
  readonly #speaker: FakeSpeaker;

  constructor(speaker: FakeSpeaker) {
    super();
    this.#speaker = speaker;
  }

  pass(ms: number): void {
    if (this.state === 'running') this.currentTime += ms / 1000;
  }

  become(state: AudioContextState): void {
    if (this.state === state || this.state === 'closed') return;
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }

  async resume(): Promise<void> {
    await Promise.resolve();
    if (!this.#speaker.allowed) throw new DOMException('no', 'InvalidStateError');
    this.become('running');
  }

  async close(): Promise<void> {
    await Promise.resolve();
    this.become('closed');
  }

  getOutputTimestamp(): AudioTimestamp {
    return {
      contextTime: Math.max(0, this.currentTime - this.#speaker.delayS),
      performanceTime: this.state === 'running' ? performance.now() : 0,
    };
  }

  createBuffer(_channels: number, length: number, sampleRate: number): unknown {
    return { length, sampleRate, copyToChannel: () => {} };
  }

  createBufferSource(): unknown {
    const speaker = this.#speaker;
    const context = this;
    let asked: Asked | null = null;
    const source = {
      buffer: { length: 0 },
      connect: () => {},
      disconnect: () => {},
      start(at: number) {
        asked = { at, context, samples: source.buffer.length, stopped: false };
        speaker.asked.push(asked);
      },
      stop() {
        if (asked !== null) asked.stopped = true;
      },
    };
    return source;
  }
}
