import type { Formula } from '../explain/formula.js';
import { input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { facilityOf } from '../farm/facility.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { formatChance } from '../units/format.js';
import { chanceOfWetDay } from '../weather/rain-days.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';

export const shelterFormulas = {
  wetDay: {
    id: 'wet-day-after-move',
    title: 'Chance of a wet day in the first days out',
    words:
      'Share of days with a millimeter of rain or more, from the average rain of the date; wet days follow wet ones. A forecast of rain replaces it. Wind is not in it: with birds, shelter is a yes or a no, and no table of wind chill for people applies.',
    symbols: 'p = 1 − (1 − p_wet)·(1 − p_wet after dry)^(n − 1)',
    sources: ['RICHARDSON'],
    mark: 'estimate',
  },
} satisfies Record<string, Formula>;

export interface ShelterPart {
  /** Whether wind and rain are kept off, in a word; left out where no home is chosen. */
  readonly shelter?: 'closed' | 'open' | 'not known';
  /** Left out where the rain of the place is not known. */
  readonly wetDay?: NumberQuantity;
}

/** Wind and rain where the birds go: what the rule of nights leaves out. */
export function planShelter(context: PlanContext, day: number): Found<ShelterPart> {
  const { facilities, batch } = context;
  const pen = batch.purpose === 'meat' && facilityOf(facilities, 'field-pen', batch.penId);
  if (!pen) {
    const coop = facilityOf(facilities, 'coop', batch.coopId);
    return found(coop ? { shelter: 'closed' } : {});
  }
  const wetDay = wetDayOf(context, day);
  const part: ShelterPart = { shelter: pen.sides ?? 'not known', ...(wetDay ? { wetDay } : {}) };
  return found(part, {
    issues: pen.sides === 'open' ? [openShelter(context, pen.name, wetDay)] : [],
  });
}

function wetDayOf(context: PlanContext, day: number): NumberQuantity | undefined {
  const { climate, life, dayOfYear, tables, dateOf } = context;
  const { meanRainMm, forecast = [] } = climate;
  if (!meanRainMm) return undefined;
  const count = tables.judgements.birds.moveOutNights.value;
  const { wetDay } = tables.work;
  const known = new Map(forecast.map(({ date, rainMm }) => [date, rainMm]));
  const days = Array.from({ length: Math.min(count, life.days - day) }, (_, k) => {
    const rainMm = known.get(dateOf(day + k));
    return {
      meanMm: meanRainMm[dayOfYear[day + k]! - 1]!,
      ...(rainMm === undefined || rainMm === null ? {} : { isWet: wetDay.rainMm <= rainMm }),
    };
  });
  return quantity(
    `Chance of a wet day in the first ${count}`,
    chanceOfWetDay(days, wetDay),
    'chance',
    shelterFormulas.wetDay,
    [
      input('Average rain of the day of the move', days[0]!.meanMm, 'rainMm'),
      input('Rain of a wet day', wetDay.meanRainMm, 'rainMm'),
      input('Wet days after a wet one', wetDay.wetAfterWetShare, 'share'),
      input(
        'Days with a forecast',
        days.filter(({ isWet }) => isWet !== undefined).length,
        'count',
      ),
    ],
    { rows: [wetDay, tables.judgements.birds.moveOutNights] },
  );
}

function openShelter(
  { dateOf, moveOutDay, say, words }: PlanContext,
  name: string,
  wetDay: NumberQuantity | undefined,
): PlanIssue {
  const wet = wetDay ? ` A wet day in the first week comes ${formatChance(wetDay.value)}.` : '';
  return issue(
    'act',
    'open-shelter',
    `${name} is open to wind and rain, and a wet or windblown ${words.youngOne} stands far less cold than a dry one.${wet} Before ${say(dateOf(moveOutDay!), 'date')} close the roof and the windward side with boards or a tarp, and lay dry bedding; then the nights above hold.`,
  );
}
