import { input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { longSideM, rectangleFenceM, sizingFormulas, splitFenceM } from '../../pasture/sizing.js';
import type { PastureContext } from './pasture-context.js';

/** Fence and lane of a mean paddock, and what drives the fence of all. */
export interface FenceSizing {
  readonly fence: NumberQuantity;
  readonly split: NumberQuantity;
  readonly lane: NumberQuantity;
  readonly energiser: NumberQuantity;
}

/** Shape of a paddock where none is drawn: twice as long as wide. */
const LONG_TO_SHORT = 2;

export function fenceSizing({ areaM2, paddocks, grass, tables }: PastureContext): FenceSizing {
  const { energiserJPerKm, groundRodMPerJ, laneWidthM: lane } = tables.fence;
  const fenceM = paddocks.reduce((m, p) => m + rectangleFenceM(p.areaM2, LONG_TO_SHORT), 0);
  const energiserJ = (fenceM / 1000) * energiserJPerKm.value;
  const mean = areaM2 / Math.max(1, grass.swards.length);
  return {
    lane: quantity(
      'Lane along a mean paddock',
      longSideM(mean, LONG_TO_SHORT),
      'm',
      sizingFormulas.lane,
      [
        input('Area', mean, 'ha', 'A'),
        input('Long side over short', LONG_TO_SHORT, 'ratio', 'k'),
        input('Width, at least', lane.low, 'm'),
        input('Width, at most', lane.high, 'm'),
      ],
    ),
    energiser: quantity(
      'Energiser for all of that fence',
      energiserJ,
      'J',
      sizingFormulas.energiser,
      [
        input('Fence, each paddock by itself', fenceM, 'm'),
        input('A kilometre', energiserJPerKm.value, 'J'),
        input('Ground rods for it, in all', energiserJ * groundRodMPerJ.value, 'm'),
      ],
      {
        spread: {
          low: energiserJ,
          high: 4 * energiserJ,
          because: energiserJPerKm.because,
        },
      },
    ),
    fence: quantity(
      'Fence around a mean paddock',
      rectangleFenceM(mean, LONG_TO_SHORT),
      'm',
      sizingFormulas.fence,
      [input('Area', mean, 'ha', 'A'), input('Long side over short', LONG_TO_SHORT, 'ratio', 'k')],
    ),
    split: quantity(
      'Fence to split it in two',
      splitFenceM(mean, LONG_TO_SHORT, 2),
      'm',
      sizingFormulas.fence,
      [input('Area', mean, 'ha', 'A'), input('Long side over short', LONG_TO_SHORT, 'ratio', 'k')],
    ),
  };
}
