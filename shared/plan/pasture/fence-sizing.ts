import { fromTable, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { longSideM, rectangleFenceM, sizingFormulas, splitFenceM } from '../../pasture/sizing.js';
import type { PastureContext } from './pasture-context.js';

/** Fence and lane of a mean paddock, and what drives the fence of all. */
export interface FenceSizing {
  readonly fence: NumberQuantity;
  readonly split: NumberQuantity;
  readonly lane: NumberQuantity;
  readonly energiser: NumberQuantity;
}

export function fenceSizing({ areaM2, paddocks, grass, tables }: PastureContext): FenceSizing {
  const { energiserJPerKm, groundRodMPerJ, laneWidthM: lane } = tables.fence;
  const { shape } = tables.fence;
  const { longToShort } = shape;
  const shapeInput = fromTable(shape, 'Long side over short', longToShort, 'ratio', 'k');
  const fenceM = paddocks.reduce((m, p) => m + rectangleFenceM(p.areaM2, longToShort), 0);
  const energiserJ = (fenceM / 1000) * energiserJPerKm.value;
  const mean = areaM2 / Math.max(1, grass.swards.length);
  return {
    lane: quantity(
      'Lane along an average paddock',
      longSideM(mean, longToShort),
      'm',
      sizingFormulas.lane,
      [
        input('Area', mean, 'ha', 'A'),
        shapeInput,
        fromTable(lane, 'Width, at least', lane.low, 'm'),
        fromTable(lane, 'Width, at most', lane.high, 'm'),
      ],
    ),
    energiser: quantity(
      'Energizer for all of that fence',
      energiserJ,
      'J',
      sizingFormulas.energiser,
      [
        input('Fence, each paddock by itself', fenceM, 'm'),
        shapeInput,
        fromTable(energiserJPerKm, 'A kilometer', energiserJPerKm.value, 'J'),
        fromTable(
          groundRodMPerJ,
          ...(['Ground rods for it, in all', energiserJ * groundRodMPerJ.value, 'm'] as const),
        ),
      ],
      {
        spread: {
          low: energiserJ,
          high: energiserJPerKm.byWire * energiserJ,
          because: energiserJPerKm.because,
        },
      },
    ),
    fence: quantity(
      'Fence around an average paddock',
      rectangleFenceM(mean, longToShort),
      'm',
      sizingFormulas.fence,
      [input('Area', mean, 'ha', 'A'), shapeInput],
    ),
    split: quantity(
      'Fence to split it in two',
      splitFenceM(mean, longToShort, 2),
      'm',
      sizingFormulas.fence,
      [input('Area', mean, 'ha', 'A'), shapeInput],
    ),
  };
}
