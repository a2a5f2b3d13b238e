import type { WindowTalk } from '../../../src/device/locks.ts';

/** Two ends that hear each other by no timer and no process of their own. */
export function tiedTalk(): [WindowTalk, WindowTalk] {
  const ends: WindowTalk[] = [0, 1].map((own) => ({
    onmessage: null,
    postMessage(data: unknown) {
      const end = ends[1 - own] as { onmessage: ((event: { data: unknown }) => void) | null };
      queueMicrotask(() => end.onmessage?.({ data }));
    },
  }));
  return ends as [WindowTalk, WindowTalk];
}
