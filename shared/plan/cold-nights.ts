import { dayLengthH } from '../calendar/day-length.js';
import { fromRow, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import type { Sourced } from '../explain/formula.js';
import { facilityOf } from '../farm/facility.js';
import { normalBelow, normalDensity } from '../maths/normal.js';
import { costMinor } from '../money/money.js';
import { coldEnergyKcal, coldFeedFormulas, lowerCriticalC } from '../poultry/cold-feed.js';
import type { PlanContext } from './context.js';
import { heatPriceInput, heatPriceOf } from './heat-price.js';
import { chanceOf, nightLowAt } from './move-out.js';
import { bagOf, priceInput } from './prices.js';

/** What one night costs that is colder than the birds stand, in feed, money and heat. */
export interface ColdNightPart {
  readonly low: NumberQuantity;
  readonly feed: NumberQuantity;
  /** Left out where the feed has no price. */
  readonly money?: NumberQuantity;
  /** A night of the brooder's electric heaters; left out where there are none. */
  readonly heat?: NumberQuantity;
}

/**
 * A too cold night among the first after a move: how cold it is, and what it costs the birds.
 *
 * @param rows what the nights rest on
 */
export function coldNightPart(
  context: PlanContext,
  moveOutDay: number,
  rows: readonly Sourced[],
): ColdNightPart {
  const night = worstNight(context, moveOutDay);
  const low = lowOfColdNight(context, night, rows);
  const hours = nightHours(context, night);
  const feed = extraFeed(context, { night, lowC: low.value, hours }, rows);
  const money = priced(context, night, feed);
  const heat = nightOfHeat(context, hours);
  return { low, feed, ...(money ? { money } : {}), ...(heat ? { heat } : {}) };
}

/** The night of the first ones that is most often too cold for birds of its age. */
function worstNight({ life, moveOutRule, nights, tables }: PlanContext, from: number): number {
  const to = Math.min(from + tables.judgements.birds.moveOutNights.value, life.days);
  let worst = from;
  for (let night = from + 1; night < to; night++) {
    if (chanceOf(life, moveOutRule, nights, worst) < chanceOf(life, moveOutRule, nights, night))
      worst = night;
  }
  return worst;
}

function lowOfColdNight(
  { life, moveOutRule, nights }: PlanContext,
  night: number,
  rows: readonly Sourced[],
): NumberQuantity {
  const [meanC, sdC] = [nights.lowC[night]!, nights.sdC[night]!];
  const limitC = nightLowAt(moveOutRule, life.arrivalAgeDays + night);
  const z = (limitC - meanC) / sdC;
  const share = normalBelow(z);
  // So rare that the curve has no figure for it: then it is hardly colder than the limit.
  const lowC = share < 1e-6 ? limitC : meanC - (sdC * normalDensity(z)) / share;
  return quantity(
    'A night too cold for them, on average',
    lowC,
    'degC',
    coldFeedFormulas.coldNight,
    [
      input('Average low of that night', meanC, 'degC', 'T_night'),
      input('Single nights differ from it by about', sdC, 'K', 'SD'),
      input('What birds of that age stand', limitC, 'degC', 'T_rule'),
    ],
    { rows },
  );
}

export const nightHours = ({ farm, dayOfYear }: PlanContext, night: number): number =>
  24 - dayLengthH({ latitudeDeg: farm.latitudeDeg, dayOfYear: dayOfYear[night]! });

/** Feed that birds outdoors eat more in one night of a low than in a usual night of that date. */
export function extraFeed(
  { life, nights, phases, tables, batch }: PlanContext,
  { night, lowC, hours }: { night: number; lowC: number; hours: number },
  rows: readonly Sourced[],
): NumberQuantity {
  const { coldFeed } = tables.nights;
  const weightKg = life.meanWeightKg[night]!;
  const criticalC = lowerCriticalC(coldFeed, weightKg);
  const usualC = Math.min(criticalC, nights.lowC[night]!);
  const degrees = Math.max(0, usualC - lowC);
  const birds = life.aliveAll[night]!;
  const { energyKcalPerKg } = phaseOn(phases, life.arrivalAgeDays + night);
  return quantity(
    'Extra feed in one such night',
    (birds * coldEnergyKcal(coldFeed, { weightKg, degrees, hours })) / energyKcalPerKg,
    'kg',
    coldFeedFormulas.feed,
    [
      input('Birds', birds, 'count', 'N'),
      input('Live weight', weightKg, 'kg', 'm'),
      fromTable(coldFeed, 'Lower critical temperature', criticalC, 'degC', 'CT'),
      input('Average low of that night', nights.lowC[night]!, 'degC', 'T_night'),
      input('A night too cold', lowC, 'degC', 'T_cold'),
      input('From sunset to sunrise', hours, 'h', 'h'),
      input('Energy of a kilogram', energyKcalPerKg, 'kcal', 'E'),
    ],
    {
      rows: [...rows, ...life.weightRows, life.losses, life.program],
      outside:
        batch.purpose === 'layers' || weightKg < coldFeed.fromKg || coldFeed.toKg < weightKg
          ? `Measured on male meat birds of ${coldFeed.fromKg} to ${coldFeed.toKg} kg.`
          : undefined,
    },
  );
}

const phaseOn = (phases: PlanContext['phases'], ageDays: number) =>
  (phases.find(({ toAgeDays }) => ageDays < toAgeDays) ?? phases.at(-1)!).phase;

function priced(
  context: PlanContext,
  night: number,
  feed: NumberQuantity,
): NumberQuantity | undefined {
  const { phases, life, farm } = context;
  const { id } = phaseOn(phases, life.arrivalAgeDays + night);
  const { bagKg, bagInput, price } = bagOf(context, id);
  return (
    price &&
    quantity(
      'That feed, in money',
      costMinor(price.price, feed.value / bagKg, farm.currency),
      'money',
      coldFeedFormulas.money,
      [input('Extra feed', feed.value, 'kg', 'F'), bagInput, priceInput(price, farm.currency)],
    )
  );
}

/** A night of all electric heaters of the brooder, in money; undefined where there are none. */
export function nightOfHeat(
  { batch, facilities, farm }: PlanContext,
  hours: number,
): NumberQuantity | undefined {
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder || brooder.heat.kind === 'gas' || brooder.heat.count === 0) return undefined;
  const { heat } = brooder;
  const kWh = (heat.wattsEach * heat.count * hours) / 1000;
  return quantity(
    `A night of heat, your ${heat.count} × ${heat.wattsEach} W`,
    costMinor(heatPriceOf(farm, heat.kind), kWh, farm.currency),
    'money',
    coldFeedFormulas.heat,
    [
      fromRow(brooder, 'heat.wattsEach', 'Each', heat.wattsEach, 'W', 'P'),
      fromRow(brooder, 'heat.count', 'Count', heat.count, 'count', 'n'),
      input('From sunset to sunrise', hours, 'h', 'h'),
      heatPriceInput(farm, heat.kind),
    ],
  );
}
