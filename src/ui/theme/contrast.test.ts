import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const css = readFileSync(new URL('tokens.css', import.meta.url), 'utf8');

/** The colours of the rule whose selector ends so. */
function colours(selector: string): Readonly<Record<string, string>> {
  const rule = css.split('}').find((part) => part.split('{')[0]?.trim().endsWith(selector));
  if (rule === undefined) throw new Error(`no rule for ${selector}`);
  return Object.fromEntries(
    Array.from(rule.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g), ([, name, value]) => [name, value]),
  );
}

/** WCAG 2.2, relative luminance and contrast ratio. */
function contrast(a: string | undefined, b: string | undefined): number {
  const luminance = (hex: string | undefined) => {
    if (hex === undefined) throw new Error('no such colour');
    const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

test('the measure agrees with known pairs', () => {
  expect(contrast('#ffffff', '#000000')).toBeCloseTo(21, 6);
  // Reference: field-reliability, part D.
  expect(contrast('#ff0000', '#000000')).toBeCloseTo(5.25, 2);
  expect(contrast('#b70000', '#000000')).toBeGreaterThanOrEqual(3);
  expect(contrast('#b60000', '#000000')).toBeLessThan(3);
});

test('by day every text has 7:1 and every line 3:1', () => {
  const day = colours('[data-theme="day"]');
  for (const text of ['ink', 'ink-large', 'figure', 'index']) {
    expect(contrast(day[text], day['ground']), text).toBeGreaterThanOrEqual(7);
  }
  expect(contrast(day['line'], day['ground'])).toBeGreaterThanOrEqual(3);
  expect(contrast(day['act-ink'], day['act-ground'])).toBeGreaterThanOrEqual(7);
  expect(contrast(day['picked-ink'], day['picked-ground'])).toBeGreaterThanOrEqual(7);
});

test('by night text has 4.5:1, large text and lines 3:1, and there is nothing but red', () => {
  const night = colours('[data-theme="night"]');
  for (const text of ['ink', 'figure', 'index', 'act-ink']) {
    expect(contrast(night[text], night['ground']), text).toBeGreaterThanOrEqual(4.5);
  }
  for (const line of ['ink-large', 'line', 'act-line']) {
    expect(contrast(night[line], night['ground']), line).toBeGreaterThanOrEqual(3);
  }
  const dimmed = colours('[data-dim="on"]');
  expect(contrast(dimmed['figure'], night['ground'])).toBeGreaterThanOrEqual(3);
  for (const [name, value] of Object.entries({ ...night, ...dimmed })) {
    expect(value, name).toMatch(/^#[0-9a-f]{2}0000$/);
  }
});
