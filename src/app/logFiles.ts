import type { FileToGive } from '../device/share.ts';
import { framesCsv } from '../exchange/frameTable.ts';
import type { Stamp } from '../exchange/json.ts';
import { pairsCsv } from '../exchange/pairTable.ts';
import { sidecarsOf } from '../exchange/sidecar/zip.ts';
import type { RunState } from '../outing/state.ts';
import type { Leaving } from './files.ts';

/** What leaves of a log besides its journal; it comes later than the first script. */
export function logFile(
  leaving: Extract<Leaving, { what: 'table' | 'pairs' | 'sidecars' }>,
  run: RunState,
  name: string,
  stamp: Stamp,
): FileToGive {
  switch (leaving.what) {
    case 'table':
      return { name: `evenfall-${name}.csv`, type: 'text/csv', content: framesCsv(run) };
    case 'pairs':
      return { name: `evenfall-${name}-pairs.csv`, type: 'text/csv', content: pairsCsv(run) };
    case 'sidecars': {
      const { zip } = sidecarsOf(run, stamp, leaving.existing);
      return { name: `evenfall-${name}-sidecars.zip`, type: 'application/zip', content: zip };
    }
  }
}
