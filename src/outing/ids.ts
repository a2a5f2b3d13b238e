declare const outingId: unique symbol;
declare const eventId: unique symbol;
declare const writerId: unique symbol;
declare const sessionId: unique symbol;

export type OutingId = string & { readonly [outingId]: true };
export type EventId = string & { readonly [eventId]: true };
/** Made once for each installation; two phones never share it. */
export type WriterId = string & { readonly [writerId]: true };
/** Made at each load of the page; steady-clock times compare only within one. */
export type SessionId = string & { readonly [sessionId]: true };
/** A frame really made is named by the event that started its exposure. */
export type MadeId = EventId;
