import { beforeEach, describe, expect, it } from 'vitest';
import { type Headset, headsetButton } from './headset.ts';

type Button = () => void;

let handlers: Map<string, Button | null>;
let session: { playbackState: MediaSessionPlaybackState };
let allowed: boolean;
let player: { src: string; loop: boolean; paused: boolean };
let blobs: Blob[];
let given: string[];
let presses: number;
let headset: Headset;

const settled = () => new Promise((done) => setImmediate(done));

beforeEach(() => {
  handlers = new Map();
  session = { playbackState: 'none' };
  allowed = true;
  player = { src: '', loop: false, paused: true };
  blobs = [];
  given = [];
  presses = 0;
  headset = headsetButton(
    {
      session: Object.assign(session, {
        setActionHandler: (name: string, handler: Button | null) => handlers.set(name, handler),
      }) as never,
      player: Object.assign(player, {
        async play() {
          if (!allowed) throw new DOMException('no tap', 'NotAllowedError');
          player.paused = false;
        },
        pause() {
          player.paused = true;
        },
      }) as never,
      addresses: {
        createObjectURL(blob: Blob) {
          blobs.push(blob);
          return 'blob:silence';
        },
        revokeObjectURL: (address: string) => given.push(address),
      } as never,
    },
    () => {
      presses += 1;
    },
  );
});

describe('the button of a headset', () => {
  it('is held by playing silence, over and over, once a tap allows it', async () => {
    allowed = false;
    headset.hold();
    await settled();
    expect([player.paused, session.playbackState]).toEqual([true, 'none']);
    allowed = true;
    headset.hold();
    await settled();
    expect([player.paused, player.loop, session.playbackState]).toEqual([false, true, 'playing']);
  });

  it('counts each press, whether the headset sends play or pause, and plays on', async () => {
    headset.hold();
    await settled();
    handlers.get('pause')?.();
    player.paused = true;
    handlers.get('play')?.();
    await settled();
    expect([presses, player.paused]).toEqual([2, false]);
  });

  it('is let go of whole', async () => {
    headset.hold();
    await settled();
    headset.letGo();
    expect([...handlers.values()]).toEqual([null, null]);
    expect([player.paused, session.playbackState, given]).toEqual([true, 'none', ['blob:silence']]);
  });

  it('the silence is a wave file of 8 s, with no sample off its middle', async () => {
    const file = new Uint8Array((await blobs[0]?.arrayBuffer()) ?? new ArrayBuffer(0));
    const view = new DataView(file.buffer);
    const text = (at: number) => new TextDecoder().decode(file.slice(at, at + 4));
    expect([text(0), text(8), text(12), text(36)]).toEqual(['RIFF', 'WAVE', 'fmt ', 'data']);
    expect(view.getUint32(4, true)).toBe(file.length - 8);
    expect(view.getUint32(40, true) / view.getUint32(28, true)).toBe(8);
    expect(file.length - 44).toBe(view.getUint32(40, true));
    expect(new Set(file.slice(44))).toEqual(new Set([128]));
  });
});
