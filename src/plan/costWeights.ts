/** What one of each is worth, in stops of light. */
export interface CostWeights {
  readonly fadePerStop: number;
  readonly heatPerStop: number;
  readonly outsidePerMinute: number;
  readonly perSwap: number;
  readonly wallPerMinute: number;
}

/**
 * Our choice, with these reasons. A stop of dark current changes the noise of deep shadows (9 e of
 * signal, 6 e dark, 3 e read: a quarter of the variance is dark) as a quarter of a stop of light does.
 * A minute outside of the window is about what a dusk fades in it, 0.1 stop. A swap is an occasion for
 * mistakes of framing and focus, as bad as 0.02 stop; a minute in the cold is worth a tenth of that.
 */
export const USUAL_WEIGHTS: CostWeights = {
  fadePerStop: 1,
  heatPerStop: 0.25,
  outsidePerMinute: 0.1,
  perSwap: 0.02,
  wallPerMinute: 0.002,
};
