import { computed, type ReadonlySignal } from '@preact/signals';
import type { Scene } from '../light/scene.ts';
import type { Instant } from '../outing/instant.ts';
import {
  type SetInHand,
  type SetInLight,
  sceneOf,
  setInHand,
  setInLight,
  wantedReading,
} from '../outing/light.ts';
import { type Rematch, rematches } from '../outing/rematch.ts';
import type { RunState } from '../outing/state.ts';
import type { UtcMs } from '../science/units.ts';

/** The light of the outing in hand. All of it is null where the sky is not known. */
export interface RunLight {
  /** The sky as the readings bend it. */
  readonly scene: ReadonlySignal<Scene | null>;
  readonly inHand: ReadonlySignal<SetInHand | null>;
  /** How the set in hand stands in it; null while it does not run away. */
  readonly inLight: ReadonlySignal<SetInLight | null>;
  /** What the app would like to be told of it. */
  readonly wanted: ReadonlySignal<'reading' | 'test-frame' | null>;
  /** Settings by which the set in hand comes out right again, as of now. */
  rematches(): readonly Rematch[];
}

/** The light moves slowly; the clock is looked at five times a second. */
const LOOK_EVERY_MS = 5000;

export function createRunLight(
  state: ReadonlySignal<RunState | null>,
  now: ReadonlySignal<Instant>,
): RunLight {
  const scene = computed(() => state.value && sceneOf(state.value));
  const inHand = computed(() => state.value && setInHand(state.value));
  const at = computed(
    () => (Math.floor(now.value.wallMs / LOOK_EVERY_MS) * LOOK_EVERY_MS) as UtcMs,
  );
  return {
    scene,
    inHand,
    inLight: computed(() => {
      const tolerance = state.value?.plan.light.tolerance;
      return scene.value && inHand.value && tolerance !== undefined
        ? setInLight(scene.value, inHand.value, tolerance, at.value)
        : null;
    }),
    wanted: computed(
      () => state.value && scene.value && wantedReading(scene.value, state.value, at.value),
    ),
    rematches() {
      const [run, light, hand] = [state.peek(), scene.peek(), inHand.peek()];
      return run && light && hand ? rematches(run, light, hand, now.peek().wallMs as UtcMs) : [];
    },
  };
}
