import type { Deed, Deleted } from '../../app/undo.ts';

/** A thing without a name of its own. */
const THINGS: Readonly<Record<Deleted['thing'], string>> = {
  body: 'a body',
  lens: 'a lens',
  rig: 'a rig',
  offset: 'an offset',
  heat: 'a figure of how it warms',
  plan: 'a shot list',
  set: 'a set',
  site: 'a site',
  outing: 'an outing',
};

/** Words of the shared pieces. */
export const parts = {
  unknown: 'unknown',
  invented: 'Invented',
  close: 'Close',
  dismiss: 'Dismiss',
  undo: 'Undo',
  chosen: 'chosen',
  asStated: 'Stated default',
  deed(deed: Deed): string {
    if (deed.act === 'order-replaced') return 'Replaced the order of frames.';
    const { thing, name } = deed;
    return name === ''
      ? `Deleted ${THINGS[thing]}.`
      : `Deleted ${thing === 'rig' ? `rig ${name}` : name}.`;
  },
  rig: (letter: string) => `Rig ${letter}`,
  clickDown: (dial: string) => `${dial}: one click down`,
  clickUp: (dial: string) => `${dial}: one click up`,
  moveUp: (name: string) => `Move ${name} up`,
  moveDown: (name: string) => `Move ${name} down`,
  drag: (name: string) => `Drag ${name}`,
  movedTo: (name: string, place: number, of: number) => `${name} is now ${place} of ${of}.`,
  give: { share: 'Share it', download: 'Save it', text: 'Show it as text' },
  fileReady: (name: string) => `${name} is ready.`,
  noWayOut:
    'This browser gives no file away. Nothing is lost. Open the app in another browser to save it.',
  fileText: 'The file as text. Select all and copy it.',
  given: {
    shared: 'Handed on.',
    closed: 'Not handed on. The file is still here.',
    downloaded: 'Handed to the browser. Look for it among the downloads.',
    text: '',
    refused: 'The system did not take it. The file is still here. Try the other way.',
  },
  notANumber: 'This is not a number. Write it with digits and one comma or point, as in 43.8.',
  needed: 'This is needed. Fill it in to go on.',
};
