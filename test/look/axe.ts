import axe from 'axe-core';
import type { AppWindow } from '../journeys/driver/phone.ts';

/*
 * What a general checker of accessibility finds on the screen as it stands, by all its rules. The
 * driver runs it: the page's own policy lets no foreign script in.
 */

interface Found {
  readonly id: string;
  readonly targets: readonly string[];
}

/** Puts the checker into the page; it stays until the page is left. */
const bring = new Function(`if (!globalThis.axe) { ${axe.source} }`) as () => void;

/** Each violation with the places it was found at, in words; an empty list is a good screen. */
export async function axeFaults(window: AppWindow): Promise<readonly string[]> {
  await window.evaluate(bring, undefined);
  const found = await window.evaluate(async () => {
    const { axe: checker } = globalThis as unknown as { axe: typeof axe };
    const root = document.querySelector('dialog:modal') ?? document;
    const { violations, passes } = await checker.run(root as Document, {
      resultTypes: ['violations'],
    });
    if (passes.length === 0) throw new Error('the checker looked at nothing');
    return violations.map(
      ({ id, nodes }): Found => ({ id, targets: nodes.map(({ target }) => target.join(' ')) }),
    );
  }, undefined);
  return found.map(({ id, targets }) => `${id}: ${targets.slice(0, 3).join(', ')}`);
}
