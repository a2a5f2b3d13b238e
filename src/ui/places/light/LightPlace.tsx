import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Split } from '../../parts/Split.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useLightWords } from '../../words/light.ts';
import './light.css';
import { NewSite } from './NewSite.tsx';
import { NightScreen } from './NightScreen.tsx';
import { SiteList } from './SiteList.tsx';
import { SiteScreen } from './SiteScreen.tsx';

/** Sites and the light of their evenings. */
export function LightPlace() {
  const { navigation } = useApp();
  const { light } = useLightWords();
  const [id, part] = navigation.at.value.path;
  return (
    <Split
      list={<SiteList />}
      detail={id === undefined ? null : <Detail id={id} part={part} />}
      hint={light.chooseHint}
    />
  );
}

function Detail({ id, part }: { readonly id: string; readonly part: string | undefined }) {
  const { sites } = useApp();
  if (id === 'new') return <NewSite />;
  const site = sites.sites.value.find((each) => each.id === id);
  if (!site) return <Gone />;
  return part === 'site' ? (
    <SiteScreen key={`${id} site`} site={site} />
  ) : (
    <NightScreen key={id} site={site} />
  );
}

/** The address names a site that was deleted, or never was. */
function Gone() {
  const { navigation } = useApp();
  const { light } = useLightWords();
  return (
    <Screen inner title={light.title}>
      <EmptyHint
        acts={<Button onPress={() => navigation.replace('light')}>{light.toSites}</Button>}
      >
        {light.gone}
      </EmptyHint>
    </Screen>
  );
}
