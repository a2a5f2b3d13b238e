import { type ReadonlySignal, signal } from '@preact/signals';

/** The places of the app, in the order of the work. */
export const PLACES = ['gear', 'light', 'plan', 'outing', 'log'] as const;
export type Place = (typeof PLACES)[number];

/** Where the user is: a place, and within it the way to a detail. */
export interface Where {
  readonly place: Place;
  readonly path: readonly string[];
}

export interface Navigation {
  readonly at: ReadonlySignal<Where>;
  /** Opens a place or a detail in it; the back gesture leads back here. */
  go(place: Place, ...path: string[]): void;
  /** As `go`, but the back gesture skips where we are now: for a thing that has just been made or deleted. */
  replace(place: Place, ...path: string[]): void;
  /** Opens a place where it was left; the one we are in goes back to its first screen. */
  visit(place: Place): void;
  /** One level up, the way we came where there is one. */
  back(): void;
  /**
   * Lets the back gesture close something that lies over the screen instead of leaving it.
   *
   * @param close called when the back gesture, or a move to another screen, takes it away.
   * @returns to be called when it closed in another way.
   */
  hold(close: () => void): () => void;
}

/** What navigation needs of the browser's window. */
export interface Browser {
  readonly location: { readonly hash: string };
  readonly history: Pick<History, 'state' | 'go' | 'pushState' | 'replaceState'>;
  addEventListener(type: 'popstate', listener: () => void): void;
}

const hashOf = ({ place, path }: Where): string =>
  `#/${[place, ...path.map(encodeURIComponent)].join('/')}`;

/** Reads an address; anything unknown leads to the first place. */
function whereOf(hash: string): Where {
  const [place, ...path] = hash.replace(/^#\/?/, '').split('/');
  const known = PLACES.find((candidate) => candidate === place);
  return known === undefined
    ? { place: 'gear', path: [] }
    : { place: known, path: path.filter((step) => step !== '').map(decoded) };
}

function decoded(step: string): string {
  try {
    return decodeURIComponent(step);
  } catch {
    // A half-typed address; it names nothing, which the place will say.
    return step;
  }
}

/** Screens of ours that lie before this one in the browser's history. */
const depthOf = (state: unknown): number =>
  typeof state === 'object' && state !== null && 'depth' in state && typeof state.depth === 'number'
    ? state.depth
    : 0;

/** Something that lies over the screen and has, or will have, its own entry in the history. */
interface Layer {
  readonly close: () => void;
  entered: boolean;
}

/** Far longer than any browser takes to go back within one page (our choice). */
const ARRIVES_WITHIN_MS = 1000;

/**
 * Mirrors where we are to the address, so that reload, back and a kill lose nothing.
 *
 * The browser goes back asynchronously, so what is to happen to its history stands in a queue that
 * waits for each arrival. The screen follows at once.
 */
export function createNavigation(browser: Browser): Navigation {
  const { history, location } = browser;
  const at = signal<Where>(whereOf(location.hash));
  const lastPath = new Map<Place, readonly string[]>();
  let layers: readonly Layer[] = [];
  const queue: (number | (() => void))[] = [];
  let arriving = false;
  let waiting: ReturnType<typeof setTimeout> | undefined;

  const arrive = () => {
    clearTimeout(waiting);
    arriving = false;
    runQueue();
  };

  const runQueue = () => {
    while (!arriving) {
      const step = queue.shift();
      if (step === undefined) return;
      if (typeof step === 'number') {
        arriving = true;
        // A move that the browser drops (the system's own back came first) never arrives.
        waiting = setTimeout(arrive, ARRIVES_WITHIN_MS);
        history.go(-step);
      } else step();
    }
  };
  const enqueue = (step: number | (() => void)) => {
    queue.push(step);
    runQueue();
  };

  const enter = (where: Where, how: 'push' | 'replace') => {
    const depth = depthOf(history.state) + (how === 'push' ? 1 : 0);
    if (how === 'push') history.pushState({ depth }, '', hashOf(where));
    else history.replaceState({ depth }, '', hashOf(where));
  };

  const show = (where: Where) => {
    lastPath.set(where.place, where.path);
    at.value = where;
  };

  const open = (where: Where, how: 'push' | 'replace') => {
    const over = [...layers].reverse();
    layers = [];
    const entered = over.filter((layer) => layer.entered).length;
    if (entered > 0) enqueue(entered);
    for (const { close } of over) close();
    enqueue(() => enter(where, how));
    show(where);
  };

  browser.addEventListener('popstate', () => {
    if (arriving) {
      arrive();
      return;
    }
    const top = layers.at(-1);
    if (top) {
      layers = layers.slice(0, -1);
      top.close();
    } else show(whereOf(location.hash));
  });

  const go = (place: Place, ...path: string[]) => {
    const where = { place, path };
    if (hashOf(where) !== hashOf(at.peek())) open(where, 'push');
  };

  return {
    at,
    go,
    replace(place, ...path) {
      open({ place, path }, 'replace');
    },
    visit(place) {
      if (place === at.peek().place) go(place);
      else go(place, ...(lastPath.get(place) ?? []));
    },
    back() {
      if (depthOf(history.state) > 0) enqueue(() => history.go(-1));
      else {
        const { place, path } = at.peek();
        open({ place, path: path.slice(0, -1) }, 'replace');
      }
    },
    hold(close) {
      const layer: Layer = { close, entered: false };
      layers = [...layers, layer];
      enqueue(() => {
        // It may have closed while it waited for its turn.
        if (!layers.includes(layer)) return;
        layer.entered = true;
        enter(at.peek(), 'push');
      });
      return () => {
        if (!layers.includes(layer)) return;
        layers = layers.filter((other) => other !== layer);
        if (layer.entered) enqueue(1);
      };
    },
  };
}
