import { plainFormulas } from '../explain/plain-formulas.js';
import { addDays } from '../calendar/plain-date.js';
import {
  datedFact,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { facilityOf } from '../farm/facility.js';
import { growthFormulas } from '../poultry/growth.js';
import { chillingHours, processingFormulas } from '../poultry/processing.js';
import { issue } from '../problems/plan-issue.js';
import { rowById } from '../tables/tables.js';
import type { PlanContext } from './context.js';
import type { FeedPart } from './feed.js';

export interface LeavingPart {
  readonly on: Quantity;
  readonly age: NumberQuantity;
  readonly birds: number;
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

export function planLeaving(context: PlanContext, feed: FeedPart): LeavingPart | undefined {
  const { batch, life, tables, dateOf } = context;
  if (batch.purpose !== 'meat') return undefined;
  context.cautions.add('slaughter').add('chilling');
  const last = life.days - 1;
  const on = dateOf(last);
  // Expected survivors are a fraction; one bird placed is still one bird to process.
  const birds = Math.max(1, Math.floor(life.aliveAll[last]! + 1e-9));
  const liveKg = life.meanWeightKg[last]!;
  const table = tables.processing;
  const dressing = rowById(table.dressing, life.strain.dressing);
  const share = batch.dressingShare ?? dressing.share;
  const dressedKg = liveKg * share;
  const packedKg = dressedKg * (1 + table.waterUptake.share);
  const allDressed = dressedKg * birds;
  const allPacked = packedKg * birds;
  const dressingOptions =
    batch.dressingShare === undefined
      ? { sources: dressing.sources, mark: dressing.mark }
      : { mark: 'computed' as const };
  const outside =
    life.lastTableAgeDays < life.lastAgeDays
      ? { outside: `The growth table ends at ${life.lastTableAgeDays} days.` }
      : {};
  warn(context, on);

  const weigh = (label: string, kg: number): NumberQuantity =>
    quantity(
      label,
      kg,
      'kg',
      WEIGHT,
      [
        input('Growth table', life.growthTable.name, 'text'),
        input('Age', life.lastAgeDays, 'day', 't'),
        input('Small-flock factor', life.weightFactor, 'ratio', 'f'),
      ],
      { sources: life.growthTable.sources, mark: 'computed', ...outside },
    );
  const freezer = facilityOf(context.facilities, 'freezer', batch.freezerId);
  const freezerNeed = quantity(
    'Freezer room needed',
    allPacked / table.packing.kgPerL,
    'L',
    processingFormulas.freezer,
    [
      input('Packed, all birds', allPacked, 'kg'),
      input('A litre holds', table.packing.kgPerL, 'kgPerL', 'ρ'),
    ],
    {
      spread: {
        low: allPacked / table.packing.high,
        high: allPacked / table.packing.low,
        because: table.packing.because ?? 'packing differs',
      },
    },
  );
  const free = freezer && Math.max(0, freezer.litres - freezer.usedL);
  if (free !== undefined && free < freezerNeed.value) {
    context.issues.push(
      issue(
        'act',
        'freezer-full',
        `${freezer!.name} has ${context.say(free, 'L')} free; the batch needs about ${context.say(freezerNeed.value, 'L')}. Sell or give some fresh, cut up the birds, or find more room before ${context.say(on, 'date')}.`,
      ),
    );
  }
  const withdrawal = table.withdrawalH;
  const offHour = (24 + table.startHour - withdrawal.value) % 24;
  return {
    on: datedFact('Processing', on, processingFormulas.leaveDate, [
      input('Hatch', addDays(batch.arrivalDate, -life.arrivalAgeDays), 'date'),
      input('Age at leaving', life.lastAgeDays, 'day'),
      ...(batch.targetLiveKg === undefined
        ? []
        : [input('Target live weight', batch.targetLiveKg, 'kg', 'W_target')]),
    ]),
    age: quantity('Age at processing', life.lastAgeDays, 'day', processingFormulas.leaveDate, [
      input('Chosen or by target', life.lastAgeDays, 'day'),
    ]),
    birds,
    liveEach: weigh('Live weight each', liveKg),
    ...(batch.sex === 'straight-run'
      ? {
          liveMale: weigh('Cockerel, live', life.weightKg.male[last]!),
          liveFemale: weigh('Pullet, live', life.weightKg.female[last]!),
        }
      : {}),
    liveAll: quantity(
      'Live weight, all birds',
      liveKg * birds,
      'kg',
      WEIGHT,
      [input('Birds', birds, 'count'), input('Live weight each', liveKg, 'kg')],
      { sources: life.growthTable.sources },
    ),
    dressedEach: quantity(
      'Dressed weight each',
      dressedKg,
      'kg',
      processingFormulas.dressed,
      [
        input('Live weight', liveKg, 'kg', 'W'),
        input('Dressing percentage', share, 'share', 'y'),
        input('Definition', dressing.definition, 'text'),
      ],
      {
        ...dressingOptions,
        spread: {
          low: liveKg * dressing.low,
          high: liveKg * dressing.high,
          because: 'sources differ by what is left in the carcass',
        },
      },
    ),
    dressedDefinition: dressing.definition,
    dressedAll: quantity(
      'Dressed weight, all birds',
      allDressed,
      'kg',
      processingFormulas.dressed,
      [input('Birds', birds, 'count'), input('Dressed weight each', dressedKg, 'kg')],
      dressingOptions,
    ),
    packedAll: quantity(
      'Packed weight, all birds',
      allPacked,
      'kg',
      processingFormulas.packed,
      [
        input('Dressed, all birds', allDressed, 'kg', 'W_d'),
        input('Water kept', table.waterUptake.share, 'share', 'u'),
      ],
      {
        sources: [...dressing.sources, ...table.waterUptake.sources],
        spread: {
          low: allDressed * (1 + table.waterUptake.low),
          high: allDressed * (1 + table.waterUptake.high),
          because: table.waterUptake.because ?? 'water differs',
        },
      },
    ),
    freezerNeed,
    ...(free === undefined
      ? {}
      : {
          freezerFree: quantity(
            'Freezer room free',
            free,
            'L',
            plainFormulas.free,
            [input('Freezer', freezer!.litres, 'L'), input('Already taken', freezer!.usedL, 'L')],
            { mark: 'computed' },
          ),
        }),
    conversion: quantity(
      'Feed conversion',
      feed.total.value / (liveKg * birds),
      'ratio',
      processingFormulas.conversion,
      [
        input('Feed given', feed.total.value, 'kg', 'F'),
        input('Live weight, all birds', liveKg * birds, 'kg'),
      ],
    ),
    feedOff: quantity(
      'Hours without feed',
      withdrawal.value,
      'h',
      processingFormulas.withdrawal,
      [input('Start of processing', `${table.startHour}:00`, 'text')],
      {
        spread: {
          low: withdrawal.low,
          high: withdrawal.high,
          because: 'published advice runs from 8 to 12 hours',
        },
      },
    ),
    feedOffAt: `${addDays(on, withdrawal.value > table.startHour ? -1 : 0)} ${String(offHour).padStart(2, '0')}:00`,
    ice: quantity(
      'Ice',
      allDressed * table.ice.share,
      'kg',
      processingFormulas.ice,
      [input('Dressed, all birds', allDressed, 'kg')],
      {
        spread: {
          low: allDressed * table.ice.low,
          high: allDressed * table.ice.high,
          because: table.ice.because ?? 'common practice',
        },
      },
    ),
    chillHours: quantity(
      'Hours to chill below 4.4 °C (40 °F)',
      chillingHours(table.chilling.rows, dressedKg),
      'h',
      processingFormulas.chillBy,
      [input('Carcass', dressedKg, 'kg', 'W_d')],
    ),
  };
}

const WEIGHT = growthFormulas.weight;

function warn(context: PlanContext, on: string): void {
  const { batch, life, tables, weather, phases, dateOf } = context;
  const heat = tables.heatStress;
  const from = Math.max(0, life.days - 14);
  const hottest = Math.max(...weather.hotMaxC.subarray(from));
  if (heat.beginsC <= hottest) {
    context.cautions.add('heat-stress');
    context.issues.push(
      issue(
        heat.seriousC <= hottest ? 'act' : 'note',
        'heat-stress',
        `In the last two weeks a hot day reaches about ${context.say(hottest, 'degC')}: heavy birds pant from ${context.say(heat.beginsC, 'degC')}. Plan shade, air and a second water round.`,
      ),
    );
  }
  const days = batch.medicatedWithdrawalDays;
  if (days === undefined) return;
  const lastPhase = phases.at(-1)!;
  const switchDay = lastPhase.fromAgeDays - life.arrivalAgeDays;
  if (life.days - 1 - switchDay < days) {
    context.issues.push(
      issue(
        'stop',
        'withdrawal-short',
        `The last feed change (${context.say(dateOf(switchDay), 'date')}) is fewer than the ${days} withdrawal days of the label before ${context.say(on, 'date')}. Stop medicated feed by ${context.say(addDays(on, -days), 'date')}, or process later.`,
      ),
    );
  }
}
