import { later, type Seconds } from '../../../science/units.ts';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { Table } from '../../parts/Table.tsx';
import { useHeatWords } from '../../words/planHeat.ts';
import { heatRange, signedHeat } from './heatWords.ts';
import type { LaneAct } from './lanes.ts';
import { intentWords } from './SetCard.tsx';
import { siteTimeFine } from './siteTime.ts';
import type { PlanView } from './usePlanView.ts';

interface Props {
  readonly view: PlanView;
  readonly acts: readonly LaneAct[];
}

/** The timeline without any drawing: a row for each act, in order. */
export function TimelineTable({ view, acts }: Props) {
  const words = useHeatWords();
  const { heat: say, plan, format } = words;
  const { prepared, inLight, heat } = view;
  const clock = (seconds: Seconds) =>
    inLight.how === 'ready'
      ? siteTimeFine(words, inLight.site, later(inLight.light.startMs, seconds))
      : format.duration(seconds);
  const what = ({ act, frame: key }: LaneAct): string => {
    const frame = prepared.frames.find((each) => each.key === key);
    const name = frame
      ? `${intentWords(words, view.set(frame.set))}, ${plan.passAndRepeat(frame.pass, frame.repeat)}`
      : '';
    switch (act) {
      case 'rest':
        return say.restRow;
      case 'swap':
        return say.swapRow;
      case 'own-dark':
        return `${name}, ${say.legend.ownDark}`;
      case 'capped':
      case 'exposure':
        return name;
      default:
        return act satisfies never;
    }
  };
  return (
    <Disclosure label={say.asTable} stated={say.asTableStated(prepared.frames.length)}>
      <Table
        caption={inLight.how === 'ready' ? say.byClock(inLight.site.name) : say.fromStart}
        columns={[
          { key: 'when', head: say.columns.when },
          { key: 'rig', head: say.columns.rig },
          { key: 'what', head: say.columns.what },
          { key: 'heat', head: say.columns.heat, figures: true },
        ]}
        rows={acts.map((act) => {
          const rig = view.rig(act.rig);
          const warm = act.frame !== null && act.act !== 'own-dark' && heat.frames.get(act.frame);
          return {
            key: `${act.act} ${act.rig} ${act.fromS}`,
            cells: {
              when: plan.fromTo(clock(act.fromS), clock(act.toS)),
              rig: rig && <RigSign letter={rig.rig.letter} />,
              what: what(act),
              heat: warm ? `${signedHeat(words, warm.usual)} (${heatRange(words, warm)})` : '',
            },
          };
        })}
      />
    </Disclosure>
  );
}
