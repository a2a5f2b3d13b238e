import type { RigId } from '../gear/ids.ts';
import { assemble } from '../gear/rig.ts';
import { framesOf } from '../log/frames.ts';
import { countedFrames, ledgersOf } from '../log/ledger.ts';
import type { HeatLine } from '../log/ledgerHeat.ts';
import type { PairFigures } from '../log/pair/figures.ts';
import { judge, type PairJudgement } from '../log/pair/judgement.ts';
import type { LeftOver } from '../log/pair/leftOver.ts';
import { USUAL_LIMITS } from '../log/pair/uses.ts';
import { sceneOf } from '../outing/light.ts';
import type { RunState } from '../outing/state.ts';
import type { Besides } from '../plan/besides.ts';
import { CAUSES, type Cause } from '../plan/causes.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import type { Ranged } from '../science/thermalRange.ts';
import { type Cell, writeCsv } from './csv.ts';

/*
 * The ledger for other programs: one row a pair over its set, and one for each of its passes. What a
 * pair may be used for is not in it: that hangs on limits of a device.
 */

/** One pair as JSON: the columns of the table under their names. */
export type PairRecord = Readonly<Record<string, Cell>>;

interface Row {
  readonly run: RunState;
  readonly judgement: PairJudgement;
  readonly pass: number | null;
  readonly figures: PairFigures;
  readonly heat: HeatLine | null;
  readonly leftOver: LeftOver | null;
  readonly besides: Besides | null;
}

const letterOf = ({ gear }: RunState, rig: RigId): Cell => assemble(gear, rig)?.rig.letter ?? null;

const heat =
  (which: keyof Ranged<Doublings>) =>
  ({ heat: line }: Row): Cell =>
    line?.known ? line.byHistory[which] : null;

const NAMES: Readonly<Record<Cause, string>> = {
  time: 'Time',
  aperture: 'Aperture',
  iso: 'Iso',
  offset: 'Offset',
  transmission: 'Transmission',
  fade: 'Fade',
};

const lineOf = ({ figures }: Row, name: Cause) =>
  figures.causes.find(({ cause }) => cause === name);

const causeColumns = Object.fromEntries(
  CAUSES.flatMap((cause): [string, (row: Row) => Cell][] => [
    [
      `${NAMES[cause]}Stops`,
      (row) => {
        const difference = lineOf(row, cause)?.difference;
        return difference?.known ? difference.stops : null;
      },
    ],
    [`${NAMES[cause]}Uncertainty`, (row) => lineOf(row, cause)?.sigma ?? null],
    [`${NAMES[cause]}KnownBy`, (row) => lineOf(row, cause)?.by ?? null],
  ]),
);

/** The columns in their order. A name that was once written never means something else later. */
const COLUMNS: Readonly<Record<string, (row: Row) => Cell>> = {
  Plan: ({ run }) => run.plan.name,
  SetNumber: ({ run, judgement }) => {
    const at = run.plan.sets.findIndex(({ id }) => id === judgement.ledger.set);
    return at < 0 ? null : at + 1;
  },
  Set: ({ run, judgement }) =>
    run.plan.sets.find(({ id }) => id === judgement.ledger.set)?.intent ?? null,
  Reference: ({ run, judgement }) => letterOf(run, judgement.ledger.reference),
  Rig: ({ run, judgement }) => letterOf(run, judgement.ledger.other),
  Pass: ({ pass }) => pass,
  Passes: ({ judgement }) => judgement.ledger.passes.length,
  Averaging: ({ judgement }) => judgement.ledger.averaging.kind,
  ...causeColumns,
  SumStops: ({ figures }) => figures.sum.stops,
  SumUncertainty: ({ figures }) => figures.sum.sigma,
  UnknownCauses: ({ figures }) => figures.sum.missing.join(' '),
  EvenUpStops: ({ figures }) => figures.evenUp.stops,
  NeededStops: ({ leftOver }) => leftOver?.needed ?? null,
  NeededUncertainty: ({ leftOver }) => leftOver?.neededSigma ?? null,
  NeededBy: ({ leftOver }) => leftOver?.by ?? null,
  LeftOverStops: ({ leftOver }) => leftOver?.stops ?? null,
  LeftOverUncertainty: ({ leftOver }) => leftOver?.sigma ?? null,
  LightPerAreaStops: ({ figures }) => figures.perArea.stops,
  LightWholeSensorStops: ({ figures }) => figures.wholeSensor.stops,
  LightCommonCropStops: ({ figures }) => figures.commonCrop.stops,
  HeatStops: heat('usual'),
  HeatLeastStops: heat('least'),
  HeatMostStops: heat('most'),
  DepthOfFieldRatio: ({ besides }) => besides?.depthOfFieldRatio ?? null,
  FramingRatio: ({ besides }) => besides?.framingRatio ?? null,
  TimeRatio: ({ besides }) => besides?.timeRatio ?? null,
  ParallaxPixels: ({ besides }) => besides?.parallax?.px ?? null,
};

function rowsOf(run: RunState): readonly Row[] {
  const frames = framesOf(run);
  return ledgersOf(run.plan, run.gear, countedFrames(frames), sceneOf(run)).flatMap((ledger) => {
    const judgement = judge(run, ledger, frames, USUAL_LIMITS);
    const { whole, passes } = judgement;
    if (!whole) return [];
    return [
      { run, judgement, pass: null, ...whole },
      ...passes.map((each) => ({ run, judgement, besides: null, ...each })),
    ];
  });
}

/** The pairs of a run with every column. */
export const pairRecords = (run: RunState): readonly PairRecord[] =>
  rowsOf(run).map((row) =>
    Object.fromEntries(Object.entries(COLUMNS).map(([name, cell]) => [name, cell(row)])),
  );

/** The pairs of a run as comma-separated values. */
export const pairsCsv = (run: RunState): string =>
  writeCsv({
    header: Object.keys(COLUMNS),
    rows: rowsOf(run).map((row) => Object.values(COLUMNS).map((cell) => cell(row))),
  });
