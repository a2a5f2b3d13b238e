import type { RigId } from '../gear/ids.ts';
import type { Letter } from '../gear/letter.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import type { Exact, Settings } from '../gear/settings.ts';
import { framesOf, type LogFrame } from '../log/frames.ts';
import { countedFrames, ledgersOf } from '../log/ledger.ts';
import {
  countedByKey,
  type FrameHeat,
  frameHeat,
  type HeatLine,
  heatOfPass,
} from '../log/ledgerHeat.ts';
import type { CameraFile } from '../outing/cameraFile.ts';
import type { Instant } from '../outing/instant.ts';
import { sceneOf } from '../outing/light.ts';
import { HAND_TIMING_S, type OpenTime } from '../outing/openTime.ts';
import type { RunState } from '../outing/state.ts';
import type { Cause, Estimate, KnownOrUnknown } from '../plan/causes.ts';
import { type Differences, evenUp, type Figure } from '../plan/differences.ts';
import type { SetId } from '../plan/ids.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import type { Ranged } from '../science/thermalRange.ts';
import type { Seconds } from '../science/units.ts';
import { type Cell, type Table, writeCsv } from './csv.ts';

/*
 * The log for other programs: one row a frame. What Exif has a name for stands
 * under that name, as the camera's own file has it: FNumber and
 * PhotographicSensitivity are the figures of the marks, ExposureTime is how long
 * the shutter was open. The values behind the marks, which our differences are
 * computed from, stand apart. Names: CIPA DC-008 (Exif), by the tag table in the
 * reference.
 */

/** A frame with what is worked out about it. */
interface Row {
  readonly run: RunState;
  readonly frame: LogFrame;
  readonly parts: Assembled | null;
  /** Against its reference in its pass; null for a reference, or a frame that has no pair. */
  readonly differences: Differences | null;
  readonly heat: FrameHeat;
  /** The heat line of its pair in its pass; null as above. */
  readonly pairHeat: HeatLine | null;
  /** What it takes in the mean of each pair that it is in, by the letter of the pair's other rig. */
  readonly weights: readonly (readonly [Letter, number])[];
}

/** One frame as JSON: the columns of the table under their names. */
export type FrameRecord = Readonly<Record<string, Cell>>;

const iso8601 = (at: Instant | null): Cell =>
  at === null ? null : new Date(Math.round(at.wallMs)).toISOString();

/** As Exif writes it in OffsetTimeOriginal: +01:00. */
function exifOffset({ offsetMin }: Instant): string {
  const minutes = Math.abs(offsetMin);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${offsetMin < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

const openSeconds = (open: OpenTime): Cell => (open.from === 'unknown' ? null : open.s);

const openTimeFrom = (open: OpenTime): Cell =>
  open.from === 'hand' ? `hand-${open.certainty}` : open.from;

/** Stated only where it is known: by steady clock between two taps. */
const openTimeUncertainty = (open: OpenTime): Seconds | null =>
  open.from === 'hand' && open.certainty === 'steady' ? HAND_TIMING_S : null;

const figureOfMark = (mark: string | undefined): Cell => (mark === undefined ? null : Number(mark));

const timeMark = (settings: Settings | null): Cell =>
  settings === null ? null : settings.time.kind === 'dial' ? settings.time.mark : 'bulb';

const known = (value: KnownOrUnknown | undefined): Cell => (value?.known ? value.stops : null);

const differenceBy = ({ differences }: Row, name: Cause): KnownOrUnknown | undefined =>
  differences?.lines.find((line) => line.cause === name)?.difference;

const cause =
  (name: Cause) =>
  (row: Row): Cell =>
    known(differenceBy(row, name));

/** How sure the fade is, and what it was worked out from. */
function fadeEstimate(row: Row): Estimate | null {
  const fade = differenceBy(row, 'fade');
  return (fade?.known && fade.estimate) || null;
}

const figure =
  (of: (differences: Differences) => Figure) =>
  ({ differences }: Row): Cell =>
    differences === null ? null : of(differences).stops;

/** Heat has columns of its own: stops of dark current enter no sum of exposure. */
const heat =
  (which: keyof Ranged<Doublings>) =>
  (row: Row): Cell =>
    row.heat.known ? row.heat.heat[which] : null;

const pairHeat =
  (which: keyof Ranged<Doublings>) =>
  (row: Row): Cell =>
    row.pairHeat?.known ? row.pairHeat.byHistory[which] : null;

const whyUnknown = (value: FrameHeat | HeatLine | null): Cell =>
  value === null || value.known ? null : value.why;

/** 'B:0.5': four decimals are finer than any figure that is weighed. */
const weightsText = ({ weights }: Row): Cell =>
  weights.length === 0
    ? null
    : weights.map(([letter, weight]) => `${letter}:${Number(weight.toFixed(4))}`).join(' ');

const setNumber = ({ run, frame }: Row): Cell => {
  const at = run.plan.sets.findIndex((set) => set.id === frame.planned.set);
  return at < 0 ? null : at + 1;
};

const referenceLetter = (run: RunState, frame: LogFrame): Cell =>
  run.gear.rigs.find((rig) => rig.id === frame.set?.reference)?.letter ?? null;

const planned =
  (of: (exact: Exact, settings: Settings) => Cell) =>
  ({ frame }: Row): Cell =>
    of(frame.planned.exact, frame.planned.settings);

/** The picture's file that belongs to a frame, as it says of itself. */
const fileOf = ({ run, frame }: Row): CameraFile | null => run.files.get(frame.id) ?? null;

/** The columns in their order. A name that was once written never means something else later. */
const COLUMNS: Readonly<Record<string, (row: Row) => Cell>> = {
  FileName: ({ frame }) => frame.fileName,
  FileNumber: ({ frame }) => frame.fileNumber,
  Plan: ({ run }) => run.plan.name,
  Invented: ({ run }) => run.plan.invented,
  SetNumber: setNumber,
  Set: ({ frame }) => frame.set?.intent ?? null,
  SetKind: ({ frame }) => frame.set?.kind ?? null,
  Rig: ({ frame }) => frame.letter,
  Body: ({ parts }) => parts?.body.name ?? null,
  Lens: ({ parts }) => parts?.lens.name ?? null,
  Pass: ({ frame }) => frame.planned.pass,
  Repeat: ({ frame }) => frame.planned.repeat,
  Attempt: ({ frame }) => frame.attempt,
  Counts: ({ frame }) => frame.counts,
  Discarded: ({ frame }) => frame.discarded,
  OpenedUtc: ({ frame }) => iso8601(frame.opened),
  ClosedUtc: ({ frame }) => iso8601(frame.closed),
  OffsetTimeOriginal: ({ frame }) => exifOffset(frame.opened),
  TimeZone: ({ frame }) => frame.opened.zone,
  ExposureTime: ({ frame }) => openSeconds(frame.openTime),
  ExposureTimeFrom: ({ frame }) => openTimeFrom(frame.openTime),
  ExposureTimeUncertainty: ({ frame }) => openTimeUncertainty(frame.openTime),
  FNumber: ({ frame }) => figureOfMark(frame.settings?.fMark),
  PhotographicSensitivity: ({ frame }) => figureOfMark(frame.settings?.isoMark),
  FocalLength: ({ parts }) => parts?.lens.focalMm ?? null,
  TimeMark: ({ frame }) => timeMark(frame.settings),
  FNumberExact: ({ frame }) => frame.exact?.n ?? null,
  SensitivityExact: ({ frame }) => frame.exact?.s ?? null,
  PlannedExposureTime: planned(({ t }) => t),
  PlannedFNumber: planned((_exact, { fMark }) => figureOfMark(fMark)),
  PlannedPhotographicSensitivity: planned((_exact, { isoMark }) => figureOfMark(isoMark)),
  PlannedTimeMark: planned((_exact, settings) => timeMark(settings)),
  AsPlanned: ({ frame }) => frame.asPlanned,
  Corrected: ({ frame }) => frame.corrections.length > 0,
  FirstLoggedFNumber: ({ frame }) => figureOfMark(frame.firstSettings?.fMark),
  FirstLoggedPhotographicSensitivity: ({ frame }) => figureOfMark(frame.firstSettings?.isoMark),
  FirstLoggedTimeMark: ({ frame }) => timeMark(frame.firstSettings),
  LeadInSeconds: ({ frame }) => frame.leadInS,
  RestedSeconds: ({ frame }) => frame.restedS,
  LateSeconds: ({ frame }) => frame.lateS,
  Verdict: ({ frame }) => frame.verdict,
  Notes: ({ frame }) => frame.notes.join('\n'),
  Reference: ({ run, frame }) => referenceLetter(run, frame),
  TimeStops: cause('time'),
  ApertureStops: cause('aperture'),
  IsoStops: cause('iso'),
  OffsetStops: cause('offset'),
  TransmissionStops: cause('transmission'),
  FadeStops: cause('fade'),
  FadeUncertaintyStops: (row) => fadeEstimate(row)?.sigma ?? null,
  FadeFrom: (row) => fadeEstimate(row)?.from ?? null,
  SumStops: figure((differences) => differences.sum),
  UnknownCauses: ({ differences }) => differences?.sum.missing.join(' ') ?? null,
  EvenUpStops: figure(evenUp),
  LightPerAreaStops: figure((differences) => differences.light.perArea),
  LightWholeSensorStops: figure((differences) => differences.light.wholeSensor),
  LightCommonCropStops: figure((differences) => differences.light.commonCrop),
  WeightsInMeans: weightsText,
  SensorHeatStops: heat('usual'),
  SensorHeatLeastStops: heat('least'),
  SensorHeatMostStops: heat('most'),
  SensorHeatUnknown: (row) => whyUnknown(row.heat),
  PairHeatStops: pairHeat('usual'),
  PairHeatLeastStops: pairHeat('least'),
  PairHeatMostStops: pairHeat('most'),
  PairHeatUnknown: (row) => whyUnknown(row.pairHeat),
  MatchedFileName: (row) => fileOf(row)?.name ?? null,
  MatchedExposureTime: (row) => fileOf(row)?.exposureS ?? null,
  MatchedFNumber: (row) => fileOf(row)?.fNumber ?? null,
  MatchedPhotographicSensitivity: (row) => fileOf(row)?.iso ?? null,
  MatchedTemperature: (row) => fileOf(row)?.temperature ?? null,
};

function rowsOf(run: RunState): readonly Row[] {
  const frames = framesOf(run);
  const ledgers = ledgersOf(run.plan, run.gear, countedFrames(frames), sceneOf(run));
  const counted = countedByKey(frames);
  const inPass = new Map<string, Pick<Row, 'differences' | 'pairHeat'>>();
  for (const ledger of ledgers) {
    for (const { pass, differences } of ledger.passes) {
      inPass.set(placeOf(ledger.set, ledger.other, pass), {
        differences,
        pairHeat: heatOfPass(run, ledger, counted, pass),
      });
    }
  }
  return frames.map((frame) => {
    const { set, rig, pass, key } = frame.planned;
    const pair = frame.counts ? inPass.get(placeOf(set, rig, pass)) : undefined;
    return {
      run,
      frame,
      parts: assemble(run.gear, frame.rig),
      differences: pair?.differences ?? null,
      heat: frameHeat(run, frame),
      pairHeat: pair?.pairHeat ?? null,
      weights: ledgers.flatMap((ledger) => {
        const weight = frame.counts && ledger.set === set ? ledger.weights.get(key) : undefined;
        const letter = assemble(run.gear, ledger.other)?.rig.letter;
        return weight === undefined || !letter ? [] : [[letter, weight] as const];
      }),
    };
  });
}

const placeOf = (set: SetId, rig: RigId, pass: number): string => `${pass} ${rig} ${set}`;

/** The frames of a run with every column, retakes and frames that do not count included. */
export const frameRecords = (run: RunState): readonly FrameRecord[] =>
  rowsOf(run).map((row) =>
    Object.fromEntries(Object.entries(COLUMNS).map(([name, cell]) => [name, cell(row)])),
  );

/** The frames of a run as comma-separated values. */
export function framesCsv(run: RunState): string {
  const table: Table<Cell> = {
    header: Object.keys(COLUMNS),
    rows: rowsOf(run).map((row) => Object.values(COLUMNS).map((cell) => cell(row))),
  };
  return writeCsv(table);
}
