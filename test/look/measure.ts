import type { AppWindow } from '../journeys/driver/phone.ts';

/*
 * What the eye and the thumb need, measured on the screen as it stands. Over a sheet only the sheet
 * is looked at. Each measure gives what is wrong, in words; an empty list is a good screen.
 */

/** The strongest green or blue of any pixel on the screen now, 0 to 255. */
export async function strongestGreenOrBlue(window: AppWindow): Promise<number> {
  const png = Buffer.from(await window.picture()).toString('base64');
  return window.evaluate(async (content: string) => {
    const image = new Image();
    image.src = `data:image/png;base64,${content}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = image.width;
    canvas.height = image.height;
    const brush = canvas.getContext('2d');
    if (brush === null) throw new Error('no canvas to look at the picture');
    brush.drawImage(image, 0, 0);
    const { data } = brush.getImageData(0, 0, canvas.width, canvas.height);
    let strongest = 0;
    let red = 0;
    for (let at = 0; at < data.length; at += 4) {
      red = Math.max(red, data[at] ?? 0);
      strongest = Math.max(strongest, data[at + 1] ?? 0, data[at + 2] ?? 0);
    }
    if (red < 0xb7) throw new Error('nothing is drawn on this screen');
    return strongest;
  }, png);
}

/** Brings a part of the screen to the top of what scrolls. */
export const show = (window: AppWindow, selector: string): Promise<void> =>
  window.evaluate((wanted: string) => {
    const found = document.querySelector(wanted);
    if (found === null) throw new Error(`nothing to show: ${wanted}`);
    found.closest('.section')?.scrollIntoView({ block: 'start' });
  }, selector);

/** What runs off the screen to the side, or is cut by what stands around it; what scrolls sideways. */
export const cutOff = (window: AppWindow): Promise<readonly string[]> =>
  window.evaluate(() => {
    const root = document.querySelector('dialog:modal') ?? document.body;
    const faults = new Set<string>();
    const isSeen = (element: Element): boolean =>
      element.checkVisibility({ visibilityProperty: true }) && element.closest('.heard') === null;

    for (const element of root.querySelectorAll('*')) {
      if (!isSeen(element)) continue;
      const { right, left, width } = element.getBoundingClientRect();
      const says = `${element.tagName} ${element.textContent.slice(0, 40)}`;
      if (width > 1 && (right > innerWidth + 1 || left < -1)) faults.add(`off the screen: ${says}`);
      const scrolls = getComputedStyle(element).overflowX !== 'visible';
      if (scrolls && element.scrollWidth > element.clientWidth + 1) faults.add(`sideways: ${says}`);
    }

    // A line of text is cut by a box that hides what runs over it, or runs over its own button.
    const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text !== null; text = texts.nextNode()) {
      const parent = text.parentElement;
      if (parent === null || !text.textContent?.trim() || !isSeen(parent)) continue;
      const range = document.createRange();
      range.selectNodeContents(text);
      // Figures and letters fill a part of their line's height only.
      const half = Number.parseFloat(getComputedStyle(parent).fontSize) * 0.36;
      for (const line of range.getClientRects()) {
        if (line.width < 1) continue;
        const middle = (line.top + line.bottom) / 2;
        const [top, bottom] = [middle - half, middle + half];
        let scrolledTo = false;
        for (let box: Element | null = parent; box !== null; box = box.parentElement) {
          const { overflowX, overflowY } = getComputedStyle(box);
          const edges = box.getBoundingClientRect();
          const isTarget = box.matches('button, label');
          const isOut =
            ((overflowX !== 'visible' || isTarget) &&
              (line.left < edges.left - 1 || line.right > edges.right + 1)) ||
            (!scrolledTo &&
              (overflowY === 'hidden' || overflowY === 'clip' || isTarget) &&
              (top < edges.top - 1 || bottom > edges.bottom + 1));
          if (isOut) faults.add(`cut: ${text.textContent.slice(0, 40)}`);
          scrolledTo ||= overflowY === 'auto' || overflowY === 'scroll';
          if (box === root) break;
        }
        if (!scrolledTo && (top < -1 || bottom > innerHeight + 1)) {
          faults.add(`below the screen: ${text.textContent.slice(0, 40)}`);
        }
      }
    }
    return [...faults];
  }, undefined);

/** Text that lies over other text: each pair of lines, named by what they say. */
export const overlaid = (window: AppWindow): Promise<readonly string[]> =>
  window.evaluate(() => {
    const root = document.querySelector('dialog:modal') ?? document.body;
    const lines: {
      says: string;
      of: Text;
      left: number;
      right: number;
      top: number;
      bottom: number;
    }[] = [];
    const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text !== null; text = texts.nextNode()) {
      const parent = text.parentElement;
      if (!(text instanceof Text) || parent === null || !text.data.trim()) continue;
      if (!parent.checkVisibility({ visibilityProperty: true })) continue;
      if (parent.closest('.heard, thead') !== null || getComputedStyle(parent).clipPath !== 'none')
        continue;
      const range = document.createRange();
      range.selectNodeContents(text);
      // Figures and letters fill a part of their line's height only.
      const half = Number.parseFloat(getComputedStyle(parent).fontSize) * 0.36;
      for (const line of range.getClientRects()) {
        const middle = (line.top + line.bottom) / 2;
        let { left, right } = line;
        let [top, bottom] = [middle - half, middle + half];
        // Behind the edge of what scrolls nothing is seen.
        for (
          let box: Element | null = parent;
          box !== null && box !== root;
          box = box.parentElement
        ) {
          const { overflowX, overflowY } = getComputedStyle(box);
          if (overflowX === 'visible' && overflowY === 'visible') continue;
          const edges = box.getBoundingClientRect();
          [left, right] = [Math.max(left, edges.left), Math.min(right, edges.right)];
          [top, bottom] = [Math.max(top, edges.top), Math.min(bottom, edges.bottom)];
        }
        if (right - left < 1 || bottom - top < 1) continue;
        lines.push({ says: text.data.trim().slice(0, 30), of: text, left, right, top, bottom });
      }
    }
    if (lines.length === 0) throw new Error('there is no text on this screen');
    return lines.flatMap((one, at) =>
      lines.slice(at + 1).flatMap((other) => {
        const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
        const along = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
        return one.of !== other.of && across > 1 && along > 1
          ? [`overlaid: ${one.says} and ${other.says}`]
          : [];
      }),
    );
  }, undefined);

/** The one act of a screen that is not wholly in sight, and what is to be read beside it without room. */
export const outOfReach = (window: AppWindow): Promise<readonly string[]> =>
  window.evaluate(() => {
    const root = document.querySelector('dialog:modal') ?? document.body;
    const faults: string[] = [];
    for (const act of root.querySelectorAll(
      '.step-foot .act, .screen-foot .button, .sheet footer .button',
    )) {
      if (!act.checkVisibility({ visibilityProperty: true })) continue;
      const { left, right, top, bottom } = act.getBoundingClientRect();
      const scroller = act.closest('.step-foot')?.getBoundingClientRect();
      const [least, most] = [
        Math.max(0, scroller?.top ?? 0),
        Math.min(innerHeight, scroller?.bottom ?? innerHeight),
      ];
      const isIn = left >= -1 && right <= innerWidth + 1 && top >= least - 1 && bottom <= most + 1;
      if (!isIn)
        faults.push(
          `out of reach: ${act.textContent}, ${Math.round(top)} to ${Math.round(bottom)}`,
        );
    }
    // Two lines of text, so that scrolling shows more than slivers.
    const least = 2 * 1.4 * Number.parseFloat(getComputedStyle(document.body).fontSize);
    for (const scroller of root.querySelectorAll('.step-scroll, .scroller, .scroll')) {
      if (!scroller.checkVisibility({ visibilityProperty: true })) continue;
      const room = scroller.clientHeight;
      if (room < Math.min(least, scroller.scrollHeight))
        faults.push(`no room to read: ${Math.round(room)} of ${Math.round(least)} px`);
    }
    return faults;
  }, undefined);

/** What must be read at a glance and is not wholly in sight as it stands. */
export const outOfSight = (window: AppWindow, selector: string): Promise<readonly string[]> =>
  window.evaluate((wanted: string) => {
    const root = document.querySelector('dialog:modal') ?? document.body;
    return [...root.querySelectorAll(wanted)].flatMap((element) => {
      const range = document.createRange();
      range.selectNodeContents(element);
      const line = range.getBoundingClientRect();
      const middle = (line.top + line.bottom) / 2;
      const half = Number.parseFloat(getComputedStyle(element).fontSize) * 0.36;
      const scroller = element.closest('.step-scroll, .scroller, .scroll');
      const edges = scroller?.getBoundingClientRect() ?? { top: 0, bottom: innerHeight };
      return middle - half < edges.top - 1 || middle + half > edges.bottom + 1
        ? [`${element.textContent} ends ${Math.round(middle + half - edges.bottom)} px too low`]
        : [];
    });
  }, selector);

/** A choice and a tick are touched anywhere on their box. */
const TARGETS = 'button, textarea, input[type=text], .choice label, .tick';

/** What is to be touched and is smaller than `least` CSS pixels either way, with its size. */
export const tooSmall = (window: AppWindow, least: number): Promise<readonly string[]> =>
  window.evaluate(
    ({ targets, limit }) => {
      const root = document.querySelector('dialog:modal') ?? document.body;
      return [...root.querySelectorAll(targets)]
        .filter((element) => element.checkVisibility({ visibilityProperty: true }))
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && Math.min(box.width, box.height) < limit - 0.5)
        .map(
          ({ element, box }) =>
            `${element.getAttribute('aria-label') ?? element.textContent} ${box.width} x ${box.height}`,
        );
    },
    { targets: TARGETS, limit: least },
  );

/** What is to be touched and stands nearer than `least` CSS pixels to its neighbour. */
export const tooClose = (window: AppWindow, least: number): Promise<readonly string[]> =>
  window.evaluate(
    ({ targets, limit }) => {
      const root = document.querySelector('dialog:modal') ?? document.body;
      const seen = [...root.querySelectorAll(targets)]
        .filter((element) => element.checkVisibility({ visibilityProperty: true }))
        .flatMap((element) => {
          const box = element.getBoundingClientRect();
          let { top, bottom } = box;
          // Behind the edge of what scrolls nothing can be touched.
          for (let outer = element.parentElement; outer !== null; outer = outer.parentElement) {
            if (getComputedStyle(outer).overflowY === 'visible') continue;
            const edges = outer.getBoundingClientRect();
            top = Math.max(top, edges.top);
            bottom = Math.min(bottom, edges.bottom);
          }
          const name = element.getAttribute('aria-label') ?? element.textContent;
          const { left, right } = box;
          return bottom - top > 1 ? [{ element, name, left, right, top, bottom }] : [];
        });
      return seen.flatMap((one, at) =>
        seen.slice(at + 1).flatMap((other) => {
          if (one.element.contains(other.element) || other.element.contains(one.element)) return [];
          const across = Math.max(one.left, other.left) - Math.min(one.right, other.right);
          const along = Math.max(one.top, other.top) - Math.min(one.bottom, other.bottom);
          // Side by side or one above the other; corners are no neighbours.
          const gap = Math.max(across, along);
          return Math.min(across, along) < 0 && gap < limit - 0.5
            ? [`${one.name} and ${other.name} ${gap.toFixed(1)}`]
            : [];
        }),
      );
    },
    { targets: TARGETS, limit: least },
  );

/**
 * What lacks contrast by WCAG 2.2, from the colours in use: by day text 7:1; by night text 4.5:1 and
 * from 24 px on 3:1; lines and signs always 3:1.
 */
export const tooFaint = (window: AppWindow): Promise<readonly string[]> =>
  window.evaluate(() => {
    type Colour = readonly [red: number, green: number, blue: number, alpha: number];
    const brush = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
    if (brush === null) throw new Error('no canvas to read colours with');
    const colourOf = (css: string): Colour => {
      brush.clearRect(0, 0, 1, 1);
      brush.fillStyle = '#000';
      brush.fillStyle = css;
      brush.fillRect(0, 0, 1, 1);
      const [red = 0, green = 0, blue = 0, alpha = 0] = brush.getImageData(0, 0, 1, 1).data;
      return [red, green, blue, alpha / 255];
    };
    const over = ([r, g, b, a]: Colour, [r2, g2, b2]: Colour): Colour => [
      r * a + r2 * (1 - a),
      g * a + g2 * (1 - a),
      b * a + b2 * (1 - a),
      1,
    ];
    const opaqueGround = (element: Element | null): Colour => {
      if (element === null) return [0, 0, 0, 1];
      const own = colourOf(getComputedStyle(element).backgroundColor);
      return own[3] === 1 ? own : over(own, opaqueGround(element.parentElement));
    };
    const luminance = ([red, green, blue]: Colour): number => {
      const [r = 0, g = 0, b = 0] = [red, green, blue].map((level) => {
        const share = level / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const contrast = (colour: Colour, ground: Colour): number => {
      const [dark = 0, light = 0] = [luminance(over(colour, ground)), luminance(ground)].sort(
        (a, b) => a - b,
      );
      return (light + 0.05) / (dark + 0.05);
    };

    const root = document.querySelector('dialog:modal') ?? document.body;
    const byDay = document.documentElement.dataset['theme'] === 'day';
    const faults = new Set<string>();
    for (const element of [root, ...root.querySelectorAll('*')]) {
      if (!element.checkVisibility({ visibilityProperty: true })) continue;
      if (element.closest('.heard, #not-started') !== null) continue;
      const style = getComputedStyle(element);
      const ground = opaqueGround(element);
      const name = `${element.tagName}.${element.getAttribute('class') ?? ''}`;
      const says = element.textContent.trim().slice(0, 30);
      const check = (what: string, css: string, behind: Colour, least: number) => {
        const colour = colourOf(css);
        if (colour[3] === 0) return;
        const ratio = contrast(colour, behind);
        // The limits of the themes are rounded to whole steps of a channel.
        if (ratio < least - 0.005) faults.add(`${what} ${ratio.toFixed(2)}: ${name} ${says}`);
      };
      const hasText = [...element.childNodes].some(
        ({ nodeType, textContent }) => nodeType === Node.TEXT_NODE && textContent?.trim(),
      );
      const isLarge = Number.parseFloat(style.fontSize) >= 24;
      if (hasText) check('text', style.color, ground, byDay ? 7 : isLarge ? 3 : 4.5);
      if (Number(style.opacity) < 1) faults.add(`seen through: ${name} ${says}`);
      const outside = opaqueGround(element.parentElement);
      for (const side of ['Top', 'Right', 'Bottom', 'Left'] as const) {
        const isDrawn =
          style[`border${side}Style`] !== 'none' && style[`border${side}Width`] !== '0px';
        if (isDrawn) check('line', style[`border${side}Color`], outside, 3);
      }
      if (element instanceof SVGGeometryElement) {
        for (const paint of [style.stroke, style.fill]) {
          if (paint !== 'none' && !paint.startsWith('url')) check('sign', paint, ground, 3);
        }
      }
    }
    return [...faults];
  }, undefined);
