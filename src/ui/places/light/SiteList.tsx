import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useLightWords } from '../../words/light.ts';
import { coordinatesWords } from './coordinates.ts';

export function SiteList() {
  const { sites, navigation } = useApp();
  const words = useLightWords();
  const { light } = words;
  const all = sites.sites.value;
  const [open] = navigation.at.value.path;
  const add = (
    <Button onPress={() => navigation.go('light', 'new')}>
      <Icon name="plus" />
      {light.addSite}
    </Button>
  );
  return (
    <Screen title={light.title}>
      {all.length > 0 && all.every(({ invented }) => invented) && (
        <Notice>{light.onlyInvented}</Notice>
      )}
      <Section title={light.sites}>
        {all.length === 0 ? (
          <EmptyHint acts={add}>{light.noSite}</EmptyHint>
        ) : (
          <>
            <ul>
              {all.map((site) => (
                <li key={site.id}>
                  <Row
                    title={site.name}
                    tag={site.invented && <InventedTag />}
                    note={coordinatesWords(site, words)}
                    current={open === site.id}
                    onPress={() => navigation.go('light', site.id)}
                  />
                </li>
              ))}
            </ul>
            <div class="acts">{add}</div>
          </>
        )}
      </Section>
    </Screen>
  );
}
