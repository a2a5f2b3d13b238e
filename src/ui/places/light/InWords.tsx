import type { ComponentChildren } from 'preact';
import { fadeAt, fastestFade } from '../../../light/fade.ts';
import type { BandName, Night } from '../../../light/night.ts';
import type { Scene } from '../../../light/scene.ts';
import { SUN_EVENT_NAMES, SUN_LIMITS, type SunEventName } from '../../../science/skyEvents.ts';
import type { UtcMs } from '../../../science/units.ts';
import { Figure } from '../../parts/Figure.tsx';
import { Figures } from '../../parts/Figures.tsx';
import { Section } from '../../parts/Section.tsx';
import { Table } from '../../parts/Table.tsx';
import { useLightWords } from '../../words/light.ts';
import type { SiteClock } from './clock.ts';
import { inOneMinute } from './rate.ts';

interface Props {
  readonly night: Night;
  readonly scene: Scene;
  readonly clock: SiteClock;
  readonly now: UtcMs;
}

/** Sun, fade and moon of an evening, without any drawing. */
export function InWords(props: Props) {
  return (
    <>
      <Fades {...props} />
      <Sun {...props} />
      <Moon {...props} />
    </>
  );
}

function Fades({ night, scene, clock, now }: Props) {
  const { format, light } = useLightWords();
  const rate = fadeAt(scene, now);
  const evening = { fromMs: night.noonMs, toMs: night.lowestSun.at };
  const fastest = fastestFade(scene, evening);
  return (
    <Section title={light.fades}>
      <Figures>
        <Figure
          label={light.fadeNow}
          value={rate === null ? light.notNow : format.stopsFine(inOneMinute(rate))}
          note={rate === null ? '' : light.perMinute}
        />
        <Figure
          label={light.fadeFastest}
          value={fastest ? format.stopsFine(inOneMinute(fastest.rate)) : light.noFall}
          note={fastest ? `${light.perMinute}, ${light.fadeAt(clock.dated(fastest.at))}` : ''}
        />
      </Figures>
    </Section>
  );
}

/** The darkest band that the lowest sun leaves lasting all night; null where it gets fully dark. */
function lastingBand(lowest: number): Exclude<BandName, 'day' | 'night'> | null {
  if (lowest < SUN_LIMITS.astronomical) return null;
  if (lowest >= SUN_LIMITS.civil) return 'civil';
  return lowest >= SUN_LIMITS.nautical ? 'nautical' : 'astronomical';
}

function Sun({ night, clock }: Props) {
  const { format, light } = useLightWords();
  const { events, behindRidgeMs, dayState, lowestSun } = night;
  const isSunEvent = (event: string): event is SunEventName =>
    (SUN_EVENT_NAMES as readonly string[]).includes(event);
  const passages = [
    ...events.flatMap(({ event, at }) =>
      isSunEvent(event) ? [{ at, what: light.events[event] }] : [],
    ),
    ...(behindRidgeMs === null ? [] : [{ at: behindRidgeMs, what: light.behindRidge }]),
  ].toSorted((a, b) => a.at - b.at);
  const lasting = dayState === 'always-up' ? null : lastingBand(lowestSun.altitude);
  return (
    <Section title={light.sun}>
      {dayState === 'always-up' && <p>{light.alwaysUp}</p>}
      {dayState === 'always-down' && <p>{light.alwaysDown}</p>}
      {passages.length > 0 && (
        <Table
          stack="never"
          caption={light.sunTimes}
          columns={[
            { key: 'what', head: light.what },
            { key: 'when', head: light.when, figures: true },
          ]}
          rows={passages.map(({ at, what }) => ({
            key: `${what} ${at}`,
            cells: { what, when: clock.dated(at) },
          }))}
        />
      )}
      <p>
        {light.lowestSun(format.number(lowestSun.altitude, 1), clock.dated(lowestSun.at))}
        {lasting && ` ${light.neverBelow[lasting]}`}
      </p>
      <p class="hint">{light.times(clock.zone)}</p>
    </Section>
  );
}

function Moon({ night, clock }: Props): ComponentChildren {
  const { format, light } = useLightWords();
  const { litShare, waxing, up } = night.moon;
  const spans = up.map(({ fromMs, toMs }) =>
    light.moonSpan(
      fromMs <= night.noonMs ? null : clock.dated(fromMs),
      toMs >= night.nextNoonMs ? null : clock.dated(toMs),
    ),
  );
  return (
    <Section title={light.moon}>
      <p>
        {light.moonLit(format.number(100 * litShare, 0), waxing)}{' '}
        {spans.length === 0 ? light.moonDown : light.moonUp(spans)}
      </p>
    </Section>
  );
}
