import type { SpokenWords } from '../../app/exposureCues.ts';

/** What the voice says during an exposure. Figures come as figures: the voice reads them. */
export const spoken: SpokenWords = {
  open: 'open',
  end: 'end',
  close: 'close',
  closeIn: (seconds) => `close in ${seconds}`,
  ofRig: (letter, what) => `${letter}, ${what}`,
};
