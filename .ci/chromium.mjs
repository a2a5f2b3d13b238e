import { existsSync } from 'node:fs';

const places = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** @returns {string | undefined} the Chromium to test with: CHROME_PATH, or one in its usual place */
export function findChromium() {
  return [process.env['CHROME_PATH'] ?? '', ...places].find((place) => existsSync(place));
}
