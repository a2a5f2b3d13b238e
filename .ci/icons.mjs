import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { findChromium } from './chromium.mjs';

const folder = join(import.meta.dirname, '../public/icons');

/**
 * A launcher may cut a maskable icon to a circle of 40 % of its side (205 of 512 pixels) around the
 * centre. The drawing reaches 259 of 512 from its centre, so it shrinks to stay inside.
 */
const icons = [
  { file: 'evenfall-192.png', side: 192, drawing: 192 },
  { file: 'evenfall-512.png', side: 512, drawing: 512 },
  { file: 'evenfall-maskable-512.png', side: 512, drawing: 400 },
];

/** Draws the icons that the manifest names from their one drawing. */
export async function drawIcons() {
  const drawing = await readFile(join(folder, 'evenfall.svg'), 'utf8');
  const browser = await chromium.launch({
    executablePath: findChromium() ?? '',
    args: ['--no-sandbox', '--disable-gpu'],
  });
  const page = await browser.newPage();
  for (const icon of icons) {
    await page.setViewportSize({ width: icon.side, height: icon.side });
    await page.setContent(
      `<style>body{margin:0;height:100vh;display:grid;place-items:center;background:#000}
       svg{width:${icon.drawing}px;display:block}</style>${drawing}`,
    );
    await page.screenshot({ path: join(folder, icon.file) });
  }
  await browser.close();
}
