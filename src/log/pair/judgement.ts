import type { RigId } from '../../gear/ids.ts';
import type { EvenedUp } from '../../outing/cameraFile.ts';
import type { RunState } from '../../outing/state.ts';
import type { Besides } from '../../plan/besides.ts';
import type { SetId } from '../../plan/ids.ts';
import { type Stops, stops } from '../../science/units.ts';
import { besidesMade } from '../besides.ts';
import type { LogFrame } from '../frames.ts';
import { countedFrames, type SetLedger } from '../ledger.ts';
import { countedByKey, type HeatLine, heatLine, heatOfPass } from '../ledgerHeat.ts';
import { type PairFigures, pairFigures, weightedFrames, weightsOfPass } from './figures.ts';
import { type LeftOver, leftOverOf } from './leftOver.ts';
import { type Measures, measuresOf } from './measures.ts';
import type { SetLeftOver } from './proposedOffset.ts';
import { type Limits, type Verdict, verdictsOf } from './uses.ts';

/** A pair in one pass. */
export interface PassJudgement {
  readonly pass: number;
  readonly figures: PairFigures;
  readonly heat: HeatLine | null;
  /** Null until somebody says what was needed. */
  readonly leftOver: LeftOver | null;
}

/** A pair over a set, judged. */
export interface PairJudgement {
  readonly ledger: SetLedger;
  /** Null if no pass is complete; then there is nothing to judge. */
  readonly whole: {
    readonly figures: PairFigures;
    readonly heat: HeatLine | null;
    readonly besides: Besides | null;
    readonly leftOver: LeftOver | null;
    readonly measures: Measures;
    readonly verdicts: readonly Verdict[];
  } | null;
  readonly passes: readonly PassJudgement[];
}

/** What was said to be needed for a pair; the set as a whole, or one pass. */
export const neededFor = (
  state: Pick<RunState, 'evenedUp'>,
  set: SetId,
  other: RigId,
  pass: number | null,
): EvenedUp | null =>
  state.evenedUp.find((each) => each.set === set && each.rig === other && each.pass === pass) ??
  null;

/** Everything that the log knows of a pair, by the limits of its user. */
export function judge(
  state: RunState,
  ledger: SetLedger,
  frames: readonly LogFrame[],
  limits: Limits,
): PairJudgement {
  const { set, other, reference, weights, mean } = ledger;
  const counted = countedByKey(frames);
  const left = (figures: PairFigures, pass: number | null): LeftOver | null => {
    const found = neededFor(state, set, other, pass);
    return found && leftOverOf(found, figures.evenUp);
  };
  const passes = ledger.passes.map(({ pass, differences }): PassJudgement => {
    const own = weightsOfPass(frames, weights, pass, reference);
    const figures = pairFigures(differences, weightedFrames(frames, state.files, own));
    const heat = heatOfPass(state, ledger, counted, pass);
    return { pass, figures, heat, leftOver: left(figures, pass) };
  });
  if (!mean) return { ledger, whole: null, passes };
  const figures = pairFigures(mean, weightedFrames(frames, state.files, weights));
  const heat = heatLine(state, ledger, counted);
  const besides =
    besidesMade(ledger, state.plan, state.gear, countedFrames(frames))?.besides ?? null;
  const measures = measuresOf(figures, heat, besides);
  return {
    ledger,
    passes,
    whole: {
      figures,
      heat,
      besides,
      leftOver: left(figures, null) ?? meanLeftOver(passes),
      measures,
      verdicts: verdictsOf(measures, limits),
    },
  };
}

/** Of passes that were each evened up, where nobody said it of the set as a whole. */
function meanLeftOver(passes: readonly PassJudgement[]): LeftOver | null {
  const found = passes.flatMap(({ leftOver }) => (leftOver ? [leftOver] : []));
  const [first] = found;
  if (!first || found.length < passes.length) return null;
  const mean = (of: (each: LeftOver) => Stops): Stops =>
    stops(found.reduce((sum, each) => sum + of(each), 0) / found.length);
  const root = (of: (each: LeftOver) => Stops): Stops =>
    stops(Math.sqrt(found.reduce((sum, each) => sum + of(each) ** 2, 0)) / found.length);
  return {
    needed: mean(({ needed }) => needed),
    neededSigma: root(({ neededSigma }) => neededSigma),
    stated: found.every(({ stated }) => stated),
    by: found.every(({ by }) => by === 'region') ? 'region' : 'typed',
    stops: mean((each) => each.stops),
    sigma: root(({ sigma }) => sigma),
  };
}

/** The leftovers of one pair of rigs over the sets, as `agreementOf` looks at them. */
export const leftOversOf = (
  pairs: readonly PairJudgement[],
  frames: readonly LogFrame[],
): readonly SetLeftOver[] =>
  pairs.flatMap(({ ledger: { set, reference, other }, whole }) => {
    if (!whole?.leftOver) return [];
    const markOf = (rig: RigId): string | undefined =>
      frames.find((each) => each.counts && each.planned.set === set && each.rig === rig)?.settings
        ?.isoMark;
    const [isoMark, referenceIsoMark] = [markOf(other), markOf(reference)];
    if (isoMark === undefined || referenceIsoMark === undefined) return [];
    const { causes } = whole.figures;
    const line = (name: 'offset' | 'transmission') => causes.find(({ cause }) => cause === name);
    const [offset, glass] = [line('offset'), line('transmission')];
    const shared = (offset?.sigma ?? 0) ** 2 + (glass?.counted ? (glass.sigma ?? 0) ** 2 : 0);
    const own = whole.leftOver.sigma ** 2 - shared;
    return [
      {
        set,
        isoMark,
        referenceIsoMark,
        stops: whole.leftOver.stops,
        // What all sets share cannot tell them apart.
        sigma: stops(Math.sqrt(Math.max(own, 0.02 ** 2))),
        glass: glass?.counted && glass.difference.known ? glass.difference.stops : stops(0),
      },
    ];
  });
