import { expect, it } from 'vitest';
import { setPageTheme } from './theme.ts';

it('reaches what no style sheet does: the bars around the page and the ground before the paint', () => {
  const meta = new Map([['content', '#000000']]);
  const documentElement = { dataset: {}, style: {} };
  const page = {
    documentElement,
    querySelector: (selector: string) =>
      selector === 'meta[name="theme-color"]'
        ? { setAttribute: (name: string, value: string) => meta.set(name, value) }
        : null,
  };
  setPageTheme(page as unknown as Document, { name: 'day', ground: '#fafaf7', scheme: 'light' });
  expect(documentElement).toEqual({ dataset: { theme: 'day' }, style: { colorScheme: 'light' } });
  expect(meta.get('content')).toBe('#fafaf7');
});
