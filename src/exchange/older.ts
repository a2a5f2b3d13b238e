/*
 * What older versions wrote, brought to the shape of today before it is read. Nothing is trusted
 * here: what is not of the expected shape passes unchanged, and its reader says what is wrong.
 * Shipped steps are never edited.
 */

type Fields = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const each = (value: unknown, step: (item: unknown) => unknown): unknown =>
  Array.isArray(value) ? value.map(step) : value;

/** A body of version 1 said nothing of how it warms. */
export const bodyFrom1 = (body: unknown): unknown =>
  isObject(body)
    ? {
        ...body,
        heat: { tau: null, doubling: null, exposing: null, liveView: null, idle: null },
      }
    : body;

export const gearFrom1 = (gear: unknown): unknown =>
  isObject(gear) ? { ...gear, bodies: each(gear['bodies'], bodyFrom1) } : gear;

/** A rule of thumb that could be switched off is now one of several ways of resting. */
function restFrom1(rest: unknown): unknown {
  if (!isObject(rest)) return rest;
  const { on, ...rule } = rest;
  return on === true ? { kind: 'thumb', rule } : { kind: 'none' };
}

/** A plan of version 1 knew named orders only, and one time for a swap with all that belongs to it. */
export function planFrom1(plan: unknown): unknown {
  if (!isObject(plan)) return plan;
  const { allowances, rest, sets } = plan;
  return {
    ...plan,
    oneRigAtATime: false,
    arranged: null,
    locked: [],
    swapWorth: 0.02,
    allowances: isObject(allowances) ? { ...allowances, reframeS: 0 } : allowances,
    rest: restFrom1(rest),
    sets: each(sets, (set) => (isObject(set) ? { ...set, restBeforeS: null } : set)),
  };
}

/** What version 1 of a kind of event said, as version 2 says it. */
export function eventDataFrom1(kind: string, data: unknown): unknown {
  if (!isObject(data)) return data;
  if (kind === 'outing-started') {
    return { ...data, plan: planFrom1(data['plan']), gear: gearFrom1(data['gear']) };
  }
  return kind === 'gear-corrected' && data['part'] === 'body'
    ? { ...data, value: bodyFrom1(data['value']) }
    : data;
}

/** A backup of version 1; its events are brought up one by one. */
export const backupFrom1 = (content: unknown): unknown =>
  isObject(content)
    ? { ...content, gear: gearFrom1(content['gear']), plans: each(content['plans'], planFrom1) }
    : content;

export const gearFileFrom1 = (content: unknown): unknown =>
  isObject(content) ? { ...content, gear: gearFrom1(content['gear']) } : content;

/** A journal of version 2 told of frames and not of pairs; neither is read back. */
export const journalFrom2 = (content: unknown): unknown =>
  isObject(content) ? { ...content, pairs: [] } : content;
