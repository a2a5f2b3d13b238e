/** The play button of a headset, while the page holds it. */
export interface Headset {
  /** Call it in each tap: browsers let a page play only then, and calls and other apps stop it. */
  hold(): void;
  letGo(): void;
}

/** The parts of the browser that hand over the button. */
export interface HeadsetParts {
  readonly session: Pick<MediaSession, 'setActionHandler' | 'playbackState'>;
  readonly player: Pick<HTMLAudioElement, 'src' | 'loop' | 'paused' | 'play' | 'pause'>;
  /** Makes an address for the sound, and gives it back. */
  readonly addresses: Pick<typeof URL, 'createObjectURL' | 'revokeObjectURL'>;
}

/** A headset sends one or the other, by what it believes of the player. */
const BUTTONS = ['play', 'pause'] as const;

/**
 * Holds the button of a headset: systems give it only to a page that plays a sound
 * element, so silence is played over and over. Other players stop meanwhile.
 */
export function headsetButton(
  { session, player, addresses }: HeadsetParts,
  onPress: () => void,
): Headset {
  const address = addresses.createObjectURL(new Blob([silence()], { type: 'audio/wav' }));
  player.src = address;
  player.loop = true;
  const hold = (): void => {
    if (!player.paused) return;
    // May be refused without a tap; the next one asks again.
    player.play().then(
      () => {
        session.playbackState = 'playing';
      },
      () => undefined,
    );
  };
  const pressed = (): void => {
    onPress();
    // The system may have stopped the player for us; without it the next press would be lost.
    hold();
  };
  for (const button of BUTTONS) session.setActionHandler(button, pressed);
  return {
    hold,
    letGo() {
      for (const button of BUTTONS) session.setActionHandler(button, null);
      player.pause();
      session.playbackState = 'none';
      addresses.revokeObjectURL(address);
    },
  };
}

/** Whether the browser gives a page the button at all. */
export const givesHeadset = (): boolean => 'mediaSession' in navigator;

/** The button by the browser's own parts, where `givesHeadset`. */
export const browserHeadset = (onPress: () => void): Headset =>
  headsetButton({ session: navigator.mediaSession, player: new Audio(), addresses: URL }, onPress);

/** Shorter sounds are taken for a ping, to which no button belongs: five seconds in one engine (from memory). */
const SILENCE_S = 8;
const RATE = 8000;
const HEADER_BYTES = 44;

/** Silence as a wave file: one channel, 8 bits, whose middle is 128. */
function silence(): Uint8Array<ArrayBuffer> {
  const length = SILENCE_S * RATE;
  const file = new Uint8Array(HEADER_BYTES + length).fill(128, HEADER_BYTES);
  const view = new DataView(file.buffer);
  const word = (at: number, text: string): void => {
    for (let i = 0; i < text.length; i += 1) file[at + i] = text.charCodeAt(i);
  };
  word(0, 'RIFF');
  view.setUint32(4, file.length - 8, true);
  word(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, RATE, true);
  view.setUint32(28, RATE, true);
  view.setUint16(32, 1, true);
  view.setUint16(34, 8, true);
  word(36, 'data');
  view.setUint32(40, length, true);
  return file;
}
