import { Split } from '../../parts/Split.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';
import './gear.css';
import { BodyScreen } from './BodyScreen.tsx';
import { GearList } from './GearList.tsx';
import { GoneScreen } from './GoneScreen.tsx';
import { LensScreen } from './LensScreen.tsx';
import { NewBody } from './NewBody.tsx';
import { NewLens } from './NewLens.tsx';
import { NewRig } from './NewRig.tsx';
import { RigScreen } from './RigScreen.tsx';

/** Bodies, lenses, rigs and offsets. */
export function GearPlace() {
  const { navigation } = useApp();
  const { gear } = useGearWords();
  const [kind, id] = navigation.at.value.path;
  return (
    <Split
      list={<GearList />}
      detail={kind === undefined || id === undefined ? null : <Detail kind={kind} id={id} />}
      hint={gear.chooseHint}
    />
  );
}

function Detail({ kind, id }: { readonly kind: string; readonly id: string }) {
  const { bodies, lenses, rigs } = useApp().gear.gear.value;
  const of = <T extends { readonly id: string }>(things: readonly T[]): T | undefined =>
    things.find((thing) => thing.id === id);
  if (kind === 'body') {
    if (id === 'new') return <NewBody />;
    const body = of(bodies);
    if (body) return <BodyScreen key={id} body={body} />;
  }
  if (kind === 'lens') {
    if (id === 'new') return <NewLens />;
    const lens = of(lenses);
    if (lens) return <LensScreen key={id} lens={lens} />;
  }
  if (kind === 'rig') {
    if (id === 'new') return <NewRig />;
    const rig = of(rigs);
    if (rig) return <RigScreen key={id} rig={rig} />;
  }
  return <GoneScreen key={id} />;
}
