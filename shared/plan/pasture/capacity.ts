import { fromTable, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { carryingCapacity, perHectare, sizingFormulas } from '../../pasture/sizing.js';
import { growingDays } from './more-than-grows.js';
import type { PastureContext } from './pasture-context.js';
import { needRows } from './pasture-support.js';

/** Head that all of the growth would feed while it grows, were none of it mown. */
export function capacityOf(context: PastureContext): NumberQuantity {
  const { herdDays, span, areaM2, tables, grass } = context;
  const stay = tables.pasture.longestStayDays.value;
  const share = tables.pasture.utilisation.byStayDays[stay - 1]!;
  let growthKg = 0;
  for (const { growth, paddock } of grass.swards) {
    let perHa = 0;
    for (let i = span.from; i < span.to; i++) perHa += growth[i]!;
    growthKg += (perHa * paddock.areaM2) / 10_000;
  }
  const need = needRows(context);
  // Hay feeds the rest of the year, and calves eat more by the month: the season's own days and need.
  const growing = growingDays(context);
  const days = growing.length;
  const eachDay = growing.map((day) => {
    const kg = herdDays.reduce((sum, d) => sum + d.demandKg[day]!, 0);
    const there = herdDays.reduce((sum, d) => sum + d.head[day]!, 0);
    return there === 0 ? 0 : kg / there;
  });
  const each = days === 0 ? 0 : eachDay.reduce((a, b) => a + b, 0) / days;
  return quantity(
    'Head the land carries in the plan',
    each === 0
      ? 0
      : carryingCapacity({
          areaM2,
          growthKgPerHa: perHectare(growthKg, areaM2),
          harvestShare: share,
          intakeKgPerDay: each,
          seasonDays: days,
        }),
    'count',
    sizingFormulas.capacity,
    [
      input('Growth of all paddocks', growthKg, 'kg'),
      fromTable(tables.pasture.utilisation, 'Share eaten', share, 'share', 'u'),
      input('One animal a day, on average', each, 'kg'),
      input('Days on which grass grows', days, 'day'),
    ],
    { rows: [context.growth, tables.pasture.longestStayDays, ...need] },
  );
}
