import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ElementHandle, KeyInput, Page } from 'puppeteer-core';
import type { NamedFile } from './phone.ts';
import type { Remote } from './remoteWindow.ts';

/**
 * A page that Puppeteer drives.
 *
 * @param folder where files lie on their way into the page
 */
export function remoteOf(engine: string, page: Page, folder: string): Remote {
  const problems: string[] = [];
  page.on('pageerror', (error) => problems.push(`uncaught: ${String(error)}`));
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push(`console: ${message.text()}`);
  });
  let files = 0;
  return {
    engine,
    problems,
    goTo: async (address) => void (await page.goto(address)),
    reload: async () => void (await page.reload()),
    back: async () => void (await page.goBack()),
    close: () => page.close(),
    run: async (source, args) =>
      await page.evaluate(
        // The text is a function of ours; an engine's policy for pages does not hold for a driver.
        `(${source})(...${JSON.stringify(args)})`,
      ),
    touch: (x, y) => page.mouse.click(x, y),
    press: (key) => page.keyboard.press(key as KeyInput),
    async setFiles(label, named: readonly NamedFile[]) {
      const handle = await page.evaluateHandle(
        `globalThis.evenfallFinder.field(${JSON.stringify(label)}, null)`,
      );
      const paths = await Promise.all(
        named.map(async ({ name, bytes }) => {
          files += 1;
          const path = join(folder, `${files}-${name}`);
          await writeFile(path, bytes);
          return path;
        }),
      );
      await (handle.asElement() as ElementHandle<HTMLInputElement>).uploadFile(...paths);
    },
    picture: () => page.screenshot({ type: 'png' }),
    resize: (size) => page.setViewport(size),
  };
}
