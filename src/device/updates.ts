import { messageSW, Workbox } from 'workbox-window';

/** How many files of the build in use are on the device, and how many there should be. */
export interface CachedFiles {
  readonly present: number;
  readonly expected: number;
}

/** What the service worker tells; each may be called more than once. */
export interface UpdateListener {
  /** Every file of this build is on the device: it starts without a network. */
  readonly onReady: (files: CachedFiles) => void;
  /** The browser threw files away and they can't be fetched: a start without a network may fail. */
  readonly onIncomplete: (files: CachedFiles) => void;
  /** A newer build lies here whole and waits for `applyUpdate`. */
  readonly onWaiting: () => void;
  /** The worker could not be registered or installed: no start without a network, no update. */
  readonly onFailed: (reason: Error) => void;
}

export interface Updates {
  /** Counts the cached files. Rejects when no worker could be installed. */
  cachedFiles(): Promise<CachedFiles>;
  /** Takes the waiting build and reloads the page. Not to be called while an outing runs. */
  applyUpdate(): Promise<void>;
}

function readCount(answer: unknown): CachedFiles {
  if (
    typeof answer === 'object' &&
    answer !== null &&
    'present' in answer &&
    'expected' in answer
  ) {
    const { present, expected } = answer;
    if (typeof present === 'number' && typeof expected === 'number') return { present, expected };
  }
  throw new Error(`The service worker could not count its files: ${JSON.stringify(answer)}.`);
}

/** The worker that carries the newest build: one that waits, or the one that serves the page. */
const newestOf = ({ active, waiting }: ServiceWorkerRegistration): ServiceWorker | null =>
  waiting ?? active;

/** Whether a worker carries another build than the one in use. */
const isNewer = async (worker: ServiceWorker): Promise<boolean> =>
  (await messageSW(worker, { type: 'is-newer' })) === true;

/**
 * Registers the service worker that stands beside the page. The worker goes on serving the build in
 * use, over restarts too, until `applyUpdate`.
 *
 * @param listener told about readiness, a waiting build and failure
 */
export function registerUpdates(listener: UpdateListener): Updates {
  const workbox = new Workbox('./sw.js');
  const failed = (reason: unknown) =>
    listener.onFailed(reason instanceof Error ? reason : new Error(String(reason)));

  /** The worker that serves this page; before the first install has ended, the one to come. */
  const activeWorker = async (): Promise<ServiceWorker> => {
    const { active, installing, waiting } = await registered;
    const worker = active ?? waiting ?? installing;
    if (worker === null) throw new Error('No service worker could be installed.');
    if (worker.state === 'activated' || active !== null) return worker;
    return new Promise((resolve, reject) => {
      worker.addEventListener('statechange', () => {
        if (worker.state === 'activated') resolve(worker);
        if (worker.state === 'redundant') reject(new Error('The offline files are incomplete.'));
      });
    });
  };

  const cachedFiles = async (): Promise<CachedFiles> =>
    readCount(await messageSW(await activeWorker(), { type: 'count-cached' }));

  const look = async (): Promise<void> => {
    const files = await cachedFiles();
    if (files.present === files.expected) listener.onReady(files);
    else listener.onIncomplete(files);
    await offerNewer();
  };

  const offerNewer = async (): Promise<void> => {
    const worker = newestOf(await registered);
    if (worker !== null && (await isNewer(worker))) listener.onWaiting();
  };

  const register = async (): Promise<ServiceWorkerRegistration> => {
    const registration = await workbox.register({ immediate: true });
    if (registration === undefined) throw new Error('This browser has no service worker.');
    return registration;
  };

  workbox.addEventListener('waiting', () => void offerNewer().catch(failed));
  const registered = register();
  look().catch(failed);

  return {
    cachedFiles,
    async applyUpdate() {
      const worker = newestOf(await registered);
      if (worker !== null) await messageSW(worker, { type: 'take-over' });
      location.reload();
    },
  };
}
