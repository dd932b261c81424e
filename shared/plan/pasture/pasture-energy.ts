import { metabolizableMcalPerKg, upkeepMcalPerKg } from '../../pasture/forage-energy.js';
import { boughtHay } from '../../pasture/hay.js';
import type { Tables } from '../../tables/tables.js';
import type { SeasonSward } from './season-swards.js';

/**
 * Net energy for upkeep of what cattle eat on each day, Mcal a kg of dry matter, mean over the land:
 * of grass by how digestible it is while it grows, else of hay. Without land they eat hay all year.
 */
export function energyByDay(
  swards: readonly SeasonSward[],
  days: number,
  tables: Tables,
): Float64Array {
  const energy = new Float64Array(days);
  if (swards.length === 0) return energy.fill(boughtHay(tables).energyMcalPerKg.value);
  const { judgements } = tables;
  const areaM2 = swards.reduce((sum, { paddock }) => sum + paddock.areaM2, 0);
  const grows = judgements.grass.growsKgPerHa.value;
  // Paddocks that grow alike share what they grow.
  const alike = new Map<Float64Array, { first: SeasonSward; areaM2: number }>();
  for (const sward of swards) {
    const group = alike.get(sward.growth);
    if (group) group.areaM2 += sward.paddock.areaM2;
    else alike.set(sward.growth, { first: sward, areaM2: sward.paddock.areaM2 });
  }
  for (const { first, areaM2: groupM2 } of alike.values()) {
    const { forage, growth, digestibleShare } = first;
    const share = groupM2 / areaM2;
    for (let day = 0; day < days; day++)
      energy[day]! +=
        share *
        (grows <= growth[day]!
          ? upkeepMcalPerKg(metabolizableMcalPerKg(digestibleShare[day]!))
          : forage.energyMcalPerKg.value);
  }
  return energy;
}
