import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { finderScript } from './finderScript.ts';
import type { Phone, PhoneOptions } from './phone.ts';
import { killAllOf } from './processes.ts';
import { type Remote, RemoteWindow } from './remoteWindow.ts';

/*
 * WebKitGTK by the W3C's WebDriver protocol, in a host of our own that keeps its data, on a display
 * that nobody sees.
 */

const host = join(import.meta.dirname, 'webkitHost.py');
const handSize = { width: 390, height: 844 };
/** The name under which an element travels, by the protocol. */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const address = server.address();
  await new Promise((closed) => server.close(closed));
  if (address === null || typeof address === 'string') throw new Error('no port');
  return address.port;
}

async function call(url: string, method: string, body?: unknown): Promise<unknown> {
  const response = await fetch(url, {
    method,
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    signal: AbortSignal.timeout(30_000),
  });
  const { value } = (await response.json()) as { value: unknown };
  if (!response.ok) {
    const { error, message } = value as { error: string; message: string };
    throw new Error(`${error}: ${message}`);
  }
  return value;
}

function remoteOf(session: string, folder: string): Remote {
  const ask = (path: string, body: unknown = {}) => call(`${session}/${path}`, 'POST', body);
  let files = 0;
  return {
    engine: 'WebKit',
    // The protocol tells nothing of a page's console; uncaught errors are asked of the page.
    problems: [],
    goTo: async (address) => void (await ask('url', { url: address })),
    reload: async () => void (await ask('refresh')),
    back: async () => void (await ask('back')),
    close: async () => void (await call(`${session}/window`, 'DELETE')),
    // Through a promise, so that what waits is waited for.
    run: (source, args) =>
      ask('execute/sync', {
        script: `return Promise.resolve((${source})(...arguments[0]))`,
        args: [args],
      }),
    async touch(x, y) {
      const at = { x: Math.round(x), y: Math.round(y), origin: 'viewport' };
      await ask('actions', {
        actions: [
          {
            type: 'pointer',
            id: 'finger',
            parameters: { pointerType: 'mouse' },
            actions: [
              { type: 'pointerMove', duration: 0, ...at },
              { type: 'pointerDown', button: 0 },
              { type: 'pointerUp', button: 0 },
            ],
          },
        ],
      });
    },
    async press(key) {
      const value = key === 'Enter' ? '\uE007' : key === 'Tab' ? '\uE004' : key;
      await ask('actions', {
        actions: [
          {
            type: 'key',
            id: 'keyboard',
            actions: [
              { type: 'keyDown', value },
              { type: 'keyUp', value },
            ],
          },
        ],
      });
    },
    async setFiles(label, named) {
      const field = (await ask('execute/sync', {
        script: 'return globalThis.evenfallFinder.field(arguments[0], null)',
        args: [label],
      })) as Record<string, string>;
      const paths = await Promise.all(
        named.map(async ({ name, bytes }) => {
          files += 1;
          const path = join(folder, `${files}-${name}`);
          await writeFile(path, bytes);
          return path;
        }),
      );
      await ask(`element/${field[ELEMENT]}/value`, { text: paths.join('\n') });
    },
    picture: async () =>
      Buffer.from((await call(`${session}/screenshot`, 'GET')) as string, 'base64'),
    resize: async (size) => void (await ask('window/rect', size)),
  };
}

class WebKitPhone implements Phone {
  readonly #profile: string;
  readonly #options: PhoneOptions;
  #started: ChildProcess[] = [];
  #session: string | null = null;
  #window: RemoteWindow | undefined;

  constructor(profile: string, options: PhoneOptions) {
    this.#profile = profile;
    this.#options = options;
  }

  get window() {
    if (this.#window === undefined) throw new Error('this phone is off: restart it first');
    return this.#window;
  }

  openSecondWindow(): Promise<never> {
    return Promise.reject(new Error('WebKit opens one window for a driver'));
  }

  async allow(permission: Parameters<Phone['allow']>[0]) {
    throw new Error(`WebKit is not asked for ${permission} by a driver`);
  }

  /** The driver, the display and the host die together; only the host holds data. */
  async kill() {
    await this.#stopAll();
  }

  async #stopAll() {
    for (const child of this.#started) child.kill('SIGKILL');
    await killAllOf(this.#profile);
    this.#started = [];
    this.#session = null;
    this.#window = undefined;
  }

  async restart() {
    if (this.#session !== null) {
      await call(this.#session, 'DELETE');
      await this.#stopAll();
    }
    const display = `:${50 + Math.floor(Math.random() * 900)}`;
    const port = await freePort();
    const { width, height } = this.#options.size ?? handSize;
    const env = {
      ...process.env,
      DISPLAY: display,
      GDK_BACKEND: 'x11',
      LIBGL_ALWAYS_SOFTWARE: '1',
      WEBKIT_DISABLE_COMPOSITING_MODE: '1',
      NO_AT_BRIDGE: '1',
      PHONE_PROFILE: this.#profile,
      PHONE_SIZE: `${width}x${height}`,
      XDG_DATA_HOME: join(this.#profile, 'xdg-data'),
      XDG_CACHE_HOME: join(this.#profile, 'xdg-cache'),
      XDG_CONFIG_HOME: join(this.#profile, 'xdg-config'),
    };
    this.#started.push(
      spawn('Xvfb', [display, '-screen', '0', '1280x1000x24', '-nolisten', 'tcp'], {
        stdio: 'ignore',
      }),
      spawn('WebKitWebDriver', ['-p', String(port)], { env, stdio: 'ignore' }),
    );
    const driver = `http://127.0.0.1:${port}`;
    await this.#ready(driver);
    const { sessionId } = (await call(`${driver}/session`, 'POST', {
      capabilities: {
        alwaysMatch: {
          // The folder on its command line is how its processes are found again.
          'webkitgtk:browserOptions': { binary: host, args: ['--automation', this.#profile] },
        },
      },
    })) as { sessionId: string };
    this.#session = `${driver}/session/${sessionId}`;
    this.#window = new RemoteWindow(remoteOf(this.#session, this.#profile), await finderScript());
  }

  async #ready(driver: string) {
    for (let tries = 0; tries < 100; tries += 1) {
      const up = await fetch(`${driver}/status`).then(
        ({ ok }) => ok,
        () => false,
      );
      if (up) return;
      await new Promise((again) => setTimeout(again, 100));
    }
    throw new Error('the WebKit driver does not answer');
  }

  async throwAway() {
    await this.#stopAll();
    await rm(this.#profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Takes a phone with WebKit, which `npm test` brings. */
export async function takeWebKit(options: PhoneOptions = {}): Promise<Phone> {
  const phone = new WebKitPhone(await mkdtemp(join(tmpdir(), 'evenfall-webkit-')), options);
  await phone.restart();
  return phone;
}
