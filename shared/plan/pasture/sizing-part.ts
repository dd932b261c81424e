import { from, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import {
  carryingCapacity,
  paddockAreaM2,
  paddocksFor,
  perHectare,
  longSideM,
  rectangleFenceM,
  sizingFormulas,
  splitFenceM,
} from '../../pasture/sizing.js';
import { cattleWaterFormulas, tankL } from '../../pasture/cattle-water.js';
import { formulaOfEquation, intakeFormulas, intakeKg } from '../../pasture/intake.js';
import { classOn, dueOf, MID_LACTATION_WEEKS } from '../../pasture/herd-demand.js';
import type { PlainDate } from '../../calendar/plain-date.js';
import type { CattleGroup } from '../../farm/herd.js';
import { cattleHeatFormulas, temperatureHumidityIndex } from '../../pasture/cattle-heat.js';
import { issue } from '../../problems/plan-issue.js';
import type { PastureContext } from './pasture-context.js';

/** Sizes for one herd: need, water, paddocks. */
export interface HerdSizing {
  readonly herdId: string;
  readonly head: NumberQuantity;
  /** Dry matter of one animal of each class, by its published equation. */
  readonly each: readonly NumberQuantity[];
  readonly demand: NumberQuantity;
  readonly shareOfWeight: NumberQuantity;
  readonly animalUnits: NumberQuantity;
  readonly water: NumberQuantity;
  readonly tank: NumberQuantity;
  readonly troughEdge: NumberQuantity;
  readonly paddocks: NumberQuantity;
  readonly paddockArea: NumberQuantity;
  readonly heat?: NumberQuantity;
}

export interface SizingPart {
  readonly herds: readonly HerdSizing[];
  readonly stockingRate: NumberQuantity;
  readonly capacity: NumberQuantity;
  readonly fence: NumberQuantity;
  readonly split: NumberQuantity;
  readonly lane: NumberQuantity;
  readonly energiser: NumberQuantity;
  readonly shade: NumberQuantity;
}

/** Air humidity taken on a hot afternoon, where none is measured. */
const HOT_HUMIDITY = 0.5;
const REFILL_H = 4;
/** Shape of a paddock where none is drawn: twice as long as wide. */
const LONG_TO_SHORT = 2;

/** Paddock numbers and sizes, stocking rate, water, fence: the arithmetic of the whole land. */
export function planSizing(context: PastureContext): SizingPart {
  const { herdDays, span, areaM2, tables, grass } = context;
  const at = busiestDay(context);
  const liveKg = herdDays.reduce((sum, d) => sum + d.liveKg[at]!, 0);
  const demandKg = herdDays.reduce((sum, d) => sum + d.demandKg[at]!, 0);
  const head = herdDays.reduce((sum, d) => sum + d.head[at]!, 0);
  const stay = tables.pasture.longestStayDays.value;
  const share = tables.pasture.utilisation.byStayDays[stay - 1]!;
  let growthKg = 0;
  for (const { tableGrowth, weatherShare, paddock } of grass.swards) {
    let perHa = 0;
    for (let i = span.from; i < span.to; i++) perHa += tableGrowth[i]! * weatherShare[i]!;
    growthKg += (perHa * paddock.areaM2) / 10_000;
  }
  growthKg *= grass.farmFactor;
  const days = span.to - span.from;
  const each = head === 0 ? 0 : demandKg / head;
  const capacity = quantity(
    'Head the land carries in the plan',
    each === 0
      ? 0
      : carryingCapacity({
          areaM2,
          growthKgPerHa: perHectare(growthKg, areaM2),
          harvestShare: share,
          intakeKgPerDay: each,
          seasonDays: days,
        }),
    'count',
    sizingFormulas.capacity,
    [
      input('Growth of all paddocks', growthKg, 'kg'),
      input('Share eaten', share, 'share', 'u'),
      input('One animal a day', each, 'kg'),
      input('Days', days, 'day'),
    ],
    { mark: 'from-memory' },
  );
  warnIfMoreThanGrows(context, { head, carried: Math.floor(capacity.value) });
  const { energiserJPerKm, shadeM2PerHead } = tables.fence;
  const fenceM = context.paddocks.reduce((m, p) => m + rectangleFenceM(p.areaM2, LONG_TO_SHORT), 0);
  const mean = areaM2 / Math.max(1, grass.swards.length);
  const lane = tables.fence.laneWidthM;
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
      (fenceM / 1000) * energiserJPerKm.value,
      'J',
      sizingFormulas.energiser,
      [
        input('Fence, each paddock by itself', fenceM, 'm'),
        input('A kilometre', energiserJPerKm.value, 'J'),
        input(
          'Ground rods for it, in all',
          (fenceM / 1000) * energiserJPerKm.value * tables.fence.groundRodMPerJ.value,
          'm',
        ),
      ],
      {
        spread: {
          low: (fenceM / 1000) * energiserJPerKm.value,
          high: (4 * fenceM * energiserJPerKm.value) / 1000,
          because: energiserJPerKm.because,
        },
      },
    ),
    shade: quantity(
      'Shade for all of them',
      head * shadeM2PerHead.value,
      'm2',
      sizingFormulas.shade,
      [input('Head', head, 'count'), input('Each', shadeM2PerHead.value, 'm2')],
      {
        mark: shadeM2PerHead.mark,
        spread: {
          low: head * shadeM2PerHead.low,
          high: head * shadeM2PerHead.high,
          because: 'from temporary need to mature cows',
        },
      },
    ),
    herds: context.herds.map((_, h) => herdSizing(context, h)),
    stockingRate: quantity(
      'Stocking rate',
      perHectare(liveKg, areaM2),
      'kgPerHa',
      sizingFormulas.stockingRate,
      [input('Live weight', liveKg, 'kg'), input('All paddocks', areaM2, 'ha')],
    ),
    capacity,
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

/** Says by how much the need of the growing season passes all that could be eaten in it. */
function warnIfMoreThanGrows(
  { herdDays, span, tables, grass, say, issues }: PastureContext,
  { head, carried }: { head: number; carried: number },
): void {
  const share = Math.max(...tables.pasture.utilisation.byStayDays);
  let grownKg = 0;
  let standingKg = 0;
  const grows = new Uint8Array(span.days);
  for (const { sward, tableGrowth, weatherShare } of grass.swards) {
    standingKg += Math.max(0, sward.startKgPerHa - sward.residualKgPerHa) * sward.areaHa;
    for (let i = span.from; i < span.to; i++) {
      const kgPerHa = tableGrowth[i]! * weatherShare[i]! * grass.farmFactor;
      grownKg += kgPerHa * sward.areaHa;
      if (GROWS_KG_PER_HA <= kgPerHa) grows[i] = 1;
    }
  }
  let needKg = 0;
  for (const days of herdDays) {
    for (let i = span.from; i < span.to; i++) if (grows[i] === 1) needKg += days.demandKg[i]!;
  }
  const eatenKg = share * (grownKg + standingKg);
  if (needKg <= eatenKg) return;
  issues.push(
    issue(
      'stop',
      'more-than-grows',
      `While the grass grows the herds need ${say(needKg, 'kg')} of dry matter, but all paddocks together grow about ${say(grownKg + standingKg, 'kg')}, what stands now included, of which at best ${Math.round(share * 100)} % is eaten: ${say(needKg - eatenKg, 'kg')} too little in any order of moves. The land carries about ${carried} of ${head} head in the plan. Take head off, add land, or feed hay for it.`,
    ),
  );
}

/** Growth of a day that counts as growing season, kg/ha. */
const GROWS_KG_PER_HA = 5;

/** Day on which the herds together need most. */
function busiestDay({ herdDays, span }: PastureContext): number {
  let best = span.from;
  const need = (i: number): number => herdDays.reduce((sum, d) => sum + d.demandKg[i]!, 0);
  for (let i = span.from; i < span.to; i++) if (need(best) < need(i)) best = i;
  return best;
}

function herdSizing(context: PastureContext, h: number): HerdSizing {
  const { tables, span, weather, choices, grass, dateOf } = context;
  const herd = context.herds[h]!;
  const days = context.herdDays[h]!;
  let busy = span.from;
  let thirsty = span.from;
  let hottest = -Infinity;
  for (let i = span.from; i < span.to; i++) {
    if (days.demandKg[busy]! < days.demandKg[i]!) busy = i;
    if (days.waterL[thirsty]! < days.waterL[i]!) thirsty = i;
    if (0 < days.head[i]!)
      hottest = Math.max(hottest, context.climate.hotMaxC[weather.dayOfYear[i]! - 1]!);
  }
  const demand = quantity(
    'Dry matter a day, at most',
    days.demandKg[busy]!,
    'kg',
    intakeFormulas.demand,
    [
      input('Head', days.head[busy]!, 'count'),
      input('Live weight', days.liveKg[busy]!, 'kg'),
      input('Energy of the grass, Mcal/kg', context.energyMcalPerKg, 'ratio', 'NE'),
      input('On', dateOf(busy), 'date'),
    ],
  );
  const water = quantity(
    'Water a day, at most',
    days.waterL[thirsty]!,
    'L',
    cattleWaterFormulas.day,
    [
      input('Head', days.head[thirsty]!, 'count'),
      input('On', dateOf(thirsty), 'date'),
      input(
        'Mean air temperature',
        (weather.expected.minC[thirsty]! + weather.expected.maxC[thirsty]!) / 2,
        'degC',
        'T',
      ),
    ],
  );
  const refillH = choices.refillH ?? REFILL_H;
  const stay = herd.longestStayDays ?? tables.pasture.longestStayDays.value;
  const rest = grass.swards.reduce(
    (most, { forage }) => Math.max(most, forage.restDays.hot * (choices.restFactor ?? 1)),
    0,
  );
  const share = tables.pasture.utilisation.byStayDays[Math.min(stay, 7) - 1]!;
  const available = meanAvailable(context);
  const thi = temperatureHumidityIndex(hottest, HOT_HUMIDITY);
  if (tables.cattleHeat.moderateFrom <= thi) context.cautions.add('cattle-heat');
  return {
    herdId: herd.id,
    head: quantity('Head, at most', Math.max(...days.head), 'count', intakeFormulas.animalUnits, [
      input('Classes', herd.groups.length, 'count'),
    ]),
    each: herd.groups.map((group) => intakeOfOne(context, group, dateOf(busy))),
    demand,
    shareOfWeight: quantity(
      'By the share of body weight',
      days.shareOfWeightKg[busy]!,
      'kg',
      intakeFormulas.share,
      [input('Live weight', days.liveKg[busy]!, 'kg', 'BW')],
    ),
    animalUnits: quantity(
      'Animal units',
      days.animalUnits[busy]!,
      'ratio',
      intakeFormulas.animalUnits,
      [input('Live weight', days.liveKg[busy]!, 'kg', 'BW')],
      {
        spread: {
          low: days.animalUnits[busy]! * 0.92,
          high: days.animalUnits[busy]!,
          because: tables.cattle.animalUnits.because,
        },
      },
    ),
    water,
    tank: quantity(
      'Smallest tank',
      tankL(tables.cattleWater, {
        head: days.head[thirsty]!,
        litresPerDay: water.value,
        refillH,
      }),
      'L',
      cattleWaterFormulas.tank,
      [from(water, 'V'), input('Refill for a day’s water', refillH, 'h')],
    ),
    troughEdge: quantity(
      'Trough edge',
      (days.head[thirsty]! / tables.cattleWater.troughEdgeM.per) * tables.cattleWater.troughEdgeM.m,
      'm',
      cattleWaterFormulas.edge,
      [
        input('Head', days.head[thirsty]!, 'count'),
        input('Head that share it', tables.cattleWater.troughEdgeM.per, 'count'),
        input('For that many', tables.cattleWater.troughEdgeM.m, 'm'),
      ],
    ),
    paddocks: quantity(
      'Paddocks for the longest rest',
      paddocksFor(rest, stay),
      'count',
      sizingFormulas.paddocks,
      [input('Longest rest', rest, 'day'), input('Stay', stay, 'day')],
    ),
    paddockArea: quantity(
      'Size of each',
      available === 0
        ? 0
        : paddockAreaM2({
            demandKgPerDay: demand.value,
            days: stay,
            availableKgPerHa: available,
            harvestShare: share,
          }),
      'ha',
      sizingFormulas.area,
      [
        from(demand, 'F'),
        input('Stay', stay, 'day'),
        input('Grass above the residual at turn-in', available, 'kgPerHa'),
        input('Share eaten', share, 'share', 'u'),
      ],
    ),
    ...(tables.cattleHeat.moderateFrom <= thi
      ? {
          heat: quantity(
            'Index on a hot day',
            thi,
            'ratio',
            cattleHeatFormulas.thi,
            [
              input('Hot day', hottest, 'degC', 'T'),
              input('Humidity taken', HOT_HUMIDITY, 'share', 'RH'),
            ],
            { mark: 'estimate' },
          ),
        }
      : {}),
  };
}

/** Dry matter of one animal of a group on a day, opened to its equation. */
function intakeOfOne(
  { tables, energyMcalPerKg }: PastureContext,
  group: CattleGroup,
  date: PlainDate,
): NumberQuantity {
  const of = classOn(group, dueOf(group, tables)?.due, date, tables.cattle.classes);
  const weightKg = group.weightKg ?? of.weightKg;
  const milkKg = of.milkKgPerDay === 0 ? 0 : (group.milkKgPerDay ?? of.milkKgPerDay);
  const share = of.bodyWeightShare;
  return quantity(
    `One ${of.name.toLowerCase()} a day`,
    intakeKg(of, { weightKg, milkKg, energyMcalPerKg, weekOfLactation: MID_LACTATION_WEEKS }),
    'kg',
    formulaOfEquation(of.equation),
    [
      input('Live weight', weightKg, 'kg', 'BW'),
      ...(0 < milkKg ? [input('Milk', milkKg, 'kg')] : []),
      input('Energy of the grass, Mcal/kg', energyMcalPerKg, 'ratio', 'NE'),
      input('Share of body weight, the plain rule', share.value, 'share', 's'),
    ],
    {
      ...(of.equation === 'share' ? { sources: share.sources, mark: share.mark } : {}),
      spread: {
        low: share.low * weightKg,
        high: share.high * weightKg,
        because: 'the usual shares of body weight for that class',
      },
    },
  );
}

function meanAvailable({ grass, areaM2 }: PastureContext): number {
  const sum = grass.swards.reduce(
    (kg, { sward, paddock }) => kg + (sward.turnInKgPerHa - sward.residualKgPerHa) * paddock.areaM2,
    0,
  );
  return areaM2 === 0 ? 0 : sum / areaM2;
}
