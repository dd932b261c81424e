import type { Formula, Sourced } from '../../explain/formula.js';
import {
  datedFact,
  fromJudgement,
  fromTable,
  input,
  type Quantity,
  type QuantityInput,
} from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { soilTemperatureFormulas } from '../../weather/soil-temperature.js';
import { isOfGarden } from '../work/of-place.js';
import { placeKeyDates } from '../work/place-dates.js';
import type { KeyDate } from '../tasks/event.js';
import { nightRows, yearFrostFormulas } from './year-frost.js';
import type { YearSpan } from './year-span.js';

export const gardenDateFormulas = {
  hivesOpen: {
    id: 'hives-open',
    title: 'First warm days',
    words:
      'First of some days in a row on which it gets warm enough for bees to fly, as measured and forecast, else by the averages of the place. A mild spell of midwinter does not count.',
    symbols: 'T_max ≥ T on n days in a row',
    sources: ['HOMESTEAD_WORK'],
    mark: 'second-hand',
  },
  swarming: {
    id: 'swarming',
    title: 'Swarm season',
    words:
      'About three weeks after the first warm days, when the first brood of spring crowds the hive: from then on look for swarm cells every 7 to 10 days, until summer.',
    symbols: 'D = first warm days + n',
    sources: ['HOMESTEAD_WORK'],
    mark: 'second-hand',
  },
} satisfies Record<string, Formula>;

/**
 * Key dates of garden and hives within the strip, those that are told of; its safe and usual frosts
 * are told beside.
 */
export function gardenDates(
  place: Pick<FarmPicture, 'farm' | 'climate' | 'today'>,
  tables: Tables,
  { from, until }: YearSpan,
  isTold: (event: KeyDate) => boolean = () => true,
): Quantity[] {
  return placeKeyDates({ ...place, tables })
    .filter((event) => isOfGarden(event) && from <= event.date && event.date < until)
    .filter(isTold)
    .flatMap((event) => {
      const rests = restsOn(event, tables);
      if (!rests) return [];
      const { formula, inputs, rows = [] } = rests;
      const weather = input('Weather used', place.climate.label, 'text');
      return [datedFact(event.name, event.date, formula, [...inputs, weather], { rows })];
    })
    .sort((a, b) => (a.value < b.value ? -1 : 1));
}

interface RestsOn {
  readonly formula: Formula;
  readonly inputs: readonly QuantityInput[];
  readonly rows?: readonly Sourced[];
}

function restsOn({ id }: KeyDate, tables: Tables): RestsOn | undefined {
  const { soil, hivesOpen, swarming, bloom } = tables.work.keyDates;
  const is = (kind: string): boolean => id.startsWith(`event/place/${kind}-`);
  const warm = soil.find((row) => is(row.id));
  const ofHives = [
    fromTable(hivesOpen, 'High of the day at least', hivesOpen.dayMaxC, 'degC', 'T'),
    fromTable(hivesOpen, 'Days in a row', hivesOpen.daysInRow, 'day', 'n'),
  ];
  if (warm)
    return {
      formula: soilTemperatureFormulas.soil,
      inputs: [fromTable(warm, 'Soil at least', warm.atLeastC, 'degC')],
    };
  if (is('hives-open')) return { formula: gardenDateFormulas.hivesOpen, inputs: ofHives };
  if (is('swarming'))
    return {
      formula: gardenDateFormulas.swarming,
      inputs: [...ofHives, fromTable(swarming, 'Days after them', swarming.afterDays, 'day', 'n')],
    };
  if (is('bloom-safe'))
    return {
      formula: yearFrostFormulas.frost,
      inputs: [
        fromTable(bloom, 'Open bloom is killed at or below', bloom.atOrBelowC, 'degC'),
        fromJudgement(tables.judgements.work.sureShare),
      ],
      rows: nightRows(tables),
    };
  return undefined;
}
