import type { SpokenWords } from '../../app/exposureCues.ts';

/** What the voice says during an exposure. Figures come as figures: the voice reads them. */
export const spoken: SpokenWords = {
  open: 'auf',
  end: 'Ende',
  close: 'zu',
  closeIn: (seconds) => `zu in ${seconds}`,
  ofRig: (letter, what) => `${letter}, ${what}`,
};
