import type { OrderQuestion } from '../plan/orderRequest.ts';
import type { TradePoint } from '../plan/orderTrade.ts';

/** What a search says while it works, and at its end. */
export type OrderAnswer =
  | {
      readonly kind: 'looking';
      /** The part that is done, of the most it may take; from 0 to 1. */
      readonly share: number;
      /** All that is found; null if that is what was told before. */
      readonly points: readonly TradePoint[] | null;
    }
  | { readonly kind: 'found'; readonly points: readonly TradePoint[] }
  | { readonly kind: 'refused'; readonly rule: string }
  /** The part that searches is not on the device, or broke. */
  | { readonly kind: 'failed' };

/** Starts a search and hears its answers. @returns ends it; nothing is heard after that. */
export type StartSearch = (
  question: OrderQuestion,
  hear: (answer: OrderAnswer) => void,
) => () => void;

/** Searches in a worker of its own: the screen never waits for it. */
export const searchInWorker: StartSearch = (question, hear) => {
  const worker = new Worker(new URL('./workers/order.worker.ts', import.meta.url), {
    type: 'module',
  });
  const end = () => worker.terminate();
  worker.addEventListener('message', ({ data }: MessageEvent<OrderAnswer>) => hear(data));
  worker.addEventListener('error', () => hear({ kind: 'failed' }));
  worker.postMessage(question);
  return end;
};
