import {
  from,
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
} from '../../explain/quantity.js';
import { longSideM, rectangleFenceM, sizingFormulas, splitFenceM } from '../../pasture/sizing.js';
import { fenceOfOutlines, shareOfBlock } from '../../pasture/shared-fence.js';
import type { PastureContext } from './pasture-context.js';

/** Fence and lane of a mean paddock, and what drives the fence of all. */
export interface FenceSizing {
  readonly fence: NumberQuantity;
  readonly split: NumberQuantity;
  readonly lane: NumberQuantity;
  /** Of all paddocks, a fence between two counted once. */
  readonly allFence: NumberQuantity;
  readonly energizer: NumberQuantity;
}

export function fenceSizing(context: PastureContext): FenceSizing {
  const { areaM2, grass, tables } = context;
  const { energizerJPerKm, groundRodMPerJ, laneWidthM: lane } = tables.fence;
  const { shape } = tables.fence;
  const { longToShort } = shape;
  const shapeInput = fromTable(shape, 'Long side over short', longToShort, 'ratio', 'k');
  const allFence = fenceOfAll(context);
  const energizerJ = (allFence.value / 1000) * energizerJPerKm.value;
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
    allFence,
    energizer: quantity(
      'Energizer for all of that fence',
      energizerJ,
      'J',
      sizingFormulas.energizer,
      [
        from(allFence, 'L'),
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

/**
 * Fence of all paddocks. Outlines show which sides two of them share; those of which only the size is
 * known are taken as one block of equal ones.
 */
function fenceOfAll({ paddocks, tables }: PastureContext): NumberQuantity {
  const { shape } = tables.fence;
  const outlines = paddocks.flatMap(({ outline }) => (outline === undefined ? [] : [outline]));
  const sized = paddocks.filter(({ outline }) => outline === undefined);
  const drawn = fenceOfOutlines(outlines);
  const share = shareOfBlock(sized.length, shape.longToShort);
  const sizedM = sized.reduce((m, { areaM2 }) => m + rectangleFenceM(areaM2, shape.longToShort), 0);
  const drawnM = drawn.eachM - drawn.sharedM;
  return quantity(
    'Fence of all paddocks, shared sides once',
    drawnM + share * sizedM,
    'm',
    sizingFormulas.allFence,
    [
      ...(outlines.length === 0
        ? []
        : [
            fromFarm('Around the outlines, each by itself', drawn.eachM, 'm'),
            fromFarm('Of it shared by two', drawn.sharedM, 'm'),
          ]),
      ...(sized.length === 0
        ? []
        : [
            input('Around those without outline, each by itself', sizedM, 'm'),
            fromTable(shape, 'Long side over short', shape.longToShort, 'ratio', 'k'),
            fromTable(
              tables.fence.block,
              ...(['Left of it in one block of equal paddocks', share, 'share'] as const),
            ),
          ]),
    ],
    sized.length < 2
      ? {}
      : {
          spread: {
            low: drawnM + share * sizedM,
            high: drawnM + sizedM,
            because: tables.fence.block.because,
          },
        },
  );
}
