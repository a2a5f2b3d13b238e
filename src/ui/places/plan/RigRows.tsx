import type { ComponentChildren } from 'preact';
import type { RigId } from '../../../gear/ids.ts';
import type { Settings } from '../../../gear/settings.ts';
import { type Differences, evenUp } from '../../../plan/differences.ts';
import type { OtherRow, SetTable } from '../../../plan/prepare.ts';
import type { Stops } from '../../../science/units.ts';
import { fadeOf, widthWords } from '../../parts/fadeWords.ts';
import { RigSign } from '../../parts/RigSign.tsx';
import { ROLES } from '../../parts/Table.tsx';
import { usePlanWords } from '../../words/plan.ts';
import { useHeatWords } from '../../words/planHeat.ts';
import { pairHeatWords } from './heatWords.ts';
import './RigRows.css';
import { problemsAt, problemWords, timeWords } from './sentences.ts';
import type { PlanView } from './usePlanView.ts';

interface Props {
  readonly caption: string;
  readonly view: PlanView;
  readonly table: Extract<SetTable, { kind: 'compared' }>;
  /** Without the reference's row, where its dials stand above. */
  readonly othersOnly?: boolean;
}

/** What to dial on each rig of a set, and what is left between them. */
export function RigRows({ caption, view, table, othersOnly }: Props) {
  const { plan } = usePlanWords();
  // Under the cap before the list nothing is compared.
  const isCompared = view.set(table.set)?.kind !== 'capped-series';
  const heads = [plan.rig, plan.fNumber, plan.time, plan.iso, plan.difference, plan.residual];
  return (
    <div class="rig-rows">
      <table {...ROLES.table} aria-label={caption}>
        <thead {...ROLES.rowgroup}>
          <tr {...ROLES.row}>
            {[...heads, plan.evenUp].map((head) => (
              <th key={head} {...ROLES.columnheader} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody {...ROLES.rowgroup}>
          {!othersOnly && (
            <RigRow
              view={view}
              table={table}
              rig={table.reference.rig}
              settings={table.reference.dialled.settings}
              isReference
            />
          )}
          {table.others.map((row) => (
            <RigRow
              key={row.rig}
              view={view}
              table={table}
              rig={row.rig}
              settings={row.dialled.settings}
              {...(isCompared && { differences: row.differences })}
            >
              {isCompared && <Results row={row} />}
            </RigRow>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function RigRow({
  view,
  table,
  rig,
  settings,
  isReference,
  differences,
  children,
}: {
  readonly view: PlanView;
  readonly table: SetTable;
  readonly rig: RigId;
  readonly settings: Settings;
  readonly isReference?: boolean;
  /** Against the reference; none for itself. */
  readonly differences?: Differences;
  readonly children?: ComponentChildren;
}) {
  const words = useHeatWords();
  const { format, plan } = words;
  const assembled = view.rig(rig);
  const problems = problemsAt(view, table.set).filter(
    (problem) => 'rig' in problem && problem.rig === rig,
  );
  const fade = differences && fadeOf(differences);
  const heat = pairHeatWords(words, view, table.set, rig);
  const notes = [
    ...(heat === null ? [] : [heat]),
    ...(fade
      ? [plan.inLight.fade(format.stopsFine(fade.stops), widthWords(words, fade) ?? '')]
      : []),
    ...problems.map((problem) => problemWords(words, view, problem)),
  ];
  return (
    <tr {...ROLES.row}>
      <th {...ROLES.rowheader} scope="row" class="rig">
        {assembled && <RigSign letter={assembled.rig.letter} />}
        <span>{assembled?.body.name}</span>
        {isReference && <span class="is-reference">{plan.referenceRig}</span>}
      </th>
      <td {...ROLES.cell} class="mark">
        {format.fMark(settings.fMark)}
      </td>
      <td {...ROLES.cell} class="mark">
        {timeWords(words, settings.time)}
      </td>
      <td {...ROLES.cell} class="mark">
        {format.isoMark(settings.isoMark)}
      </td>
      {children}
      {notes.length > 0 && (
        <td {...ROLES.cell} class="notes">
          {notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </td>
      )}
    </tr>
  );
}

function Results({ row: { differences } }: { readonly row: OtherRow }) {
  const { plan } = usePlanWords();
  return (
    <>
      <Result label={plan.difference} stops={differences.sum.stops} />
      {differences.residual && <Result label={plan.residual} stops={differences.residual.stops} />}
      <Result label={plan.evenUp} stops={evenUp(differences).stops} />
    </>
  );
}

function Result({ label, stops }: { readonly label: string; readonly stops: Stops }) {
  const { format } = usePlanWords();
  return (
    <td {...ROLES.cell} class="result">
      <span aria-hidden="true">{label}</span>
      <span class="value">{format.stopsFine(stops)}</span>
    </td>
  );
}
