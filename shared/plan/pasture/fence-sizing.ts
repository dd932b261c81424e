import { fromTable, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { longSideM, rectangleFenceM, sizingFormulas, splitFenceM } from '../../pasture/sizing.js';
import type { PastureContext } from './pasture-context.js';

/** Fence and lane of a mean paddock, and what drives the fence of all. */
export interface FenceSizing {
  readonly fence: NumberQuantity;
  readonly split: NumberQuantity;
  readonly lane: NumberQuantity;
  readonly energizer: NumberQuantity;
}

export function fenceSizing({ areaM2, paddocks, grass, tables }: PastureContext): FenceSizing {
  const { energizerJPerKm, groundRodMPerJ, laneWidthM: lane } = tables.fence;
  const { shape } = tables.fence;
  const { longToShort } = shape;
  const shapeInput = fromTable(shape, 'Long side over short', longToShort, 'ratio', 'k');
  const fenceM = paddocks.reduce((m, p) => m + rectangleFenceM(p.areaM2, longToShort), 0);
  const energizerJ = (fenceM / 1000) * energizerJPerKm.value;
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
    energizer: quantity(
      'Energizer for all of that fence',
      energizerJ,
      'J',
      sizingFormulas.energizer,
      [
        input('Fence, each paddock by itself', fenceM, 'm'),
        shapeInput,
        fromTable(energizerJPerKm, 'A kilometer', energizerJPerKm.value, 'J'),
        fromTable(
          groundRodMPerJ,
          ...(['Ground rods for it, in all', energizerJ * groundRodMPerJ.value, 'm'] as const),
        ),
      ],
      {
        spread: {
          low: energizerJ,
          high: energizerJPerKm.byWire * energizerJ,
          because: energizerJPerKm.because,
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
