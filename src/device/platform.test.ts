import { describe, expect, it } from 'vitest';
import { readPlatform } from './platform.ts';

const frame = (navigator: object, standalone: boolean, more: object = {}): Window =>
  ({
    navigator,
    matchMedia: (query: string) => ({
      matches: standalone && query === '(display-mode: standalone)',
    }),
    ...more,
  }) as unknown as Window;

describe('where the app runs', () => {
  it.each([
    // [what it says of itself, own window] -> [install first, installed, downloads]
    ['a tab on iOS', { standalone: false }, false, [true, false, true]],
    ['the home screen of iOS', { standalone: true }, true, [false, true, false]],
    ['a tab elsewhere', {}, false, [false, false, true]],
    ['installed elsewhere', {}, true, [false, true, true]],
  ] as const)('%s', (_, navigator, own, expected) => {
    const { installFirst, installed, downloads } = readPlatform(frame(navigator, own));
    expect([installFirst, installed, downloads]).toEqual(expected);
  });

  it('what the phone has besides', () => {
    expect(readPlatform(frame({}, false))).toMatchObject({ vibrates: false, speaks: false });
    expect(
      readPlatform(frame({ vibrate: () => true }, false, { speechSynthesis: {} })),
    ).toMatchObject({ vibrates: true, speaks: true });
  });
});
