import { from, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { recalibrateFormulas } from '../../pasture/recalibrate.js';
import type { PastureContext } from './pasture-context.js';
import { farmFactorRow, weightOf } from './pasture-support.js';
import type { SeasonSward } from './season-swards.js';

/** The growth of a paddock over the model's, by the readings of all that are like it. */
export function paddockFactor(context: PastureContext, own: SeasonSward): NumberQuantity {
  const { readingWeight } = context.tables.pasture;
  const { readings, weight, ownRatio } = own.ownGrowth;
  return quantity(
    `Growth against the model: ${kindName(context, own)}`,
    own.sward.ground.growthFactor,
    'ratio',
    recalibrateFormulas.group,
    [
      {
        ...input('Readings with growth between them', readings, 'count', 'n'),
        mark: farmFactorRow(context.tables, weight).mark,
      },
      input('Readings in full growth they count for', weight, 'count', 'Σ w'),
      ...(ownRatio === undefined ? [] : [input('What they alone say', ownRatio, 'ratio', 'r')]),
      input('What all readings say of the farm', context.grass.farmGrowth, 'ratio', 'f_farm'),
      input('Readings the farm counts for', 2 * readingWeight.priorReadings, 'count', 'n_model'),
      input('A height is misread by', readingWeight.readingErrorKgPerHa, 'kgPerHa', 's'),
      input('Growth between two readings varies by', readingWeight.growthSpread, 'share', 'c'),
    ],
    { sources: readingWeight.sources },
  );
}

/** It for the whole farm, and each kind of paddock where there are several. */
export function farmFactor(context: PastureContext): NumberQuantity {
  const { swards } = context.grass;
  const kinds = [...new Map(swards.map((own) => [own.ownGrowth, own])).values()];
  const { readingWeight } = context.tables.pasture;
  const value =
    swards.reduce((sum, { sward }) => sum + sward.areaHa * sward.ground.growthFactor, 0) /
    swards.reduce((sum, { sward }) => sum + sward.areaHa, 0);
  const { pairs } = context.grass;
  return quantity(
    'Your growth against the model',
    swards.length === 0 ? 1 : value,
    'ratio',
    recalibrateFormulas.factor,
    [
      {
        ...input('Readings with growth between them', pairs, 'count', 'n'),
        mark: farmFactorRow(context.tables, weightOf(context.grass)).mark,
      },
      ...kinds.map((own) => from(paddockFactor(context, own))),
    ],
    { sources: readingWeight.sources },
  );
}

/** Paddocks alike are named by their grass, and by themselves where others have the same grass. */
function kindName({ grass: { swards } }: PastureContext, own: SeasonSward): string {
  const { name } = own.forage;
  const alike = swards.filter(({ ownGrowth }) => ownGrowth === own.ownGrowth);
  const isOnly = swards.every(
    ({ forage, ownGrowth }) => forage !== own.forage || ownGrowth === own.ownGrowth,
  );
  return isOnly ? name : `${name} (${alike.map(({ paddock }) => paddock.name).join(', ')})`;
}
