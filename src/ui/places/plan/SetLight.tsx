import { useState } from 'preact/hooks';
import { rightSettingsAt, type TurnedDial } from '../../../light/rightSettings.ts';
import type { PlanSet } from '../../../plan/plan.ts';
import { dialledIn } from '../../../plan/prepare.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { later, type UtcMs } from '../../../science/units.ts';
import { MarkStepper } from '../../parts/MarkStepper.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Section } from '../../parts/Section.tsx';
import { type PlanWords, usePlanWords } from '../../words/plan.ts';
import { timeWords } from './sentences.ts';
import { siteTime } from './siteTime.ts';
import type { PlanView } from './usePlanView.ts';

interface Props {
  readonly view: PlanView;
  readonly set: PlanSet;
}

/** The mark of the dial that is turned. */
function turnedMark(words: PlanWords, { dial, settings }: TurnedDial): string {
  switch (dial) {
    case 'time':
      return timeWords(words, settings.time);
    case 'iso':
      return words.format.isoMark(settings.isoMark);
    case 'f-number':
      return words.format.fMark(settings.fMark);
  }
}

/** The minutes of a set, and what mends it where it falls outside of them. */
export function SetLight({ view, set }: Props) {
  const words = usePlanWords();
  const { inLight: say } = words.plan;
  const { inLight } = view;
  if (inLight.how !== 'ready') return null;
  const { site, light } = inLight;
  const found = light.sets.find((each) => each.set === set.id);
  if (!found) return null;
  const { right, planned, beyond, mend } = found;
  const clock = (at: UtcMs) => siteTime(words, site, at);
  const minutes =
    right.length === 0
      ? say.never
      : right.map(({ fromMs, toMs }) => say.minutes(clock(fromMs), clock(toMs))).join(' ');
  const ways = mend && [
    ...(mend.startMs === null
      ? []
      : [say.mendStart(clock(mend.startMs), mend.startMs < light.startMs)]),
    ...mend.turned.map((turned) => say.mendDial(turnedMark(words, turned))),
  ];
  return (
    <>
      <p class="hint">
        {minutes} {say.planned(clock(planned.fromMs), clock(planned.toMs))}
      </p>
      {ways && (
        <Notice>
          {say.off(words.format.number(Math.abs(beyond), 1), beyond > 0)} {say.mendBy(ways)}
        </Notice>
      )}
    </>
  );
}

/** How far the minute can be turned either way from the plan's own. */
const TURN_MIN = 90;

/** What would be right at any minute, one dial of the reference turned at a time. */
export function RightAt({ view, set }: Props) {
  const words = usePlanWords();
  const { format } = words;
  const { inLight: say } = words.plan;
  const { inLight } = view;
  const [turn, setTurn] = useState(TURN_MIN);
  const reference = view.rig(set.reference);
  const table = view.prepared.table.find((candidate) => candidate.set === set.id);
  const standing = dialledIn(table, set.reference);
  const found =
    inLight.how === 'ready' ? inLight.light.sets.find((each) => each.set === set.id) : undefined;
  if (inLight.how !== 'ready' || !found || !reference || !standing) return null;
  const middle = Math.round(found.planned.fromMs / 60_000) * 60_000;
  const at = later(middle as UtcMs, 60 * (turn - TURN_MIN));
  const turned = rightSettingsAt(inLight.evening.scene, reference, standing, set.targetOffset, at);
  const minutes = Array.from({ length: 2 * TURN_MIN + 1 }, (_, index) =>
    siteTime(words, inLight.site, later(middle as UtcMs, 60 * (index - TURN_MIN))),
  );
  return (
    <Section title={say.rightAt}>
      <MarkStepper
        label={say.minute}
        marks={minutes}
        at={turn}
        write={(clock) => clock}
        onTurn={setTurn}
      />
      {!isRefusal(turned) && (
        <ul>
          {turned.map((each) => (
            <li key={each.dial}>
              {say.rightBy(each.dial, turnedMark(words, each), format.stops(each.miss))}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
