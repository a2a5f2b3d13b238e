/*
 * Names of stored things. Each kind has its own type, so that a lens can never
 * be looked up where a body is meant.
 */

declare const bodyId: unique symbol;
declare const lensId: unique symbol;
declare const rigId: unique symbol;

export type BodyId = string & { readonly [bodyId]: true };
export type LensId = string & { readonly [lensId]: true };
export type RigId = string & { readonly [rigId]: true };
