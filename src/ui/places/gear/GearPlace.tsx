import { Screen } from '../../parts/Screen.tsx';
import { DeviceSection } from '../../shell/DeviceSection.tsx';

export const GearPlace = () => (
  <Screen title="Gear">
    <DeviceSection />
  </Screen>
);
