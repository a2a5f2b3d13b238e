import type { OlderShapes } from '../contract.ts';
import type { Upgrade } from '../schema.ts';

/**
 * Bodies say how they warm, plans how rigs stand and how they rest. What lies here is brought to
 * that shape by the same steps as files are read.
 */
export async function heatAndOrder(upgrade: Upgrade, older: OlderShapes): Promise<void> {
  const gear = upgrade.objectStore('gear');
  for (let at = await gear.openCursor(); at; at = await at.continue()) {
    const { value: kept } = at;
    if (kept.kind === 'body') await at.update({ ...kept, value: older.bodyFrom1(kept.value) });
  }
  const plans = upgrade.objectStore('plans');
  for (let at = await plans.openCursor(); at; at = await at.continue()) {
    await at.update({ ...at.value, value: older.planFrom1(at.value.value) });
  }
}
