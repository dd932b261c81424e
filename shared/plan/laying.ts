import { plainFormulas } from '../explain/plain-formulas.js';
import { dayLengthFormulas, dayLengthH } from '../calendar/day-length.js';
import { addDays, dayOfYear, type PlainDate } from '../calendar/plain-date.js';
import { dailySeries } from '../explain/daily-series.js';
import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { eggWeightG, henDayShare, layFormulas } from '../poultry/lay.js';
import type { PlanContext } from './context.js';
import { eggWeightRows, type FeedPart } from './feed.js';
import { found, type Found } from './found.js';

export const layingFormulas = {
  firstEgg: {
    id: 'first-egg-date',
    title: 'First eggs',
    words:
      'Hatch date plus the age at which the fitted lay curve of the strain starts. Short days can delay it by weeks.',
    symbols: 'D = hatch + 7·d',
    sources: ['COMPARTMENTAL_LAY'],
    mark: 'computed',
  },
  lampHours: {
    id: 'light-to-add',
    title: 'Lamp hours to add',
    words:
      'Hours of light wanted, less the natural day. From 16 weeks the wanted day grows by an hour a week to 15 hours; it never shrinks while hens lay.',
    symbols: 'h = max(0, L_wanted − N)',
    sources: ['NOAA_SOLAR'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface LayWeek {
  readonly from: PlainDate;
  readonly ageWeeks: number;
  readonly eggs: NumberQuantity;
  readonly feed: NumberQuantity;
}

export interface LightStep {
  readonly from: PlainDate;
  readonly wanted: NumberQuantity;
  readonly natural: NumberQuantity;
  readonly add: NumberQuantity;
}

export interface LayingPart {
  readonly firstEgg: Quantity;
  readonly ageAtFirstEgg: NumberQuantity;
  readonly peak: NumberQuantity;
  readonly weeks: readonly LayWeek[];
  readonly eggsInYear: NumberQuantity;
  readonly eggsPerHen: NumberQuantity;
  readonly feedPerDozen: NumberQuantity;
  readonly feedToFirstEgg: NumberQuantity;
  readonly light: readonly LightStep[];
}

export function planLaying(context: PlanContext, feed: FeedPart): Found<LayingPart | undefined> {
  const { life, batch, dateOf } = context;
  const curve = life.layCurve;
  if (!curve || life.firstEggAgeDays === undefined) return found(undefined);
  const firstDay = life.firstEggAgeDays - life.arrivalAgeDays;
  const options = { rows: [curve] };
  const flock = { rows: [curve, life.losses] };
  const fed = { rows: [...life.feedRows, life.losses, curve, ...eggWeightRows(life)] };
  const share = new Float64Array(life.days);
  const eggs = new Float64Array(life.days);
  for (let i = firstDay; i < life.days; i++) {
    share[i] = henDayShare(curve, (life.arrivalAgeDays + i) / 7);
    eggs[i] = share[i]! * life.alive.female[i]!;
  }
  const curveInputs = [
    input('Lay curve', curve.name, 'text'),
    ...(curve.note === undefined ? [] : [input('Note', curve.note, 'text')]),
    input('Ceiling', curve.scalePercent / 100, 'share', 'M'),
    input('Rise a week', curve.risePerWeek, 'ratio', 'z'),
    input('Start, weeks of age', curve.firstEggWeek, 'ratio', 'd'),
    input('Fall a week', curve.declinePerWeek, 'ratio', 'a'),
  ];
  const series = [
    dailySeries(
      'hen-day',
      'Eggs per hen and day',
      'share',
      layFormulas.henDay,
      share,
      curveInputs,
      options,
    ),
    dailySeries(
      'eggs-day',
      'Eggs in the day',
      'eggs',
      layFormulas.eggs,
      eggs,
      [
        { label: 'Birds alive', symbol: 'N', series: 'alive' },
        { label: 'Eggs per hen and day', symbol: 'y', series: 'hen-day' },
      ],
      flock,
    ),
  ];
  const weeks: LayWeek[] = [];
  for (let i = firstDay; i + 7 <= life.days; i += 7) {
    const laid = sum(eggs, i, i + 7);
    const midWeek = (life.arrivalAgeDays + i + 3) / 7;
    weeks.push({
      from: dateOf(i),
      ageWeeks: Math.floor((life.arrivalAgeDays + i) / 7),
      eggs: quantity(
        'Eggs in the week',
        laid,
        'eggs',
        layFormulas.eggs,
        [
          input('Hens', life.alive.female[i]!, 'count', 'N'),
          input('Eggs per hen and day, mid-week', henDayShare(curve, midWeek), 'share', 'y'),
          input('Egg weight', eggWeightG(curve, midWeek), 'g'),
        ],
        flock,
      ),
      feed: quantity(
        'Feed in the week',
        sum(feed.flockFeedKg, i, i + 7),
        'kg',
        layFormulas.layerEnergy,
        [
          input('Hens', life.alive.female[i]!, 'count', 'N'),
          input('Weight of a hen', life.weightKg.female[i]!, 'kg', 'W'),
          input(
            'Egg mass a day, mid-week',
            henDayShare(curve, midWeek) * eggWeightG(curve, midWeek),
            'g',
            'EE',
          ),
          input('Energy of the feed', life.program.phases.at(-1)!.energyKcalPerKg, 'ratio'),
          input('Waste', life.wasteShare, 'share'),
        ],
        { rows: [...fed.rows, life.program] },
      ),
    });
  }
  const allEggs = sum(eggs, firstDay, life.days);
  const layFeed = sum(feed.flockFeedKg, firstDay, life.days);
  const hens = life.alive.female[firstDay]!;
  const peakShare = Math.max(...share);
  const part: LayingPart = {
    firstEgg: datedFact(
      'First eggs',
      dateOf(firstDay),
      layingFormulas.firstEgg,
      [
        input('Hatch', addDays(batch.arrivalDate, -life.arrivalAgeDays), 'date'),
        input('Age', life.firstEggAgeDays, 'day'),
      ],
      options,
    ),
    ageAtFirstEgg: quantity(
      'Age at first egg',
      life.firstEggAgeDays,
      'day',
      layingFormulas.firstEgg,
      [input('Start of the lay curve, weeks', curve.firstEggWeek, 'ratio', 'd')],
      {
        ...options,
        spread: {
          low: 7 * curve.firstEggWeekLow,
          high: 7 * curve.firstEggWeekHigh,
          because: `published ages run from ${curve.firstEggWeekLow} to ${curve.firstEggWeekHigh} weeks`,
        },
      },
    ),
    peak: quantity('Peak lay', peakShare, 'share', layFormulas.henDay, curveInputs, options),
    weeks,
    eggsInYear: quantity(
      'Eggs in the first laying year',
      allEggs,
      'eggs',
      layFormulas.eggs,
      [
        input('Hens at the first egg', hens, 'count'),
        input('Days of lay', life.days - firstDay, 'day'),
      ],
      flock,
    ),
    eggsPerHen: quantity(
      'Eggs per hen housed',
      allEggs / hens,
      'eggs',
      layFormulas.eggs,
      [input('Eggs in the year', allEggs, 'eggs'), input('Hens at the first egg', hens, 'count')],
      flock,
    ),
    feedPerDozen: quantity(
      'Feed per dozen eggs',
      layFeed / (allEggs / 12),
      'kg',
      layFormulas.feedPerDozen,
      [input('Feed of the laying year', layFeed, 'kg', 'F'), input('Eggs', allEggs, 'eggs', 'E')],
      { rows: [...fed.rows, layFormulas.layerEnergy] },
    ),
    feedToFirstEgg: quantity(
      'Feed per pullet to the first egg',
      sum(feed.flockFeedKg, 0, firstDay) / life.aliveAll[firstDay]!,
      'kg',
      plainFormulas.perBird,
      [
        input('Feed of the flock', sum(feed.flockFeedKg, 0, firstDay), 'kg'),
        input('Birds', life.aliveAll[firstDay]!, 'count'),
      ],
      { rows: [...life.feedRows, life.losses] },
    ),
    light: lightSteps(context),
  };
  return found(part, { series });
}

/** Lamp hours by week from 16 weeks of age, one row wherever they change by half an hour. */
function lightSteps({ life, tables, farm, dateOf, batch }: PlanContext): LightStep[] {
  const { light } = tables;
  const start = light.startAgeDays - life.arrivalAgeDays;
  const steps: LightStep[] = [];
  let wantedH: number | undefined;
  let lastAdd: number | undefined;
  for (let i = start; i < life.days; i += 7) {
    const date = addDays(batch.arrivalDate, i);
    const naturalH = dayLengthH({ latitudeDeg: farm.latitudeDeg, dayOfYear: dayOfYear(date) });
    // Start from the natural day, then lengthen; light for hens must not get shorter.
    wantedH = Math.max(
      wantedH === undefined
        ? Math.min(naturalH, light.targetH)
        : Math.min(light.targetH, wantedH + light.risePerWeekH),
      Math.min(naturalH, light.targetH),
    );
    const add = Math.round(Math.max(0, wantedH - naturalH) * 2) / 2;
    if (add === lastAdd) continue;
    lastAdd = add;
    steps.push({
      from: dateOf(i),
      wanted: quantity(
        'Light wanted',
        wantedH,
        'h',
        layingFormulas.lampHours,
        [
          input('Age', life.arrivalAgeDays + i, 'day'),
          fromTable(light, 'Final', light.targetH, 'h'),
        ],
        wantedH < light.targetH
          ? {}
          : {
              spread: {
                low: light.low,
                high: light.high,
                because: 'sources hold lay with 14 to 16 hours',
              },
            },
      ),
      natural: quantity('Natural day', naturalH, 'h', dayLengthFormulas.dayLength, [
        input('Latitude', `${farm.latitudeDeg}°`, 'text', 'φ'),
        input('Date', date, 'date'),
      ]),
      add: quantity('Lamp hours to add', add, 'h', layingFormulas.lampHours, [
        fromTable(light, 'Light wanted', wantedH, 'h', 'L_wanted'),
        input('Natural day', naturalH, 'h', 'N'),
      ]),
    });
  }
  return steps;
}

function sum(values: ArrayLike<number>, from: number, to: number): number {
  let total = 0;
  for (let i = from; i < to; i++) total += values[i]!;
  return total;
}
