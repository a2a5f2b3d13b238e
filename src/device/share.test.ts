import { describe, expect, it, vi } from 'vitest';
import { browserShare, type FileToGive, type ShareParts } from './share.ts';

const backup: FileToGive = {
  name: 'evening 2027-02-12.json',
  type: 'application/json',
  content: '{"outing":1}',
};
const picture: FileToGive = {
  name: 'chart.png',
  type: 'image/png',
  content: new Uint8Array([1, 2]),
};

/** A share sheet that takes only these types. */
const sheet = (types: readonly string[], outcome: () => Promise<void> = async () => {}) => ({
  canShare: vi.fn((data?: ShareData) => types.includes(data?.files?.[0]?.type ?? '')),
  share: vi.fn(async (_data?: ShareData) => outcome()),
});
const refusal = (name: string) => () => Promise.reject(new DOMException('no', name));
const offered = (parts: Partial<ShareParts>, file = backup) =>
  browserShare({ navigator: {}, download: null, ...parts }).offer(file);

describe('a file gets off the phone', () => {
  it('by the share sheet, as it is, where the sheet takes it', async () => {
    const navigator = sheet(['application/json', 'text/plain']);
    const offer = offered({ navigator });
    expect(offer).toMatchObject({ way: 'share', name: backup.name });
    expect(navigator.share).not.toHaveBeenCalled();
    expect(await offer?.give()).toEqual({ done: 'shared' });
    const [file] = navigator.share.mock.calls[0]?.[0]?.files ?? [];
    expect([file?.name, file?.type, await file?.text()]).toEqual([
      backup.name,
      backup.type,
      backup.content,
    ]);
  });

  it('as plain text with the same content, where the sheet takes no JSON', async () => {
    const navigator = sheet(['text/plain']);
    const offer = offered({ navigator });
    expect(offer).toMatchObject({ way: 'share', name: 'evening 2027-02-12.txt' });
    await offer?.give();
    const [file] = navigator.share.mock.calls[0]?.[0]?.files ?? [];
    expect([file?.name, file?.type, await file?.text()]).toEqual([
      'evening 2027-02-12.txt',
      'text/plain',
      backup.content,
    ]);
  });

  it('by one call straight from the tap: nothing is awaited before', () => {
    const navigator = sheet(['application/json']);
    void offered({ navigator })?.give();
    expect(navigator.share).toHaveBeenCalledTimes(1);
  });

  it.each([
    ['there is no sheet', {}],
    ['the sheet takes no files', sheet([])],
    ['the sheet cannot say what it takes', { share: async () => {} }],
  ])('as a download, where %s', async (_, navigator) => {
    const download = vi.fn();
    const offer = offered({ navigator, download });
    expect(offer?.way).toBe('download');
    expect(download).not.toHaveBeenCalled();
    expect(await offer?.give()).toEqual({ done: 'downloaded', name: backup.name });
    const [file] = download.mock.calls[0] as [File];
    expect([file.name, file.type, await file.text()]).toEqual([
      backup.name,
      backup.type,
      backup.content,
    ]);
  });

  it('as text to copy, where a download would save nothing', async () => {
    const offer = offered({});
    expect(offer?.way).toBe('text');
    expect(await offer?.give()).toEqual({ done: 'text', text: backup.content });
  });

  it('not at all, where even that is not possible', () => {
    expect(offered({}, picture)).toBeNull();
  });

  it('a picture is never dressed up as text', () => {
    expect(offered({ navigator: sheet(['text/plain']), download: () => {} }, picture)?.way).toBe(
      'download',
    );
  });
});

describe('the share sheet does not go through', () => {
  it('the user closed it: nothing has happened, and the same offer still stands', async () => {
    const offer = offered({ navigator: sheet(['application/json'], refusal('AbortError')) });
    expect(await offer?.give()).toEqual({ done: 'closed' });
  });

  it.each(['NotAllowedError', 'DataError', 'InvalidStateError'])(
    'the system says %s: the next way is ready for another tap',
    async (name) => {
      const download = vi.fn();
      const offer = offered({ navigator: sheet(['application/json'], refusal(name)), download });
      const given = await offer?.give();
      expect(given).toMatchObject({ done: 'refused', next: { way: 'download' } });
      expect(download).not.toHaveBeenCalled();
      if (given?.done === 'refused') await given.next?.give();
      expect(download).toHaveBeenCalledTimes(1);
    },
  );

  it('and no way is left: that is said, too', async () => {
    const offer = offered({ navigator: sheet(['image/png'], refusal('DataError')) }, picture);
    expect(await offer?.give()).toEqual({ done: 'refused', next: null });
  });
});
