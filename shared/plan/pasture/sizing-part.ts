import { fromTable, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { carryingCapacity, perHectare, sizingFormulas } from '../../pasture/sizing.js';
import { found, joined, type Found } from '../found.js';
import { fenceSizing, type FenceSizing } from './fence-sizing.js';
import { herdSizing, type HerdSizing } from './herd-sizing.js';
import { growingDays, moreThanGrows } from './more-than-grows.js';
import type { PastureContext } from './pasture-context.js';
import { needRows } from './pasture-support.js';
import type { Chosen } from './surplus.js';

export interface SizingPart extends FenceSizing {
  readonly herds: readonly HerdSizing[];
  readonly stockingRate: NumberQuantity;
  readonly capacity: NumberQuantity;
  readonly shade: NumberQuantity;
}

/** Paddock numbers and sizes, stocking rate, water, fence: the arithmetic of the whole land. */
export function planSizing(context: PastureContext, { books }: Chosen): Found<SizingPart> {
  const { herdDays, span, areaM2, tables, grass } = context;
  const at = busiestDay(context);
  const liveKg = herdDays.reduce((sum, d) => sum + d.liveKg[at]!, 0);
  const calfKg = herdDays.reduce((sum, d) => sum + d.calfLiveKg[at]!, 0);
  const head = herdDays.reduce((sum, d) => sum + d.head[at]!, 0);
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
  const capacity = quantity(
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
  const tooMuch = moreThanGrows(context, {
    head,
    carried: Math.max(0, Math.min(Math.round(capacity.value), head - 1)),
    startKgPerHa: books.startKgPerHa,
  });
  const herds = context.herds.map((_, h) => herdSizing(context, h, books));
  const { shadeM2PerHead } = tables.fence;
  const part: SizingPart = {
    shade: quantity(
      'Shade for all of them',
      head * shadeM2PerHead.value,
      'm2',
      sizingFormulas.shade,
      [input('Head', head, 'count'), fromTable(shadeM2PerHead, 'Each', shadeM2PerHead.value, 'm2')],
      {
        spread: {
          low: head * shadeM2PerHead.low,
          high: head * shadeM2PerHead.high,
          because: 'from temporary need to mature cows',
        },
      },
    ),
    herds: herds.map((each) => each.part),
    stockingRate: quantity(
      'Stocking rate',
      perHectare(liveKg, areaM2),
      'kgPerHa',
      sizingFormulas.stockingRate,
      [
        input('Live weight', liveKg, 'kg'),
        ...(calfKg === 0 ? [] : [input('Of it calves at foot', calfKg, 'kg')]),
        input('All paddocks', areaM2, 'ha'),
      ],
      { rows: [...need, ...(calfKg === 0 ? [] : [tables.cattle.calfWeight])] },
    ),
    capacity,
    ...fenceSizing(context),
  };
  return found(part, joined([{ issues: tooMuch }, ...herds]));
}

/** Day on which the herds together need most. */
function busiestDay({ herdDays, span }: PastureContext): number {
  let best = span.from;
  const need = (i: number): number => herdDays.reduce((sum, d) => sum + d.demandKg[i]!, 0);
  for (let i = span.from; i < span.to; i++) if (need(best) < need(i)) best = i;
  return best;
}
