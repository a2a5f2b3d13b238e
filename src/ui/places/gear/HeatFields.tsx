import { useState } from 'preact/hooks';
import type { Body, MeasuredHeat } from '../../../gear/body.ts';
import { NOTHING_MEASURED, thermalRangeOf } from '../../../gear/bodyHeat.ts';
import type { ThermalRange } from '../../../science/thermalRange.ts';
import { UNMEASURED_FROM } from '../../../science/thermalSources.ts';
import { Button } from '../../parts/Button.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { Row } from '../../parts/Row.tsx';
import { useGearWords } from '../../words/gear.ts';
import { FirstHeatSheet } from './FirstHeatSheet.tsx';
import { HeatSheet } from './HeatSheet.tsx';
import { same } from './same.ts';

const FIGURES = Object.keys(NOTHING_MEASURED) as (keyof ThermalRange)[];

/**
 * How a body warms: what is worked with and where it comes from, each figure to be typed in.
 * `onChange` returns one sentence to refuse it.
 */
export function HeatFields({
  body,
  onChange,
}: {
  readonly body: Body;
  readonly onChange: (heat: MeasuredHeat) => string | null;
}) {
  const { format, gear } = useGearWords();
  const { heat: say } = gear;
  const [open, setOpen] = useState<keyof ThermalRange | 'fit' | null>(null);
  const { heat } = body;
  const inUse = thermalRangeOf(body);
  const known = FIGURES.filter((figure) => heat[figure] !== null).length;
  const close = () => setOpen(null);
  return (
    <Disclosure
      label={say.title}
      stated={known === 0 ? say.nothingMeasured : say.someMeasured(known, FIGURES.length)}
      isDefault={same(heat, NOTHING_MEASURED)}
    >
      <p>{say.lead}</p>
      <ul>
        {FIGURES.map((figure) => {
          const { usual, least, most } = inUse[figure];
          const own = heat[figure];
          return (
            <li key={figure}>
              <Row
                title={say.figures[figure]}
                note={
                  <>
                    {say.inUse(
                      format.plain(usual),
                      format.plain(least),
                      format.plain(most),
                      say.units[figure],
                    )}
                    <br />
                    {own === null ? say.statedFrom(UNMEASURED_FROM[figure]) : say.ownFrom(own.from)}
                  </>
                }
                onPress={() => setOpen(figure)}
              />
            </li>
          );
        })}
      </ul>
      <Button onPress={() => setOpen('fit')}>{say.fit}</Button>
      {open === 'fit' && <FirstHeatSheet body={body} onChange={onChange} onClose={close} />}
      {open !== null && open !== 'fit' && (
        <HeatSheet body={body} figure={open} onChange={onChange} onClose={close} />
      )}
    </Disclosure>
  );
}
