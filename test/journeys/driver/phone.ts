/*
 * What a journey can do with the app: what a person with a phone can do, and a few faults that
 * happen to phones. An engine (Chromium, others to come) implements it; journeys know no engine.
 */

/** The ARIA roles by which journeys find things. */
export type Role =
  | 'alert'
  | 'alertdialog'
  | 'button'
  | 'cell'
  | 'checkbox'
  | 'combobox'
  | 'dialog'
  | 'figure'
  | 'group'
  | 'heading'
  | 'img'
  | 'link'
  | 'list'
  | 'listitem'
  | 'main'
  | 'navigation'
  | 'progressbar'
  | 'radio'
  | 'region'
  | 'row'
  | 'slider'
  | 'spinbutton'
  | 'status'
  | 'switch'
  | 'tab'
  | 'table'
  | 'textbox'
  | 'timer';

/** An accessible name: a string must match whole, an expression anywhere. */
export type Name = string | RegExp;

/** Narrows a search to the inside of the one thing with this role and name. */
export interface Within {
  readonly within?: { readonly role: Role; readonly name: Name };
}

/** A size on the screen in CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** What the system asks of pages. */
export interface Preferences {
  readonly scheme?: 'dark' | 'light';
  readonly reducedMotion?: boolean;
  readonly moreContrast?: boolean;
}

export interface NamedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The page's clock under the journey's hand: `Date`, timers, frames and `performance.now`. */
export interface PageClock {
  /** Puts the clock at an instant; it goes on from there. To be called before `open`. */
  start(at: Date): Promise<void>;
  /** Lets time pass at once, firing what falls due on the way. */
  advance(milliseconds: number): Promise<void>;
  /** Moves wall time alone, as network time or a hand does. */
  jumpWall(to: Date): Promise<void>;
}

/** One window of the app. Each act waits until it is possible, and fails after ten seconds. */
export interface AppWindow {
  open(address: string): Promise<void>;
  reload(): Promise<void>;
  /** The system's way back. */
  back(): Promise<void>;
  close(): Promise<void>;

  tap(role: Role, name: Name, inside?: Within): Promise<void>;
  /** Two touches of one spot, as fast as a wet glove makes them. */
  touchTwice(spot: { readonly x: number; readonly y: number }): Promise<void>;
  /** Puts text into a field, in place of what is there. */
  type(label: Name, text: string, inside?: Within): Promise<void>;
  /** Chooses an option of a list by what it says. */
  choose(label: Name, option: string, inside?: Within): Promise<void>;
  /** Presses a key of a hardware keyboard, 'Tab' or 'Enter'. */
  press(key: string): Promise<void>;
  /** Hands files to a file field. */
  upload(label: Name, ...files: readonly NamedFile[]): Promise<void>;
  /** Does an act that ends in a saved file, and returns the file. */
  download(act: () => Promise<void>): Promise<NamedFile>;

  /** Waits until the text is on the screen. */
  see(text: Name): Promise<void>;
  /** Waits until a thing is on the screen. */
  seeThe(role: Role, name: Name, inside?: Within): Promise<void>;
  /** Waits until the text is no longer on the screen. */
  seeGone(text: Name): Promise<void>;
  /** What a thing shows, as a person reads it. */
  read(role: Role, name: Name, inside?: Within): Promise<string>;
  /** What stands in a field. */
  readField(label: Name, inside?: Within): Promise<string>;
  /** How many things of this role and name are on the screen now; does not wait. */
  count(role: Role, name?: Name, inside?: Within): Promise<number>;
  /** Where a thing stands, in CSS pixels from the window's top left. */
  placeOf(
    role: Role,
    name: Name,
    inside?: Within,
  ): Promise<{ readonly x: number; readonly y: number } & Size>;

  /** A PNG of the window, at another size if given; the size stays. */
  picture(size?: Size): Promise<Uint8Array>;
  /** What printing gives, as a PDF; only Chromium prints into a file. */
  printed(): Promise<Uint8Array>;
  resize(size: Size): Promise<void>;
  prefer(preferences: Preferences): Promise<void>;
  readonly clock: PageClock;

  /** Cuts the network for this phone. A stopped server is the stronger proof. */
  offline(cut: boolean): Promise<void>;
  /** Slows the page's processor by a factor; 1 is full speed. */
  slowDown(factor: number): Promise<void>;
  /** What the page's scripts hold in memory once all that can go is gone, in bytes. */
  heapBytes(): Promise<number>;
  /** Runs a function in the page. Only for faults of the device and for measuring. */
  evaluate<Result, Argument>(
    work: (argument: Argument) => Result | Promise<Result>,
    argument: Argument,
  ): Promise<Result>;
  /** Runs a function at each load from now on, before the page's own scripts: a phone of another kind. */
  beforeLoad<Argument>(work: (argument: Argument) => void, argument: Argument): Promise<void>;
  /** Errors so far: uncaught, on the console, or forbidden by the page's policy. */
  readonly problems: readonly string[];
}

/** A browser with a profile of its own, as installed on one phone. */
export interface Phone {
  /** The first window; another one after `restart`. */
  readonly window: AppWindow;
  openSecondWindow(): Promise<AppWindow>;
  /** Grants or denies what a person is asked for. */
  allow(permission: 'geolocation' | 'persistent-storage' | 'notifications'): Promise<void>;
  /** Ends every process of this browser at once, as a dead battery does. */
  kill(): Promise<void>;
  /** Starts the browser again on the same profile, after `kill` or with a clean end. */
  restart(): Promise<void>;
  /** Ends the browser and deletes the profile. */
  throwAway(): Promise<void>;
}

/** A phone whose browser tells of all traffic. */
export interface HeardPhone extends Phone {
  /** What pages and workers of all kinds have asked for so far, wherever it was to come from. */
  readonly requests: readonly string[];
}

/** How a phone is laid out. */
export interface PhoneOptions {
  readonly size?: Size;
  readonly touch?: boolean;
  /** A time zone by its IANA name. */
  readonly zone?: string;
  readonly language?: string;
  /** The port of this machine that every host but `localhost` leads to. */
  readonly world?: number;
}
