import { readDate } from '../../../gear/parse.ts';
import { isFault } from '../../../gear/read.ts';
import type { SiteId } from '../../../light/site.ts';
import type { LightLimits, PlanEvening } from '../../../plan/plan.ts';
import { SKY_CONDITIONS } from '../../../science/cloud.ts';
import type { Stops } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Pick } from '../../parts/Pick.tsx';
import { Section } from '../../parts/Section.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { usePlanWords } from '../../words/plan.ts';
import { LightSays } from './LightSays.tsx';
import { readSiteTime, siteTime } from './siteTime.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import type { PlanView } from './usePlanView.ts';

/** Where and when the list is shot, and what the light says to that. */
export function LightSection({ view }: { readonly view: PlanView }) {
  const { plan } = usePlanWords();
  return (
    <Section title={plan.inLight.title}>
      <LightSays view={view} />
      <div>
        <EveningFields view={view} />
        <LimitFields view={view} />
      </div>
    </Section>
  );
}

function EveningFields({ view: { plan, inLight } }: { readonly view: PlanView }) {
  const { sites, today } = useApp();
  const plans = usePlanDesk();
  const words = usePlanWords();
  const { format, fault } = words;
  const { inLight: say } = words.plan;
  const { evening } = plan;
  const site = inLight.how === 'none' || inLight.how === 'site-gone' ? null : inLight.site;
  const put = (changed: PlanEvening | null): string | null => {
    const wrong = plans.change(plan.id, (before) => ({ ...before, evening: changed }));
    return wrong && fault(wrong);
  };
  const all = sites.sites.value;
  const pickSite = (id: SiteId | null): string | null => {
    if (id === null) return put(null);
    // A start was meant for the clock of the site before.
    return put({
      date: evening?.date ?? today(),
      cloud: evening?.cloud ?? null,
      startMs: null,
      site: id,
    });
  };
  return (
    <Disclosure
      label={say.where}
      stated={
        evening
          ? say.whereStated(
              site?.name ?? say.noSite,
              format.calendarDate(evening.date),
              evening.cloud ? say.skies[evening.cloud] : say.skyUnknown,
            )
          : say.noEvening
      }
    >
      <Pick<SiteId | null>
        label={say.site}
        hint={say.siteHint}
        options={[
          { value: null, label: say.noSite },
          ...all.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        value={evening?.site ?? null}
        onPick={pickSite}
      />
      {evening && (
        <>
          <TextField
            label={say.date}
            hint={say.dateHint}
            value={evening.date}
            onCommit={(text) => {
              const date = readDate(text.trim());
              return isFault(date) ? fault(date) : put({ ...evening, date, startMs: null });
            }}
          />
          {site && (
            <TextField
              label={say.start}
              hint={say.startHint}
              value={evening.startMs === null ? '' : siteTime(words, site, evening.startMs)}
              onCommit={(text) => {
                if (text.trim() === '') return put({ ...evening, startMs: null });
                const startMs = readSiteTime(text, site, evening.date);
                return startMs === null ? say.startBad : put({ ...evening, startMs });
              }}
            />
          )}
          <Pick
            label={say.sky}
            options={[
              { value: null, label: say.skyUnknown },
              ...SKY_CONDITIONS.map((value) => ({ value, label: say.skies[value] })),
            ]}
            value={evening.cloud}
            onPick={(cloud) => put({ ...evening, cloud })}
          />
          {evening.startMs !== null && (
            <Button onPress={() => void put({ ...evening, startMs: null })}>
              {say.takeBetter}
            </Button>
          )}
        </>
      )}
      {inLight.how === 'site-gone' && <Notice>{say.siteGone}</Notice>}
    </Disclosure>
  );
}

function LimitFields({ view: { plan } }: { readonly view: PlanView }) {
  const plans = usePlanDesk();
  const words = usePlanWords();
  const { format, fault } = words;
  const { inLight: say, stop } = words.plan;
  const { tolerance, mostFade } = plan.light;
  const change = (part: Partial<LightLimits>): string | null => {
    const wrong = plans.change(plan.id, (before) => ({
      ...before,
      light: { ...before.light, ...part },
    }));
    return wrong && fault(wrong);
  };
  return (
    <Disclosure
      label={say.limits}
      stated={say.limitsStated(format.plain(tolerance, 2), format.plain(mostFade, 2))}
    >
      <NumberField
        label={say.tolerance}
        hint={say.toleranceHint}
        unit={stop}
        value={tolerance}
        onCommit={(value) => change({ tolerance: value as Stops })}
      />
      <NumberField
        label={say.mostFade}
        hint={say.mostFadeHint}
        unit={stop}
        value={mostFade}
        onCommit={(value) => change({ mostFade: value as Stops })}
      />
    </Disclosure>
  );
}
