import { useEffect, useRef, useState } from 'preact/hooks';
import type { LightDesk, NightState } from '../../../app/light.ts';
import type { Night } from '../../../light/night.ts';
import type { Scene } from '../../../light/scene.ts';
import type { Site } from '../../../light/site.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Pick } from '../../parts/Pick.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useLightWords } from '../../words/light.ts';
import { siteClock } from './clock.ts';
import { EveningChoice } from './EveningChoice.tsx';
import { InWords } from './InWords.tsx';
import { LightCurve } from './LightCurve.tsx';
import { useLight, useWatch } from './useLight.ts';
import { type ViewName, viewsOf } from './views.ts';
import { Width } from './Width.tsx';

/** The light of one evening at a site: its curve, and the same in words. */
export function NightScreen({ site }: { readonly site: Site }) {
  const { navigation, sites } = useApp();
  const desk = useLight();
  const { light } = useLightWords();
  useWatch(desk);
  useEffect(() => sites.use(site.id), [sites, site.id]);
  const state = desk.night.value;
  return (
    <Screen inner title={site.name} tag={site.invented && <InventedTag />}>
      {/* Until this site is the one in use, the night is another's. */}
      {desk.site.value?.id === site.id && <Evening site={site} desk={desk} state={state} />}
      <Section title={light.siteActs}>
        {site.note !== '' && <p class="light-note">{site.note}</p>}
        <div class="acts">
          <Button onPress={() => navigation.go('light', site.id, 'site')}>{light.about}</Button>
        </div>
      </Section>
    </Screen>
  );
}

interface EveningProps {
  readonly site: Site;
  readonly desk: LightDesk;
  readonly state: NightState;
}

function Evening({ site, desk, state }: EveningProps) {
  const words = useLightWords();
  const { light } = words;
  const [wanted, setWanted] = useState<ViewName>('dusk');
  // The evening before stays on the screen until the next one is worked out.
  const shown = useRef<{ readonly night: Night; readonly scene: Scene } | null>(null);
  const ready = desk.scene.value;
  if (state.kind === 'ready' && ready) shown.current = { night: state.night, scene: ready };
  if (state.kind === 'failed')
    return (
      <Notice urgent acts={<Button onPress={desk.tryAgain}>{light.tryAgain}</Button>}>
        {light.failed}
      </Notice>
    );
  if (shown.current === null) return <p role="status">{light.computing}</p>;
  const { night, scene } = shown.current;
  const views = viewsOf(night);
  const name = views.has(wanted) ? wanted : 'night';
  const view = views.get(name) ?? { fromMs: night.noonMs, toMs: night.nextNoonMs };
  const clock = siteClock(site, night, words);
  const from = desk.movedFrom.value;
  const sunInView = night.bands.some(
    ({ band, fromMs, toMs }) => band === 'day' && fromMs < view.toMs && toMs > view.fromMs,
  );
  return (
    <>
      <div class="light-evening">
        <EveningChoice site={site} desk={desk} night={night} />
        <LightCurve
          // A new stretch begins with its own instant.
          key={`${night.noonMs} ${name}`}
          night={night}
          scene={scene}
          view={view}
          now={desk.now.value}
          planned={desk.planned.value}
          site={site}
          clock={clock}
        />
        {from !== null && <p class="hint">{light.movedFrom(words.format.calendarDate(from))}</p>}
        {views.size > 1 && (
          <Choice
            label={light.shown}
            value={name}
            options={[...views.keys()].map((value) => ({ value, label: light.views[value] }))}
            onChange={setWanted}
          />
        )}
        <Width scene={scene} now={desk.now.value} />
        <Pick
          label={light.cloud}
          value={desk.cloud.value ?? 'unknown'}
          options={light.clouds}
          onPick={(said) => {
            desk.setCloud(said === 'unknown' ? null : said);
            return null;
          }}
        />
        {sunInView && <Notice>{light.caution}</Notice>}
      </div>
      <InWords night={night} scene={scene} clock={clock} now={desk.now.value} />
    </>
  );
}
