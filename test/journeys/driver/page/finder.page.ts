import { computeAccessibleName, getRole, isInaccessible } from 'dom-accessibility-api';

/*
 * Runs in the page of an engine that cannot find things by role and name itself. Roles and names are
 * computed by a library after the standard (accname), not by us.
 */

/** A name as it travels into the page. */
export type AskedName =
  | { readonly exact: string }
  | { readonly pattern: string; readonly flags: string };

export interface Asked {
  readonly role: string;
  readonly name: AskedName | null;
  readonly within: { readonly role: string; readonly name: AskedName } | null;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const spaced = (text: string): string => text.replace(/\s+/g, ' ').trim();

const fits = (text: string, asked: AskedName | null): boolean => {
  if (asked === null) return true;
  if ('exact' in asked) return spaced(text) === spaced(asked.exact);
  return new RegExp(asked.pattern, asked.flags).test(spaced(text));
};

const isShown = (element: Element): boolean => {
  const box = element.getBoundingClientRect();
  return box.width > 0 && box.height > 0 && element.checkVisibility({ visibilityProperty: true });
};

/** Everything with a role and a name, in the order of the page. */
function all({ role, name, within }: Asked): Element[] {
  const roots = within === null ? [document.body] : all({ ...within, within: null });
  return roots.flatMap((root) =>
    [...root.querySelectorAll('*')].filter(
      (element) =>
        getRole(element) === role &&
        !isInaccessible(element) &&
        fits(computeAccessibleName(element), name),
    ),
  );
}

const FIELDS = 'input, select, textarea, [role=textbox], [role=spinbutton], [role=combobox]';

function fields(label: AskedName, within: Asked['within']): Element[] {
  const roots = within === null ? [document.body] : all({ ...within, within: null });
  return roots.flatMap((root) =>
    [...root.querySelectorAll(FIELDS)].filter((field) =>
      fits(computeAccessibleName(field, { hidden: true }), label),
    ),
  );
}

/** The innermost things that say a text and can be seen. */
function saying(text: AskedName): Element[] {
  const found = [...document.body.querySelectorAll('*')].filter(
    (element) => isShown(element) && holds(element.textContent ?? '', text),
  );
  return found.filter(
    (element) => !found.some((other) => other !== element && element.contains(other)),
  );
}

const holds = (text: string, asked: AskedName): boolean =>
  'exact' in asked
    ? spaced(text).toLowerCase().includes(spaced(asked.exact).toLowerCase())
    : fits(text, asked);

/** Where a finger would land: null while the thing moves, is shut, or lies under another. */
function spotOf(element: Element): Spot | null {
  if (element.matches(':disabled, [aria-disabled=true]')) return null;
  element.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
  const { x, y, width, height } = element.getBoundingClientRect();
  const hit = document.elementFromPoint(x + width / 2, y + height / 2);
  const reached = hit !== null && (element.contains(hit) || hit.contains(element));
  return reached && width > 0 && height > 0 ? { x, y, width, height } : null;
}

/** What the driver asks of the page. */
const finder = {
  count: (asked: Asked): number => all(asked).filter(isShown).length,
  spot: (asked: Asked): Spot | null => {
    const [first] = all(asked).filter(isShown);
    return first ? spotOf(first) : null;
  },
  box: (asked: Asked): Spot | null => {
    const [first] = all(asked).filter(isShown);
    if (!first) return null;
    const { x, y, width, height } = first.getBoundingClientRect();
    return { x, y, width, height };
  },
  read: (asked: Asked): string | null => {
    const [first] = all(asked).filter(isShown) as HTMLElement[];
    return first ? first.innerText : null;
  },
  sees: (text: AskedName): boolean => saying(text).length > 0,
  field: (label: AskedName, within: Asked['within']): Element | null =>
    fields(label, within)[0] ?? null,
  hasField: (label: AskedName): boolean => fields(label, null).length > 0,
  value: (label: AskedName, within: Asked['within']): string | null => {
    const [first] = fields(label, within) as HTMLInputElement[];
    return first ? first.value : null;
  },
  /** Puts text into a field as typing does: the page hears `input`, and `change` when it is left. */
  fill: (label: AskedName, text: string, within: Asked['within']): boolean => {
    const [first] = fields(label, within);
    if (!(first instanceof HTMLInputElement || first instanceof HTMLTextAreaElement)) return false;
    first.focus();
    first.select();
    return document.execCommand('insertText', false, text) || text === '';
  },
  choose: (label: AskedName, option: string, within: Asked['within']): boolean => {
    const [first] = fields(label, within);
    if (!(first instanceof HTMLSelectElement)) return false;
    const wanted = [...first.options].find((each) => spaced(each.text) === spaced(option));
    if (!wanted) return false;
    first.value = wanted.value;
    first.dispatchEvent(new Event('input', { bubbles: true }));
    first.dispatchEvent(new Event('change', { bubbles: true }));
    return true;
  },
};

export type Finder = typeof finder;

(globalThis as unknown as { evenfallFinder: Finder }).evenfallFinder = finder;
