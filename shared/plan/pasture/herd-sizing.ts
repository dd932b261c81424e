import {
  from,
  fromJudgement,
  fromTable,
  givenOrTable,
  input,
  quantity,
  type QuantityInput,
  type NumberQuantity,
} from '../../explain/quantity.js';
import { paddockAreaM2, paddocksFor, sizingFormulas } from '../../pasture/sizing.js';
import { formulaOfEquation, intakeFormulas, intakeKg } from '../../pasture/intake.js';
import { cowDay } from '../../pasture/cow-day.js';
import { dueOf, type HerdDays } from '../../pasture/herd-demand.js';
import { groupsOf, type PlannedGroup } from '../../pasture/named-cows.js';
import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { rowById } from '../../tables/tables.js';
import { cattleHeatStress } from './cattle-heat-stress.js';
import type { PastureContext } from './pasture-context.js';
import { herdWater, type HerdWater } from './herd-water.js';
import { needRows } from './pasture-support.js';
import { found, type Found } from '../found.js';
import type { SeasonBooks } from '../../pasture/season-books.js';
import { tooFewPaddocks } from './too-few-paddocks.js';

/** Sizes for one herd: need, water, paddocks. */
export interface HerdSizing extends HerdWater {
  readonly herdId: string;
  readonly head: NumberQuantity;
  /** Dry matter of one animal of each class, by its published equation. */
  readonly each: readonly NumberQuantity[];
  readonly demand: NumberQuantity;
  readonly shareOfWeight: NumberQuantity;
  readonly animalUnits: NumberQuantity;
  readonly paddocks: NumberQuantity;
  readonly paddockArea: NumberQuantity;
  readonly heat?: NumberQuantity;
}

/** What one herd eats and drinks, and the paddocks its stays ask for. */
export function herdSizing(
  context: PastureContext,
  h: number,
  { stays }: Pick<SeasonBooks, 'stays'>,
): Found<HerdSizing> {
  const { tables, span, weather, choices, grass, dateOf } = context;
  const herd = context.herds[h]!;
  const { pasture } = tables;
  const days = context.herdDays[h]!;
  let busy = span.from;
  let hottest = -Infinity;
  for (let i = span.from; i < span.to; i++) {
    if (days.demandKg[busy]! < days.demandKg[i]!) busy = i;
    if (0 < days.head[i]!)
      hottest = Math.max(hottest, context.climate.hotMaxC[weather.dayOfYear[i]! - 1]!);
  }
  const calves = days.calfLiveKg[busy] === 0 ? [] : [tables.cattle.calfWeight];
  const need = { rows: [...needRows({ ...context, herds: [herd] }), ...calves] };
  const demand = quantity(
    'Dry matter a day, at most',
    days.demandKg[busy]!,
    'kg',
    intakeFormulas.demand,
    [
      input('Head', days.head[busy]!, 'count'),
      ...liveOf(days, busy),
      input('Energy of what it eats, Mcal/kg', context.energyMcalPerKg[busy]!, 'ratio', 'NE'),
      input('On', dateOf(busy), 'date'),
    ],
    need,
  );
  const water = herdWater(context, h);
  const stay = herd.longestStayDays ?? tables.pasture.longestStayDays.value;
  const rest = grass.swards.reduce(
    (most, { forage }) => Math.max(most, forage.restDays.hot * (choices.restFactor ?? 1)),
    0,
  );
  const isThere = days.head.some((head) => 0 < head);
  const { utilisation } = pasture;
  const share = utilisation.byStayDays[Math.min(stay, 7) - 1]!;
  const restRows = grass.swards.map(({ forage }) => forage.restDays);
  const stayInput = givenOrTable(
    herd.longestStayDays !== undefined,
    pasture.longestStayDays,
    ...(['Stay', stay, 'day'] as const),
  );
  const available = meanAvailable(context);
  const areaFor = (harvestShare: number): number =>
    available === 0
      ? 0
      : paddockAreaM2({
          demandKgPerDay: demand.value,
          days: stay,
          availableKgPerHa: available,
          harvestShare,
        });
  const heat = cattleHeatStress(tables, hottest);
  const part: HerdSizing = {
    herdId: herd.id,
    head: quantity('Head, at most', Math.max(...days.head), 'count', intakeFormulas.animalUnits, [
      input('Classes', groupsOf(herd).length, 'count'),
    ]),
    each: herd.groups.map((group) => intakeOfOne(context, group, dateOf(busy))),
    demand,
    shareOfWeight: quantity(
      'By the share of body weight',
      days.shareOfWeightKg[busy]!,
      'kg',
      intakeFormulas.share,
      liveOf(days, busy),
      {
        rows: [
          ...need.rows,
          ...herd.groups.map(
            ({ classId }) => rowById(tables.cattle.classes, classId).bodyWeightShare,
          ),
        ],
      },
    ),
    animalUnits: quantity(
      'Animal units',
      days.animalUnits[busy]!,
      'ratio',
      intakeFormulas.animalUnits,
      liveOf(days, busy),
      {
        ...need,
        spread: {
          low: days.animalUnits[busy]! * tables.cattle.animalUnits.metabolicShare,
          high: days.animalUnits[busy]!,
          because: tables.cattle.animalUnits.because,
        },
      },
    ),
    ...water.part,
    paddocks: quantity(
      'Paddocks for the longest rest',
      paddocksFor(rest, stay),
      'count',
      sizingFormulas.paddocks,
      [input('Longest rest', rest, 'day'), stayInput],
      { rows: restRows },
    ),
    paddockArea: quantity(
      'Size of each',
      areaFor(share),
      'ha',
      sizingFormulas.area,
      [
        from(demand, 'F'),
        stayInput,
        input('Grass above the residual at entry', available, 'kgPerHa'),
        fromTable(utilisation, 'Share eaten', share, 'share', 'u'),
      ],
      {
        rows: [context.growth],
        spread: {
          low: areaFor(share + utilisation.high),
          high: areaFor(share + utilisation.low),
          because: utilisation.because,
        },
      },
    ),
    ...(heat ? { heat } : {}),
  };
  // Where there is no grass for it, more paddocks are no help.
  const grazes = stays.some((each) => each.herd === h);
  const tooFew = grazes ? tooFewPaddocks(context, herd, { restDays: rest, stayDays: stay }) : [];
  return found(part, {
    issues: isThere ? [...water.issues, ...tooFew] : [],
    cautions: heat ? ['cattle-heat'] : [],
  });
}

/** Dry matter of one animal of a group on a day, opened to its equation. */
function intakeOfOne(
  { tables, energyMcalPerKg, paddocks, span }: PastureContext,
  group: PlannedGroup,
  date: PlainDate,
): NumberQuantity {
  const { of, milkKg, weekOfLactation } = cowDay(
    group,
    dueOf(group, tables)?.due,
    { date, typedOn: addDays(span.first, span.from) },
    tables,
  );
  const weightKg = group.weightKg ?? of.weightKg;
  const share = of.bodyWeightShare;
  const energy = energyMcalPerKg[daysBetween(span.first, date)]!;
  const { midLactationWeeks } = tables.judgements.grass;
  return quantity(
    group.cow ? `${group.cow.name} a day` : `One ${of.name.toLowerCase()} a day`,
    intakeKg(of, {
      ...{ weightKg, milkKg, energyMcalPerKg: energy },
      weekOfLactation,
    }),
    'kg',
    formulaOfEquation(of.equation),
    [
      givenOrTable(
        group.weightKg !== undefined,
        of.usual,
        ...(['Live weight', weightKg, 'kg', 'BW'] as const),
      ),
      ...(0 < milkKg
        ? [givenOrTable(group.milkKgPerDay !== undefined, of.usual, 'Milk', milkKg, 'kg')]
        : []),
      ...(of.equation === 'nrc-dairy' ? [fromJudgement(midLactationWeeks)] : []),
      input('Energy of what it eats, Mcal/kg', energy, 'ratio', 'NE'),
      fromTable(share, 'Share of body weight, the plain rule', share.value, 'share', 's'),
    ],
    {
      rows: paddocks.map(({ forageId }) => rowById(tables.forages, forageId).energyMcalPerKg),
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

/** Live weight of the cattle that are counted, which needs go by, and of the calves at their feet. */
const liveOf = ({ liveKg, calfLiveKg }: HerdDays, day: number): readonly QuantityInput[] => [
  input('Live weight', liveKg[day]! - calfLiveKg[day]!, 'kg', 'BW'),
  ...(calfLiveKg[day] === 0 ? [] : [input('Calves at foot weigh', calfLiveKg[day]!, 'kg')]),
];
