declare const planId: unique symbol;
declare const setId: unique symbol;
declare const frameKey: unique symbol;

export type PlanId = string & { readonly [planId]: true };
export type SetId = string & { readonly [setId]: true };
/** Names one planned frame within its plan: set, rig, pass and repeat. */
export type FrameKey = string & { readonly [frameKey]: true };
