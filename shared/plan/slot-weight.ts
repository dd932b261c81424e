import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  from,
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import type { Batch } from '../farm/batch.js';
import type { Tables } from '../tables/tables.js';
import type { Conditions } from './how-they-grow.js';
import { lifeOf, type Life } from './life.js';

export const slotFormulas = {
  wanted: {
    id: 'slot-wanted',
    title: 'Live weight wanted',
    words: 'The target weight, or what birds of that kind weigh at the age they usually leave.',
    symbols: 'W = W_target, or W(usual age)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  over: {
    id: 'slot-over',
    title: 'Against the weight wanted',
    words: 'Live weight on the slot, less the weight wanted; below 0 they are lighter.',
    symbols: 'ΔW = W(slot) − W',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  arrive: {
    id: 'slot-arrival',
    title: 'Arrival for a slot',
    words:
      'The slot, less the days from arrival until the birds weigh what is wanted, or as much less or more than that as is still taken for right.',
    symbols: 'D = slot − t{W(t) = W·(1 ± s)}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  ready: {
    id: 'slot-ready',
    title: 'When they are right for a slot',
    words:
      'The arrival, plus the days until the birds weigh what is wanted, or as much less or more than that as is still taken for right.',
    symbols: 'D = arrival + t{W(t) = W·(1 ± s)}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  order: {
    id: 'slot-order',
    title: 'Order by',
    words: 'The arrival, less the days that are usual between order and arrival.',
    symbols: 'D = arrival − lead',
    sources: [],
    mark: 'common-practice',
  },
} satisfies Record<string, Formula>;

/** Ages at which birds are right for what is wanted of them, days from hatch. */
export interface RightAges {
  readonly life: Life;
  readonly wanted: NumberQuantity;
  readonly fromDays: number;
  readonly bestDays: number;
  readonly toDays: number;
}

/** Days past the usual end up to which weights are looked at. */
const LOOK_AHEAD_DAYS = 60;

/**
 * Ages between which an average bird weighs what is wanted, or a judged share less or more. The end of
 * the days looked at stands in where a weight is not reached.
 */
export function rightAges(batch: Batch, tables: Tables, conditions: Conditions = {}): RightAges {
  const plain = withoutSlot(batch);
  const usual = lifeOf(plain, tables, conditions);
  const life = lifeOf(
    { ...withoutTarget(plain), leaveAgeDays: usual.lastAgeDays + LOOK_AHEAD_DAYS },
    tables,
    conditions,
  );
  // What is wanted of them is the strain's at its usual age, whatever the birds turn out to weigh.
  const { weighings = [], ...ofStrain } = conditions;
  const strain = weighings.length === 0 ? usual : lifeOf(plain, tables, ofStrain);
  const wantedKg = batch.targetLiveKg ?? strain.meanWeightKg[strain.days - 1]!;
  const share = tables.judgements.birds.slotWeightShare.value;
  const ageAt = (kg: number): number => {
    const day = life.meanWeightKg.findIndex((each) => kg <= each + 1e-9);
    return life.arrivalAgeDays + (day < 0 ? life.days - 1 : day);
  };
  const wanted =
    batch.targetLiveKg === undefined
      ? quantity(
          'Live weight wanted',
          wantedKg,
          'kg',
          slotFormulas.wanted,
          [input('Age they usually leave at', strain.lastAgeDays, 'day')],
          { rows: strain.weightRows },
        )
      : quantity('Live weight wanted', wantedKg, 'kg', slotFormulas.wanted, [
          fromFarm('Target live weight', wantedKg, 'kg', 'W_target'),
        ]);
  return {
    life,
    wanted,
    fromDays: ageAt(wantedKg * (1 - share)),
    bestDays: ageAt(wantedKg),
    toDays: life.arrivalAgeDays + lastUpTo(life, wantedKg * (1 + share)),
  };
}

/** The last day on which an average bird weighs no more than that. */
const lastUpTo = ({ meanWeightKg }: Life, kg: number): number =>
  Math.max(
    0,
    meanWeightKg.findLastIndex((each) => each <= kg + 1e-9),
  );

/** The batch as it would be raised without a slot. */
export function withoutSlot(batch: Batch): Batch {
  const { slotDate: _date, slotBirds: _birds, processingWeekday: _day, ...rest } = batch;
  return rest;
}

function withoutTarget(batch: Batch): Batch {
  const { targetLiveKg: _target, ...rest } = batch;
  return rest;
}

/** A span of days with the best of them. */
export interface DaySpan {
  readonly from: Quantity;
  readonly best: Quantity;
  readonly to: Quantity;
}

/** Arrivals for which birds are right on a slot: the oldest of them come first. */
export const arrivalsFor = (slot: PlainDate, ages: RightAges, tables: Tables): DaySpan =>
  span(ages, (label, days) => {
    const since = days - ages.life.arrivalAgeDays;
    return datedFact(
      `Arrival, ${label}`,
      addDays(slot, -since),
      slotFormulas.arrive,
      [fromFarm('Slot', slot, 'date'), ...inputsOf(ages, since, tables)],
      { rows: ages.life.weightRows },
    );
  });

/** Slots for which birds of an arrival are right: the youngest of them come first. */
export const slotsFor = (arrival: PlainDate, ages: RightAges, tables: Tables): DaySpan => {
  const {
    from: oldest,
    best,
    to: youngest,
  } = span(ages, (label, days) => {
    const since = days - ages.life.arrivalAgeDays;
    return datedFact(
      `Slot, ${label}`,
      addDays(arrival, since),
      slotFormulas.ready,
      [fromFarm('Arrival', arrival, 'date'), ...inputsOf(ages, since, tables)],
      { rows: ages.life.weightRows },
    );
  });
  return { from: youngest, best, to: oldest };
};

const inputsOf = ({ wanted }: RightAges, since: number, { judgements }: Tables) => [
  from(wanted, 'W'),
  fromTable(
    judgements.birds.slotWeightShare,
    'Less or more, at most',
    judgements.birds.slotWeightShare.value,
    'share',
    's',
  ),
  input('Days from the arrival', since, 'day', 't'),
];

const span = (
  { fromDays, bestDays, toDays }: RightAges,
  dateOf: (label: string, days: number) => Quantity,
): DaySpan => ({
  from: dateOf('the heaviest', toDays),
  best: dateOf('the weight wanted', bestDays),
  to: dateOf('the lightest', fromDays),
});

/** The day by which chicks of an arrival are usually ordered. */
export function orderBy(arrival: PlainDate, { judgements }: Tables): Quantity {
  const lead = judgements.arrival.usualLeadDays;
  return datedFact('Order by', addDays(arrival, -lead.value), slotFormulas.order, [
    input('Arrival', arrival, 'date'),
    fromTable(lead, 'Usual between order and arrival', lead.value, 'day'),
  ]);
}

/** Live weight over the one wanted; below 0 they are lighter. */
export const overWanted = (liveEach: NumberQuantity, wanted: NumberQuantity): NumberQuantity =>
  quantity('Against the weight wanted', liveEach.value - wanted.value, 'kg', slotFormulas.over, [
    from(liveEach),
    from(wanted, 'W'),
  ]);
