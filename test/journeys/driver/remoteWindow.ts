import type { Asked, AskedName, Finder, Spot } from './page/finder.page.ts';
import type { AppWindow, Name, NamedFile, Preferences, Role, Size, Within } from './phone.ts';

/** What an engine must do for us besides finding things, which the page's finder does. */
export interface Remote {
  readonly engine: string;
  goTo(address: string): Promise<void>;
  reload(): Promise<void>;
  back(): Promise<void>;
  close(): Promise<void>;
  /** Runs the text of a function in the page with arguments that JSON can carry. */
  run(source: string, args: readonly unknown[]): Promise<unknown>;
  touch(x: number, y: number): Promise<void>;
  press(key: string): Promise<void>;
  setFiles(label: AskedName, files: readonly NamedFile[]): Promise<void>;
  picture(): Promise<Uint8Array>;
  resize(size: Size): Promise<void>;
  readonly problems: readonly string[];
}

const PATIENCE_MS = 20_000;

const travelling = (name: Name): AskedName =>
  typeof name === 'string'
    ? { exact: name }
    : { pattern: name.source, flags: name.flags.replace('g', '') };

const within = ({ within: place }: Within = {}): Asked['within'] =>
  place === undefined ? null : { role: place.role, name: travelling(place.name) };

const asked = (role: Role, name?: Name, inside?: Within): Asked => ({
  role,
  name: name === undefined ? null : travelling(name),
  within: within(inside),
});

/** A window of an engine that is driven by scripts in its page. */
export class RemoteWindow implements AppWindow {
  readonly #remote: Remote;
  readonly #finder: string;

  constructor(remote: Remote, finder: string) {
    this.#remote = remote;
    this.#finder = finder;
  }

  get problems(): readonly string[] {
    return this.#remote.problems;
  }

  /** Asks the page's finder, putting it there first where a navigation took it away. */
  async #ask<K extends keyof Finder>(
    act: K,
    ...args: Parameters<Finder[K]>
  ): Promise<Awaited<ReturnType<Finder[K]>>> {
    const call = `(...args) => globalThis.evenfallFinder === undefined
      ? { missing: true }
      : { answer: globalThis.evenfallFinder[${JSON.stringify(act)}](...args) }`;
    const first = (await this.#remote.run(call, args)) as { missing?: true; answer: never };
    if (first.missing !== true) return first.answer;
    await this.#remote.run(`() => { ${this.#finder} }`, []);
    return ((await this.#remote.run(call, args)) as { answer: never }).answer;
  }

  async #until<T>(what: string, look: () => Promise<T | null | false>): Promise<T> {
    const deadline = Date.now() + PATIENCE_MS;
    let trouble = '';
    while (Date.now() < deadline) {
      try {
        const found = await look();
        if (found !== null && found !== false) return found;
      } catch (error) {
        // A page that is being left cannot be asked.
        trouble = error instanceof Error ? `: ${error.message}` : '';
      }
      await new Promise((again) => setTimeout(again, 50));
    }
    throw new Error(`${this.#remote.engine}: waited in vain for ${what}${trouble}`);
  }

  #spot(role: Role, name: Name, inside?: Within): Promise<Spot> {
    return this.#until(`${role} ${String(name)}`, () =>
      this.#ask('spot', asked(role, name, inside)),
    );
  }

  #lacks(what: string): never {
    throw new Error(`${this.#remote.engine} has no ${what} for a driver`);
  }

  open(address: string) {
    return this.#remote.goTo(address);
  }
  reload() {
    return this.#remote.reload();
  }
  back() {
    return this.#remote.back();
  }
  close() {
    return this.#remote.close();
  }

  async tap(role: Role, name: Name, inside?: Within) {
    // A thing that moves is not hit where it was: it must stand still for a moment.
    let last = await this.#spot(role, name, inside);
    const still = await this.#until(`${role} ${String(name)} to stand still`, async () => {
      const now = await this.#ask('spot', asked(role, name, inside));
      const same = now !== null && now.x === last.x && now.y === last.y;
      last = now ?? last;
      return same ? now : null;
    });
    await this.#remote.touch(still.x + still.width / 2, still.y + still.height / 2);
  }

  async touchTwice({ x, y }: { readonly x: number; readonly y: number }) {
    await this.#remote.touch(x, y);
    await this.#remote.touch(x, y);
  }

  async type(label: Name, text: string, inside?: Within) {
    await this.#until(`a field ${String(label)}`, () =>
      this.#ask('fill', travelling(label), text, within(inside)),
    );
  }

  async choose(label: Name, option: string, inside?: Within) {
    await this.#until(`a list ${String(label)} with ${option}`, () =>
      this.#ask('choose', travelling(label), option, within(inside)),
    );
  }

  press(key: string) {
    return this.#remote.press(key);
  }

  async upload(label: Name, ...files: readonly NamedFile[]) {
    await this.#until(`a field ${String(label)}`, () => this.#ask('hasField', travelling(label)));
    await this.#remote.setFiles(travelling(label), files);
  }

  /** Files that a page saves are caught in the page: no engine here hands its downloads over. */
  async download(act: () => Promise<void>): Promise<NamedFile> {
    await this.#remote.run(
      `() => {
        globalThis.evenfallSaved = null;
        const made = new Map();
        const create = URL.createObjectURL;
        URL.createObjectURL = (blob) => {
          const url = create.call(URL, blob);
          made.set(url, blob);
          return url;
        };
        const click = HTMLAnchorElement.prototype.click;
        HTMLAnchorElement.prototype.click = function () {
          const blob = this.hasAttribute('download') ? made.get(this.href) : undefined;
          if (blob === undefined) {
            click.call(this);
            return;
          }
          const name = this.download;
          blob.arrayBuffer().then((buffer) => {
            globalThis.evenfallSaved = { name, bytes: [...new Uint8Array(buffer)] };
          });
        };
      }`,
      [],
    );
    await act();
    const saved = await this.#until('a file to be saved', async () => {
      return (await this.#remote.run('() => globalThis.evenfallSaved ?? null', [])) as {
        name: string;
        bytes: number[];
      } | null;
    });
    return { name: saved.name, bytes: Uint8Array.from(saved.bytes) };
  }

  async see(text: Name) {
    await this.#until(String(text), () => this.#ask('sees', travelling(text)));
  }
  async seeThe(role: Role, name: Name, inside?: Within) {
    await this.#until(
      `${role} ${String(name)}`,
      async () => (await this.#ask('count', asked(role, name, inside))) > 0,
    );
  }
  async seeGone(text: Name) {
    await this.#until(
      `${String(text)} to go`,
      async () => !(await this.#ask('sees', travelling(text))),
    );
  }
  read(role: Role, name: Name, inside?: Within) {
    return this.#until(`${role} ${String(name)}`, () =>
      this.#ask('read', asked(role, name, inside)),
    );
  }
  readField(label: Name, inside?: Within) {
    return this.#until(`a field ${String(label)}`, () =>
      this.#ask('value', travelling(label), within(inside)),
    );
  }
  count(role: Role, name?: Name, inside?: Within) {
    return this.#ask('count', asked(role, name, inside));
  }
  placeOf(role: Role, name: Name, inside?: Within) {
    return this.#until(`${role} ${String(name)}`, () =>
      this.#ask('box', asked(role, name, inside)),
    );
  }

  async printed(): Promise<never> {
    throw new Error('only Chromium prints into a file');
  }

  async picture(size?: Size) {
    if (size !== undefined) await this.resize(size);
    return await this.#remote.picture();
  }
  resize(size: Size) {
    return this.#remote.resize(size);
  }

  prefer(_preferences: Preferences) {
    return this.#lacks('preferences');
  }
  readonly clock = {
    start: (_at: Date) => this.#lacks('clock'),
    advance: (_milliseconds: number) => this.#lacks('clock'),
    jumpWall: (_to: Date) => this.#lacks('clock'),
  };
  offline(_cut: boolean) {
    return this.#lacks('switch for the network');
  }
  slowDown(_factor: number) {
    return this.#lacks('slower processor');
  }
  heapBytes() {
    return this.#lacks('look at its memory');
  }
  beforeLoad() {
    return this.#lacks('way in before its pages');
  }

  async evaluate<Result, Argument>(
    work: (argument: Argument) => Result | Promise<Result>,
    argument: Argument,
  ) {
    return (await this.#remote.run(`(argument) => (${work.toString()})(argument)`, [
      argument ?? null,
    ])) as Result;
  }
}
