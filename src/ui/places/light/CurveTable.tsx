import { forecastAt, nineInTen } from '../../../light/forecast.ts';
import type { Night } from '../../../light/night.ts';
import type { Scene } from '../../../light/scene.ts';
import type { Stretch } from '../../../light/skyTable.ts';
import { later, type UtcMs } from '../../../science/units.ts';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { Table } from '../../parts/Table.tsx';
import { useLightWords } from '../../words/light.ts';
import { bandAt } from './bandAt.ts';
import type { SiteClock } from './clock.ts';

interface Props {
  readonly night: Night;
  readonly scene: Scene;
  readonly view: Stretch;
  readonly clock: SiteClock;
}

/** The curve without any drawing: a row every ten minutes. */
export function CurveTable({ night, scene, view, clock }: Props) {
  const { format, light } = useLightWords();
  return (
    <Disclosure label={light.asTable} stated={light.everyTen}>
      <Table
        stack="never"
        caption={light.tableCaption(clock.zone)}
        columns={[
          { key: 'clock', head: light.columns.clock },
          { key: 'band', head: light.columns.band },
          { key: 'ev', head: light.columns.ev, figures: true },
        ]}
        rows={everyTenMinutes(view).flatMap((each) => {
          const there = forecastAt(scene, each);
          return there
            ? [
                {
                  key: String(each),
                  cells: {
                    clock: clock.time(each),
                    band: light.bands[bandAt(night, each)],
                    ev: light.evCell(
                      format.number(there.ev100, 1),
                      format.number(nineInTen(there.sigma), 1),
                    ),
                  },
                },
              ]
            : [];
        })}
      />
    </Disclosure>
  );
}

const TEN_MINUTES_S = 600;

function everyTenMinutes({ fromMs, toMs }: Stretch): readonly UtcMs[] {
  const rows: UtcMs[] = [];
  const step = TEN_MINUTES_S * 1000;
  for (
    let at = (Math.ceil(fromMs / step) * step) as UtcMs;
    at <= toMs;
    at = later(at, TEN_MINUTES_S)
  ) {
    rows.push(at);
  }
  return rows;
}
