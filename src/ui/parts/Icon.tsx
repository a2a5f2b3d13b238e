import './Icon.css';

/* Our own drawings on a grid of 24, in lines of 2. */
const PATHS = {
  minus: 'M5 12H19',
  plus: 'M5 12H19M12 5V19',
  up: 'M5 15L12 8L19 15',
  down: 'M5 9L12 16L19 9',
  back: 'M14 5L7 12L14 19',
  onward: 'M10 5L17 12L10 19',
  close: 'M6 6L18 18M18 6L6 18',
  tick: 'M5 12.5L10 17.5L19 7',
  /* An arrow that turns back. */
  undo: 'M9 5L4 10L9 15M4 10H15A5 5 0 0 1 15 20H9',
  more: 'M4 12H6M11 12H13M18 12H20',
  grip: 'M5 8H19M5 12H19M5 16H19',
  /* A body seen from the front. */
  gear: 'M2 6H22V19H2ZM12 8.5A4 4 0 1 0 12 16.5A4 4 0 1 0 12 8.5M5 6V3.5H9V6',
  /* The sun half under the horizon. */
  light: 'M2 16H22M6 16A6 6 0 0 1 18 16M12 3V6M4 8L6 9.7M20 8L18 9.7M5 20H19',
  /* A list with two columns to tick. */
  plan: 'M3 5H6V8H3ZM3 15H6V18H3ZM10 6.5H21M10 11.5H17M10 16.5H21M10 21H17',
  /* A tripod. */
  outing: 'M8 3H16V8H8ZM12 8V12M12 12L5 21M12 12L19 21M12 12V21',
  /* A ruled page. */
  log: 'M5 3H19V21H5ZM9 3V21M12 8H16M12 12H16M12 16H16',
  /* A disc half dark. */
  night: 'M12 3A9 9 0 1 0 12 21A9 9 0 1 0 12 3M12 3V21M12 7H15.5M12 11H18M12 15H17',
} as const;

export type IconName = keyof typeof PATHS;

/** A line drawing the size of the text beside it. It says nothing alone: a name stands with it. */
export const Icon = ({ name }: { readonly name: IconName }) => (
  <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
    <path d={PATHS[name]} />
  </svg>
);
