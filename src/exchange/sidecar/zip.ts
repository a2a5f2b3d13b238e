import { strToU8, zipSync } from 'fflate';
import { framesOf } from '../../log/frames.ts';
import type { RunState } from '../../outing/state.ts';
import { frameRecords } from '../frameTable.ts';
import type { Stamp } from '../json.ts';
import { type SidecarFrame, xmpOf } from './xmp.ts';

/** The sidecars of an outing in one archive. */
export interface Sidecars {
  readonly zip: Uint8Array<ArrayBuffer>;
  /** Names in the archive, in the order of the frames. */
  readonly names: readonly string[];
  /** How many are named for a matched file; the others for what the log expects. */
  readonly matched: number;
  /** Those that got another name, because their own is taken. */
  readonly renamed: readonly string[];
  /** Frames without a file and without a number: they get none. */
  readonly without: number;
}

const baseOf = (name: string): string => name.replace(/\.[^.]*$/, '');

/**
 * A name that nobody has yet. File systems that take 'A' for 'a' are many, so neither do we tell
 * them apart.
 */
function freeName(base: string, taken: ReadonlySet<string>): string {
  const own = `${base}.xmp`;
  if (!taken.has(own.toLowerCase())) return own;
  for (let at = 1; ; at += 1) {
    const name = `${base}.evenfall${at === 1 ? '' : `-${at}`}.xmp`;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

/**
 * A sidecar for each frame that has a file, or a number by which the log expects one: named for it,
 * never under a name that exists.
 *
 * @param existing names in the folder to which they go.
 */
export function sidecarsOf(
  run: RunState,
  stamp: Stamp,
  existing: readonly string[] = [],
): Sidecars {
  const records = frameRecords(run);
  const taken = new Set(existing.map((name) => name.toLowerCase()));
  const names: string[] = [];
  const renamed: string[] = [];
  const entries: Record<string, Uint8Array> = {};
  let matched = 0;
  let without = 0;
  for (const [at, { id, fileName }] of framesOf(run).entries()) {
    const record = records[at];
    const file = run.files.get(id) ?? null;
    // Somebody said that this frame has no file: then the log's own name is wrong too.
    const expected = run.files.has(id) ? null : fileName;
    const base = file ? baseOf(file.name) : expected;
    if (!record || !base) {
      without += 1;
      continue;
    }
    const frame: SidecarFrame = { record, file, namedBy: file ? 'file' : 'log' };
    const name = freeName(base, taken);
    taken.add(name.toLowerCase());
    names.push(name);
    if (name !== `${base}.xmp`) renamed.push(name);
    if (file) matched += 1;
    entries[name] = strToU8(xmpOf(frame, stamp));
  }
  // A date of its own, so that the same outing gives the same archive.
  const zip = zipSync(entries, { level: 6, mtime: stamp.written });
  return { zip: new Uint8Array(zip), names, matched, renamed, without };
}
