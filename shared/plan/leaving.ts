import { plainFormulas } from '../explain/plain-formulas.js';
import { addDays } from '../calendar/plain-date.js';
import {
  datedFact,
  from,
  fromFarm,
  fromTable,
  givenOrTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
  type Spread,
  weakestOf,
} from '../explain/quantity.js';
import type { Batch } from '../farm/batch.js';
import { facilityOf } from '../farm/facility.js';
import { growthFormulas } from '../poultry/growth.js';
import { chillingHours, processingFormulas } from '../poultry/processing.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { rowById } from '../tables/tables.js';
import type { Life } from './life.js';
import type { PlanContext } from './context.js';
import type { FeedPart } from './feed.js';
import { livingInputs, speedInputs, weighedSpread } from './weighed.js';
import { found, joined, type Findings, type Found } from './found.js';

export interface LeavingPart {
  readonly on: Quantity;
  readonly age: NumberQuantity;
  readonly birdsToProcess: number;
  readonly liveEach: NumberQuantity;
  readonly liveMale?: NumberQuantity;
  readonly liveFemale?: NumberQuantity;
  readonly liveAll: NumberQuantity;
  readonly dressedEach: NumberQuantity;
  readonly dressedDefinition: string;
  readonly dressedAll: NumberQuantity;
  readonly packedAll: NumberQuantity;
  readonly freezerNeed: NumberQuantity;
  readonly freezerFree?: NumberQuantity;
  readonly conversion: NumberQuantity;
  readonly feedOff: NumberQuantity;
  readonly feedOffAt: string;
  readonly ice: NumberQuantity;
  readonly chillHours: NumberQuantity;
}

/**
 * The day the birds leave: weights live, dressed and packed, the freezer room they take, feed
 * withdrawal, ice and chilling. Undefined for layers.
 */
export function planLeaving(context: PlanContext, feed: FeedPart): Found<LeavingPart | undefined> {
  const { batch, life } = context;
  if (batch.purpose !== 'meat') return found(undefined);
  const on = context.dateOf(life.days - 1);
  const live = liveWeights(context);
  const dressed = dressedWeights(context, live);
  const freezer = inTheFreezer(context, dressed.packedAll);
  const part: LeavingPart = {
    ...whenTheyLeave(context),
    ...live,
    ...dressed,
    ...freezer.part,
    conversion: quantity(
      'Feed conversion',
      feed.total.value / live.liveAll.value,
      'ratio',
      processingFormulas.conversion,
      [from(feed.total, 'F', 'Feed given'), from(live.liveAll)],
    ),
    ...processingDay(context, dressed),
  };
  return found(
    part,
    joined([
      { cautions: ['slaughter', 'chilling'] },
      hotDays(context),
      { issues: withdrawalShort(context, on) },
      freezer,
    ]),
  );
}

function whenTheyLeave({ batch, life, dateOf }: PlanContext): Pick<LeavingPart, 'on' | 'age'> {
  const age = ageInput(batch, life);
  return {
    on: datedFact('Processing', dateOf(life.days - 1), processingFormulas.leaveDate, [
      input('Hatch', addDays(batch.arrivalDate, -life.arrivalAgeDays), 'date'),
      age,
      ...(batch.targetLiveKg === undefined
        ? []
        : [fromFarm('Target live weight', batch.targetLiveKg, 'kg', 'W_target')]),
    ]),
    age: quantity('Age at processing', life.lastAgeDays, 'day', processingFormulas.leaveDate, [
      age,
    ]),
  };
}

/** Age at leaving: reached with the target weight, chosen, or what is usual for the strain. */
function ageInput({ targetLiveKg, leaveAgeDays }: Batch, life: Life): QuantityInput {
  const { lastAgeDays, strain } = life;
  const label = 'Age at leaving';
  if (targetLiveKg === undefined)
    return givenOrTable(leaveAgeDays !== undefined, strain.leave, label, lastAgeDays, 'day');
  const mark = weakestOf('computed', life.weightRows);
  return { ...input(label, lastAgeDays, 'day'), mark };
}

type LiveWeights = Pick<
  LeavingPart,
  'birdsToProcess' | 'liveEach' | 'liveMale' | 'liveFemale' | 'liveAll'
>;

function liveWeights(context: PlanContext): LiveWeights {
  const { batch, life } = context;
  const last = life.days - 1;
  // Expected survivors are a fraction; one bird placed is still one bird to process.
  const birds = Math.max(1, Math.floor(life.aliveAll[last]! + 1e-9));
  const options = { rows: life.weightRows };
  const weigh = (label: string, kg: number, spread?: Spread): NumberQuantity =>
    quantity(
      label,
      kg,
      'kg',
      WEIGHT,
      [
        input('Growth table', life.growthTable.name, 'text'),
        input('Age', life.lastAgeDays, 'day', 't'),
        input('Weight at hatch', life.hatchKg, 'kg', 'W₀'),
        input('Factor on weight', life.weightFactor, 'ratio', 'f'),
        ...livingInputs(context),
        ...speedInputs(life),
      ],
      { ...options, spread },
    );
  const liveEach = weigh('Live weight each', life.meanWeightKg[last]!, weighedSpread(life));
  return {
    birdsToProcess: birds,
    liveEach,
    ...(batch.sex === 'straight-run'
      ? {
          liveMale: weigh('Cockerel, live', life.weightKg.male[last]!),
          liveFemale: weigh('Pullet, live', life.weightKg.female[last]!),
        }
      : {}),
    liveAll: quantity('Live weight, all birds', liveEach.value * birds, 'kg', plainFormulas.times, [
      { ...input('Birds', birds, 'count', 'n'), mark: life.losses.mark },
      from(liveEach, 'a'),
    ]),
  };
}

type DressedWeights = Pick<
  LeavingPart,
  'dressedEach' | 'dressedDefinition' | 'dressedAll' | 'packedAll'
>;

function dressedWeights({ batch, life, tables }: PlanContext, live: LiveWeights): DressedWeights {
  const dressing = rowById(tables.processing.dressing, life.strain.dressing!);
  const { waterUptake } = tables.processing;
  const share = batch.dressingShare ?? dressing.share;
  const dressedEach = quantity(
    'Dressed weight each',
    live.liveEach.value * share,
    'kg',
    processingFormulas.dressed,
    [
      from(live.liveEach, 'W', 'Live weight'),
      givenOrTable(
        batch.dressingShare !== undefined,
        dressing,
        ...(['Dressing percentage', share, 'share', 'y'] as const),
      ),
      input('Definition', dressing.definition, 'text'),
    ],
    {
      spread: {
        low: live.liveEach.value * dressing.low,
        high: live.liveEach.value * dressing.high,
        because: 'sources differ by what is left in the carcass',
      },
    },
  );
  const dressedAll = quantity(
    'Dressed weight, all birds',
    dressedEach.value * live.birdsToProcess,
    'kg',
    plainFormulas.times,
    [
      { ...input('Birds', live.birdsToProcess, 'count', 'n'), mark: life.losses.mark },
      from(dressedEach, 'a'),
    ],
  );
  return {
    dressedEach,
    dressedDefinition: dressing.definition,
    dressedAll,
    packedAll: quantity(
      'Packed weight, all birds',
      dressedAll.value * (1 + waterUptake.share),
      'kg',
      processingFormulas.packed,
      [
        from(dressedAll, 'W_d', 'Dressed, all birds'),
        fromTable(waterUptake, 'Water kept', waterUptake.share, 'share', 'u'),
      ],
      {
        spread: {
          low: dressedAll.value * (1 + waterUptake.low),
          high: dressedAll.value * (1 + waterUptake.high),
          because: waterUptake.because ?? 'water differs',
        },
      },
    ),
  };
}

function inTheFreezer(
  context: PlanContext,
  packedAll: NumberQuantity,
): Found<Pick<LeavingPart, 'freezerNeed' | 'freezerFree'>> {
  const { packing } = context.tables.processing;
  const freezer = facilityOf(context.facilities, 'freezer', context.batch.freezerId);
  const freezerNeed = quantity(
    'Freezer room needed',
    packedAll.value / packing.kgPerL,
    'freezerL',
    processingFormulas.freezer,
    [
      from(packedAll, 'W_p', 'Packed, all birds'),
      fromTable(packing, 'A liter holds', packing.kgPerL, 'kgPerL', 'ρ'),
    ],
    {
      spread: {
        low: packedAll.value / packing.high,
        high: packedAll.value / packing.low,
        because: packing.because ?? 'packing differs',
      },
    },
  );
  if (!freezer) return found({ freezerNeed });
  const free = Math.max(0, freezer.liters - freezer.usedL);
  const issues: PlanIssue[] = [];
  if (free < freezerNeed.value) {
    issues.push(
      issue(
        'act',
        'freezer-full',
        `${freezer.name} has ${context.say(free, 'freezerL')} free; the batch needs about ${context.say(freezerNeed.value, 'freezerL')}. Sell or give some fresh, cut up the birds, or find more room before ${context.say(context.dateOf(context.life.days - 1), 'date')}.`,
      ),
    );
  }
  const freezerFree = quantity('Freezer room free', free, 'freezerL', plainFormulas.free, [
    fromFarm('Freezer', freezer.liters, 'freezerL'),
    fromFarm('Already taken', freezer.usedL, 'freezerL'),
  ]);
  return found({ freezerNeed, freezerFree }, { issues });
}

function processingDay(
  { life, tables, dateOf }: PlanContext,
  { dressedEach, dressedAll }: DressedWeights,
): Pick<LeavingPart, 'feedOff' | 'feedOffAt' | 'ice' | 'chillHours'> {
  const { withdrawalH, ice, chilling } = tables.processing;
  const startH = tables.judgements.birds.processingStartH.value;
  const on = dateOf(life.days - 1);
  const offHour = (24 + startH - withdrawalH.value) % 24;
  return {
    feedOff: quantity(
      'Hours without feed',
      withdrawalH.value,
      'h',
      processingFormulas.withdrawal,
      [fromTable(withdrawalH, 'Planned', withdrawalH.value, 'h', 'h')],
      {
        spread: {
          low: withdrawalH.low,
          high: withdrawalH.high,
          because: 'published advice runs from 8 to 12 hours',
        },
      },
    ),
    feedOffAt: `${addDays(on, withdrawalH.value > startH ? -1 : 0)} ${String(offHour).padStart(2, '0')}:00`,
    ice: quantity(
      'Ice',
      dressedAll.value * ice.share,
      'kg',
      processingFormulas.ice,
      [
        from(dressedAll, 'N·W_d', 'Dressed, all birds'),
        fromTable(ice, 'Share of it', ice.share, 'share'),
      ],
      {
        spread: {
          low: dressedAll.value * ice.low,
          high: dressedAll.value * ice.high,
          because: ice.because ?? 'common practice',
        },
      },
    ),
    chillHours: quantity(
      'Hours to chill below 4.4 °C (40 °F)',
      chillingHours(chilling.rows, dressedEach.value),
      'h',
      processingFormulas.chillBy,
      [
        from(dressedEach, 'W_d', 'Carcass'),
        fromTable(chilling, 'Chilled to', chilling.targetC, 'degC'),
      ],
    ),
  };
}

const WEIGHT = growthFormulas.weight;

/** Warns of hot days in the last two weeks, when the birds are heavy. */
function hotDays({ life, tables, weather, say }: PlanContext): Partial<Findings> {
  const heat = tables.heatStress;
  const from = Math.max(0, life.days - tables.judgements.arrival.lastHotDays.value);
  const hottest = Math.max(...weather.hotMaxC.subarray(from));
  if (hottest < heat.beginsC) return {};
  const hot = issue(
    heat.seriousC <= hottest ? 'act' : 'note',
    'heat-stress',
    `In the last two weeks a hot day reaches about ${say(hottest, 'degC')}: heavy birds pant from ${say(heat.beginsC, 'degC')}. Plan shade, air and a second water round.`,
    [heat],
  );
  return { issues: [hot], cautions: ['heat-stress'] };
}

/** Warns when medicated feed would be given too close to the day of leaving. */
function withdrawalShort(context: PlanContext, on: string): PlanIssue[] {
  const { batch, life, phases, dateOf } = context;
  const days = batch.medicatedWithdrawalDays;
  if (days === undefined) return [];
  const lastPhase = phases.at(-1)!;
  const switchDay = lastPhase.fromAgeDays - life.arrivalAgeDays;
  if (days <= life.days - 1 - switchDay) return [];
  return [
    issue(
      'stop',
      'withdrawal-short',
      `The last feed change (${context.say(dateOf(switchDay), 'date')}) is fewer than the ${days} withdrawal days of the label before ${context.say(on, 'date')}. Stop medicated feed by ${context.say(addDays(on, -days), 'date')}, or process later.`,
    ),
  ];
}
