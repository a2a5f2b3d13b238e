import { describe, expect, it } from 'vitest';
import { readText } from './files.ts';

const bytes = (...all: number[]): Blob => new Blob([new Uint8Array(all)]);

describe('a chosen file', () => {
  it('is read as text, without the mark that some editors put before it', async () => {
    const file = new Blob(['\uFEFF{"name":"Größe – 1/3"}']);
    expect(await readText(file, 1000)).toEqual({ read: true, text: '{"name":"Größe – 1/3"}' });
  });

  it('up to its limit, and not a byte more', async () => {
    expect(await readText(new Blob(['ä'.repeat(5)]), 10)).toMatchObject({ read: true });
    expect(await readText(new Blob(['ä'.repeat(5)]), 9)).toEqual({ read: false, why: 'too-large' });
  });

  it('that is too large is not even read', async () => {
    const file = Object.assign(new Blob(['123']), {
      arrayBuffer: () => Promise.reject(new Error('was read')),
    });
    expect(await readText(file, 2)).toEqual({ read: false, why: 'too-large' });
  });

  it.each([
    ['a picture', bytes(0xff, 0xd8, 0xff, 0xe0)],
    ['text in two-byte characters', bytes(0xff, 0xfe, 0x41, 0x00)],
    ['text of an older encoding', bytes(0x47, 0xf6, 0xdf, 0x65)],
    ['text cut in the middle of a character', bytes(0x41, 0xc3)],
  ])('that is %s is no text', async (_, file) => {
    expect(await readText(file, 1000)).toEqual({ read: false, why: 'not-text' });
  });

  it('that the system no longer gives out says so', async () => {
    const file = Object.assign(new Blob(['123']), {
      arrayBuffer: () => Promise.reject(new DOMException('gone', 'NotReadableError')),
    });
    expect(await readText(file, 1000)).toEqual({ read: false, why: 'gone' });
  });
});
