import { fromTable, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { perHectare, sizingFormulas } from '../../pasture/sizing.js';
import { found, joined, type Found } from '../found.js';
import { capacityOf } from './capacity.js';
import { fenceSizing, type FenceSizing } from './fence-sizing.js';
import { herdSizing, type HerdSizing } from './herd-sizing.js';
import { moreThanGrows } from './more-than-grows.js';
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
  const { herdDays, areaM2, tables } = context;
  const at = busiestDay(context);
  const liveKg = herdDays.reduce((sum, d) => sum + d.liveKg[at]!, 0);
  const calfKg = herdDays.reduce((sum, d) => sum + d.calfLiveKg[at]!, 0);
  const head = herdDays.reduce((sum, d) => sum + d.head[at]!, 0);
  const need = needRows(context);
  const capacity = capacityOf(context);
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
