import { isRefusal, type Refusal } from '../science/refusal.ts';
import type { Stops } from '../science/units.ts';
import { type CostWeights, USUAL_WEIGHTS } from './costWeights.ts';
import { changeOrder } from './edit.ts';
import { type DialledOf, orderFrames } from './order.ts';
import { type CostedOrder, costedOrder } from './orderCost.ts';
import { orderProblem } from './orderProblem.ts';
import { type OrderQuestion, orderRequest } from './orderRequest.ts';
import type { OrderName, Plan } from './plan.ts';

/*
 * The orders among which a plan chooses, each with all that is to be said of it, in one light and
 * from one start, so that they can be compared.
 */

/** What an order costs where a swap is worth so much. */
export const weightsAt = (perSwap: Stops): CostWeights => ({ ...USUAL_WEIGHTS, perSwap });

/** The order that stands in a question. Refuses what `orderProblem` refuses. */
export function costedAsItStands(question: OrderQuestion): CostedOrder | Refusal {
  const problem = orderProblem(orderRequest(question));
  return isRefusal(problem)
    ? problem
    : costedOrder(problem, problem.standing, weightsAt(question.plan.swapWorth));
}

/** A question with the order of another plan that differs in nothing else. */
export const askedOf = (
  question: OrderQuestion,
  plan: Plan,
  dialled: DialledOf,
): OrderQuestion => ({
  ...question,
  plan,
  frames: orderFrames(plan, dialled),
});

/**
 * What a named order comes to if the plan takes it: with the passes usual in it, as far as nobody has
 * chosen others.
 */
export const costedNamed = (
  question: OrderQuestion,
  name: OrderName,
  dialled: DialledOf,
): CostedOrder | Refusal =>
  costedAsItStands(askedOf(question, changeOrder(question.plan, name), dialled));
