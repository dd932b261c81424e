import { fromJudgement, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { rowById } from '../../tables/tables.js';
import { swardFormulas } from '../../pasture/sward-day.js';
import { soilWaterFormulas } from '../../weather/soil-water.js';
import type { PastureContext } from './pasture-context.js';

/** Dry soil in the plan: from when it slows the grass, and how much at the worst. */
export interface DrySpell {
  readonly from: string;
  readonly worstOn: string;
  readonly growthLeft: NumberQuantity;
  readonly rain: NumberQuantity;
}

/** The dry spell of a plan, mean over the land; undefined without rain or without one. */
export function drySpell({
  grass,
  span,
  weather,
  dateOf,
  areaM2,
  tables,
}: PastureContext): DrySpell | undefined {
  const { rainMm } = weather.expected;
  if (!rainMm) return undefined;
  const { dryShare, dryRainDays } = tables.judgements.grass;
  const rows = grass.swards.flatMap(({ forage, paddock }) => [
    swardFormulas.growth,
    forage.water,
    rowById(tables.soils, paddock.soilId),
  ]);
  const left = (day: number): number =>
    grass.swards.reduce(
      (sum, { sward, paddock }) => sum + sward.open.wetShare[day]! * paddock.areaM2,
      0,
    ) / areaM2;
  let first: number | undefined;
  let worst = span.from;
  for (let day = span.from; day < span.to; day++) {
    if (first === undefined && left(day) < dryShare.value) first = day;
    if (left(day) < left(worst)) worst = day;
  }
  if (first === undefined) return undefined;
  const before = Math.max(0, worst - dryRainDays.value);
  const sumBefore = (mm: Float64Array): number =>
    mm.subarray(before, worst).reduce((a, b) => a + b, 0);
  const rain = quantity(
    `Rain of ${dryRainDays.value} days before`,
    sumBefore(rainMm),
    'rainMm',
    soilWaterFormulas.depletion,
    [input('Until', dateOf(worst), 'date'), fromJudgement(dryRainDays)],
  );
  const depletion =
    grass.swards.reduce((sum, s) => sum + s.depletionMm![worst]! * s.paddock.areaM2, 0) / areaM2;
  return {
    from: dateOf(first),
    worstOn: dateOf(worst),
    growthLeft: quantity(
      'Growth that dry soil leaves',
      left(worst),
      'share',
      soilWaterFormulas.stress,
      [
        input('Water missing from the root zone', depletion, 'rainMm', 'D'),
        input(rain.label, rain.value, 'rainMm', 'P'),
        input(
          'Water the sun and air draw in those days',
          sumBefore(weather.expected.referenceMm),
          'rainMm',
          'ET₀',
        ),
        fromJudgement(dryShare),
      ],
      { rows },
    ),
    rain,
  };
}
