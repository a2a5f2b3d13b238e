import type { Body } from '../../../gear/body.ts';
import type { BodyId, LensId } from '../../../gear/ids.ts';
import type { Lens } from '../../../gear/lens.ts';
import { bodyFields, lensFields } from '../../../gear/parse.ts';
import { isFault } from '../../../gear/read.ts';
import { useGearWords } from '../../words/gear.ts';
import { useGearDesk } from './useGearDesk.ts';

/** Takes one field's new value, or says in one sentence why not. */
export type CommitField<T> = <K extends keyof T>(field: K, value: unknown) => string | null;

/** Commits the fields of a stored body. */
export function useBodyCommit(id: BodyId): CommitField<Body> {
  const desk = useGearDesk();
  const { fault } = useGearWords();
  return (field, value) => {
    const read = bodyFields[field](value);
    const broken = isFault(read) ? read : desk.changeBody(id, { [field]: read });
    return broken && fault(broken);
  };
}

/** Commits the fields of a stored lens. */
export function useLensCommit(id: LensId): CommitField<Lens> {
  const desk = useGearDesk();
  const { fault } = useGearWords();
  return (field, value) => {
    const read = lensFields[field](value);
    const broken = isFault(read) ? read : desk.changeLens(id, { [field]: read });
    return broken && fault(broken);
  };
}
