import { addDays, type PlainDate } from '../calendar/plain-date.js';
import { dailySeries } from '../explain/daily-series.js';
import { weakestMark, type Formula } from '../explain/formula.js';
import {
  datedFact,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { facilityOf } from '../farm/facility.js';
import { bagsFor } from '../money/money.js';

import {
  eggWeightG,
  henDayShare,
  layerEnergyKcal2005,
  layerEnergyKcalNrc1994,
  layFormulas,
} from '../poultry/lay.js';
import { waterByAgeL, waterFormulas, waterHeatFactor } from '../poultry/water.js';
import { issue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';

export const feedFormulas = {
  phaseTotal: {
    id: 'feed-of-phase',
    title: 'Feed of one phase',
    words: 'Feed of the flock summed over the days of the phase, waste included.',
    symbols: 'F = Σ N(t)·F_day(t)',
    sources: [],
    mark: 'computed',
  },
  flockDay: {
    id: 'flock-feed-day',
    title: 'Feed of the flock in a day',
    words:
      'Growing birds: the step of the table’s cumulative feed, times the feed factor, plus waste, times the birds alive. Hens in lay: their energy needs divided by the energy of the feed, plus waste.',
    symbols: 'F = N·[F(t + 1) − F(t)]·f_feed·(1 + waste)',
    sources: [],
    mark: 'computed',
  },
  bags: {
    id: 'feed-bags',
    title: 'Whole bags',
    words:
      'Running total of the product divided by the weight of a bag, rounded up once, less the bags bought before.',
    symbols: 'b = ⌈F_total ÷ bag⌉ − b_before',
    sources: ['FLOOR_PLAN'],
    mark: 'computed',
  },
  phaseStart: {
    id: 'feed-phase-start',
    title: 'First day of a feed phase',
    words:
      'Hatch date plus the age at which the feeding programme starts the phase. Mix old and new over a few days.',
    symbols: 'D = hatch + age',
    sources: [],
    mark: 'computed',
  },
  buyBy: {
    id: 'feed-buy-by',
    title: 'Buy by',
    words: 'First day the delivery is fed, less five days in hand.',
    symbols: 'D = first use − 5 days',
    sources: ['FEED_KEEPING'],
    mark: 'common-practice',
  },
} satisfies Record<string, Formula>;

/** Weight of a bag when none is given: 50 lb. */
export const DEFAULT_BAG_KG = 22.68;

export interface FeedDelivery {
  readonly buyBy: Quantity;
  readonly firstUse: PlainDate;
  readonly lastUse: PlainDate;
  readonly bags: NumberQuantity;
}

export interface FeedPhasePart {
  readonly phaseId: string;
  readonly name: string;
  readonly protein: string;
  readonly starts: Quantity;
  readonly lastDay: PlainDate;
  readonly totalKg: NumberQuantity;
  readonly bags: NumberQuantity;
  readonly deliveries: readonly FeedDelivery[];
}

export interface FeedPart {
  readonly phases: readonly FeedPhasePart[];
  readonly total: NumberQuantity;
  readonly perBird: NumberQuantity;
  readonly bagKg: number;
  readonly peakWater: NumberQuantity;
  /** Flock feed by day after arrival. */
  readonly flockFeedKg: Float64Array;
}

export function planFeed(context: PlanContext): FeedPart {
  const { life, batch, series, phases } = context;
  const bagKg = batch.bagKg ?? DEFAULT_BAG_KG;
  const flockFeedKg = withLay(context);
  const factorInputs = [
    input('Growth table', life.growthTable.name, 'text'),
    input('Feed factor', life.feedFactor, 'ratio', 'f_feed'),
    input('Waste', life.wasteShare, 'share'),
  ];
  const feedOptions = {
    sources: [
      ...life.growthTable.sources,
      ...(life.growthTable.feedModel?.sources ?? []),
      ...(batch.feedFactor === undefined ? life.strain.factorSources : []),
      ...(life.layCurve ? layFormulas.layerEnergy.sources : []),
    ],
    mark: weakestMark(
      'computed',
      life.growthTable.mark,
      batch.feedFactor === undefined ? life.strain.factorMark : 'computed',
    ),
  };
  const cumulative = new Float64Array(life.days);
  let sum = 0;
  flockFeedKg.forEach((kg, i) => (cumulative[i] = sum += kg));
  series.push(
    dailySeries(
      'feed-day',
      'Feed of the flock in the day',
      'kg',
      feedFormulas.flockDay,
      flockFeedKg,
      [...factorInputs, { label: 'Birds alive', symbol: 'N', series: 'alive' }],
      feedOptions,
    ),
    dailySeries(
      'feed-total',
      'Feed since arrival',
      'kg',
      feedFormulas.phaseTotal,
      cumulative,
      [{ label: 'Feed in the day', series: 'feed-day' }],
      feedOptions,
    ),
  );
  const peakWater = planWater(context);
  const parts = phases.map((dated): FeedPhasePart => {
    const from = dated.fromAgeDays - life.arrivalAgeDays;
    const to = dated.toAgeDays - life.arrivalAgeDays;
    const totalKg = sumOf(flockFeedKg, from, to);
    const { phase } = dated;
    const isLow = phase.proteinPercentLow === phase.proteinPercentHigh;
    return {
      phaseId: phase.id,
      name: phase.name,
      protein: `${isLow ? phase.proteinPercentLow : `${phase.proteinPercentLow}–${phase.proteinPercentHigh}`} % protein${phase.calciumPercent ? `, ${phase.calciumPercent} % calcium` : ''}`,
      starts: datedFact(
        `${phase.name} from`,
        context.dateOf(from),
        feedFormulas.phaseStart,
        [input('Age', dated.fromAgeDays, 'day'), input('Programme', life.programme.name, 'text')],
        { sources: life.programme.sources, mark: life.programme.mark },
      ),
      lastDay: context.dateOf(to - 1),
      totalKg: quantity(
        `${phase.name} in total`,
        totalKg,
        'kg',
        feedFormulas.phaseTotal,
        factorInputs,
        feedOptions,
      ),
      bags: quantity(
        `${phase.name} bags`,
        bagsFor(totalKg, bagKg),
        'bags',
        feedFormulas.bags,
        [input('Feed', totalKg, 'kg', 'F'), input('One bag', bagKg, 'kg')],
        { sources: ['FLOOR_PLAN'] },
      ),
      deliveries: deliveriesOf(context, flockFeedKg, { from, to, name: phase.name }, bagKg),
    };
  });
  const total = quantity(
    'Feed for the whole batch',
    sum,
    'kg',
    feedFormulas.phaseTotal,
    factorInputs,
    feedOptions,
  );
  const endBirds = life.aliveAll[life.days - 1]!;
  if (batch.medicatedWithdrawalDays !== undefined || batch.purpose === 'layers')
    context.cautions.add('medicated');
  if (batch.purpose === 'layers') context.cautions.add('calcium');
  return {
    phases: parts,
    total,
    perBird: quantity(
      'Feed per bird leaving',
      sum / endBirds,
      'kg',
      feedFormulas.phaseTotal,
      [input('Feed for the batch', sum, 'kg'), input('Birds at the end', endBirds, 'count')],
      feedOptions,
    ),
    bagKg,
    peakWater,
    flockFeedKg,
  };
}

/** Air temperatures that the layer energy equation is read between, °C. */
const LAYER_AIR_C = { min: 10, max: 34 };

/** Growing feed up to the first egg, then the hens' feed by their energy needs. */
function withLay(context: PlanContext): Float64Array {
  const { life, weather } = context;
  if (!life.layCurve || life.firstEggAgeDays === undefined) return life.flockFeedKg;
  const flockFeedKg = Float64Array.from(life.flockFeedKg);
  const firstEggDay = life.firstEggAgeDays - life.arrivalAgeDays;
  const layer = life.programme.phases.at(-1)!;
  let outside = 0;
  let both = { nrc: 0, other: 0 };
  for (let i = firstEggDay; i < life.days; i++) {
    const ageWeeks = (life.arrivalAgeDays + i) / 7;
    const meanC = (weather.minC[i]! + weather.maxC[i]!) / 2;
    const airC = Math.min(LAYER_AIR_C.max, Math.max(LAYER_AIR_C.min, meanC));
    if (airC !== meanC) outside++;
    const hen = {
      weightKg: life.weightKg.female[i]!,
      gainGPerDay: Math.max(0, (life.weightKg.female[i]! - life.weightKg.female[i - 1]!) * 1000),
      eggMassGPerDay: henDayShare(life.layCurve, ageWeeks) * eggWeightG(life.layCurve, ageWeeks),
      airC,
    };
    const hens = life.alive.female[i]! * (1 + life.wasteShare) * life.feedFactor;
    const kg = layerEnergyKcalNrc1994(hen) / layer.energyKcalPerKg;
    both = {
      nrc: both.nrc + kg * hens,
      other: both.other + (layerEnergyKcal2005(hen) / layer.energyKcalPerKg) * hens,
    };
    flockFeedKg[i] = kg * hens;
  }
  if (0 < outside) {
    context.issues.push(
      issue(
        'note',
        'layer-feed-range',
        `On ${outside} days of lay the mean air is outside ${context.say(LAYER_AIR_C.min, 'degC')} to ${context.say(LAYER_AIR_C.max, 'degC')}, where the hens' energy equation is read; the nearest end is used. Hens in a cold coop eat more than shown.`,
      ),
    );
  }
  const other = Math.round((both.other / both.nrc - 1) * 100);
  context.issues.push(
    issue(
      'note',
      'layer-energy-spread',
      `Hens' feed is by the 1994 equation (from memory). An independent equation of 2005 gives ${other < 0 ? `${-other} % less` : `${other} % more`} over the laying year.`,
    ),
  );
  return flockFeedKg;
}

function planWater(context: PlanContext): NumberQuantity {
  const { life, batch, tables, weather, series } = context;
  const byAge = waterByAgeL(tables.water[batch.purpose]);
  const heat = tables.water.heat;
  const litres = new Float64Array(life.days);
  let peak = 0;
  for (let i = 0; i < life.days; i++) {
    litres[i] =
      life.aliveAll[i]! * byAge[life.arrivalAgeDays + i]! * waterHeatFactor(heat, weather.maxC[i]!);
    if (litres[peak]! < litres[i]!) peak = i;
  }
  series.push(
    dailySeries('water-day', 'Drinking water in the day', 'L', waterFormulas.water, litres, [
      { label: 'Birds alive', symbol: 'N', series: 'alive' },
      { label: 'Expected high', symbol: 'T', series: 'day-high' },
      input('Rise at 32 °C', heat.rise, 'share', 'r'),
    ]),
  );
  const hotC = weather.hotMaxC[peak]!;
  const cool = life.aliveAll[peak]! * byAge[life.arrivalAgeDays + peak]!;
  return quantity(
    'Most water in one day',
    litres[peak]!,
    'L',
    waterFormulas.water,
    [
      input('Birds alive', life.aliveAll[peak]!, 'count', 'N'),
      input('One bird at that age, cool', byAge[life.arrivalAgeDays + peak]! * 1000, 'mL', 'v'),
      input('Expected high', weather.maxC[peak]!, 'degC', 'T'),
      input('Date', context.dateOf(peak), 'date'),
    ],
    {
      spread: {
        low: cool * waterHeatFactor(heat, weather.maxC[peak]!, heat.riseLow),
        high: cool * waterHeatFactor(heat, hotC, heat.riseHigh),
        because: `${heat.because}; the high end is for a hot day`,
      },
    },
  );
}

/** Cuts a phase into deliveries that stay fresh and fit the store. */
function deliveriesOf(
  context: PlanContext,
  flockFeedKg: Float64Array,
  phase: { from: number; to: number; name: string },
  bagKg: number,
): FeedDelivery[] {
  const { tables, facilities, batch, dateOf } = context;
  const keep = tables.feedKeeping;
  const store = facilityOf(facilities, 'feed-store', batch.feedStoreId);
  const deliveries: FeedDelivery[] = [];
  let start = phase.from;
  let fedKg = 0;
  let bagsBefore = 0;
  while (start < phase.to) {
    let end = start;
    let kg = 0;
    while (end < phase.to && end - start < keep.maxDays) {
      const next = kg + flockFeedKg[end]!;
      if (store && start < end && store.capacityKg < next) break;
      kg = next;
      end++;
    }
    fedKg += kg;
    const bags = bagsFor(fedKg, bagKg) - bagsBefore;
    bagsBefore += bags;
    const firstUse = dateOf(start);
    if (0 < bags) {
      deliveries.push({
        buyBy: datedFact(
          `Buy ${phase.name} by`,
          addDays(firstUse, -keep.bagLeadDays),
          feedFormulas.buyBy,
          [
            input('First fed', firstUse, 'date'),
            input('In hand', keep.bagLeadDays, 'day'),
            input('Longest kept', keep.maxDays, 'day'),
            ...(store ? [input('Feed store holds', store.capacityKg, 'kg')] : []),
          ],
        ),
        firstUse,
        lastUse: dateOf(end - 1),
        bags: quantity(`${phase.name} bags`, bags, 'bags', feedFormulas.bags, [
          input('Fed from this delivery', kg, 'kg'),
          input('One bag', bagKg, 'kg'),
        ]),
      });
    }
    start = end;
  }
  if (store && store.capacityKg < bagKg) {
    context.issues.push(
      issue(
        'act',
        'store-too-small',
        `The feed store ${store.name} holds less than one bag. Find another dry place, or smaller bags.`,
      ),
    );
  }
  return deliveries;
}

function sumOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum;
}
