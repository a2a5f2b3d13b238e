import { expect } from 'vitest';
import type { AppWindow } from '../driver/phone.ts';

/** Goes to the export of the outing that is open in the Log, from any screen within it. */
export async function toExport(window: AppWindow): Promise<void> {
  while ((await window.count('button', /^Export/)) === 0) {
    await window.tap('button', /^(Back|Close)$/);
  }
  await window.tap('button', /^Export/);
}

/** The log's table as a general reader of RFC 4180 sees it: a record a row. */
export async function logTable(window: AppWindow): Promise<Record<string, string>[]> {
  await toExport(window);
  await window.tap('button', 'Make the table ready');
  const file = await window.download(() => window.tap('button', 'Save it'));
  await window.tap('button', 'Close');
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(file.bytes);
  expect(text.startsWith('\ufeff')).toBe(true);
  const [head = [], ...rows] = cellsOf(text.slice(1));
  return rows.map((cells) => Object.fromEntries(head.map((name, at) => [name, cells[at] ?? ''])));
}

/** RFC 4180, written apart from the app's own reader. */
function cellsOf(text: string): string[][] {
  const rows: string[][] = [[]];
  const cell = /(?:"((?:[^"]|"")*)"|([^,\r\n]*))(,|\r\n|$)/gy;
  for (let found = cell.exec(text); found?.[0]; found = cell.exec(text)) {
    const [, quoted, plain = '', end] = found;
    rows.at(-1)?.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    if (end === '\r\n') rows.push([]);
  }
  return rows.filter((row) => row.length > 0);
}
