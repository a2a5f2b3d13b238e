import { USUAL_WEIGHTS } from '../../plan/costWeights.ts';
import { effortFor } from '../../plan/fairOrder.ts';
import { namedStarts } from '../../plan/orderCost.ts';
import { orderProblem } from '../../plan/orderProblem.ts';
import { type OrderQuestion, orderRequest } from '../../plan/orderRequest.ts';
import { orderTrade } from '../../plan/orderTrade.ts';
import { seed } from '../../science/mulberry32.ts';
import { isRefusal } from '../../science/refusal.ts';
import type { OrderAnswer } from '../orderSearch.ts';

/*
 * Looks for the order of frames beside the screen. It is asked one question, tells how far it is and
 * what it has, and is ended from outside.
 */

declare const self: DedicatedWorkerGlobalScope;

/** Often enough for a line that grows, seldom enough not to keep the screen busy. */
const TELL_EVERY_MS = 100;
/** The same list gives the same order again. */
const SEED = seed(1);

const tell = (answer: OrderAnswer): void => self.postMessage(answer);

self.addEventListener('message', ({ data: question }: MessageEvent<OrderQuestion>) => {
  const request = orderRequest(question);
  const problem = orderProblem(request);
  if (isRefusal(problem)) {
    tell({ kind: 'refused', rule: problem.rule });
    return;
  }
  const trade = orderTrade(
    problem,
    USUAL_WEIGHTS,
    SEED,
    effortFor(problem),
    namedStarts(request, problem),
    question.plan.swapWorth,
  );
  let told = Number.NEGATIVE_INFINITY;
  let found = 0;
  let step = trade.next();
  for (; !step.done; step = trade.next()) {
    const { share, points } = step.value;
    const now = performance.now();
    if (now - told < TELL_EVERY_MS && points.length === found) continue;
    tell({ kind: 'looking', share, points: points.length === found ? null : points });
    told = now;
    found = points.length;
  }
  tell(
    isRefusal(step.value)
      ? { kind: 'refused', rule: step.value.rule }
      : { kind: 'found', points: step.value },
  );
});
