import type { Formula } from '../explain/formula.js';
import {
  from,
  fromRow,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { facilityOf } from '../farm/facility.js';
import { orderChances } from '../poultry/losses.js';
import { spaceRowAt } from '../poultry/space.js';
import { floorHad } from './floor-had.js';
import type { PlanContext } from './context.js';
import { mostUnderHeat } from './heat-limit.js';
import { homeSpaceOf } from './home-space.js';
import { leftOn } from './freezer-account.js';
import { packedOf, paceOf } from './leaving-freezer.js';
import { areHandsUnknown } from './hands-of-day.js';
import { mostOnAllDays } from './processing-days.js';
import { workOfDay } from './processing-work.js';
import { spaceStandardOf } from './space-standard.js';

export const largestBatchFormulas = {
  chicks: {
    id: 'most-chicks',
    title: 'Most chicks',
    words:
      'What there is, divided by what a bird of that day takes; counted back to chicks by those that live until then. Rounded down.',
    symbols: 'N₀ = ⌊A ÷ (a·s)⌋',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  wanted: {
    id: 'most-birds',
    title: 'Largest batch',
    words: 'The most birds that can be wanted so that the chicks to order for them still fit.',
    symbols: 'max{N_wanted: N_order ≤ N₀}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export type LimitKind = 'brooder' | 'heat' | 'pens' | 'coop' | 'freezer' | 'hours';

/** What one place, or the hands of the household, allow. */
export interface BatchLimit {
  readonly kind: LimitKind;
  readonly name: string;
  readonly chicks: NumberQuantity;
}

export interface LargestBatch {
  readonly birds: NumberQuantity;
  /** The tightest first: that one stops it. Empty when nothing is known that could. */
  readonly limits: readonly BatchLimit[];
}

/** What is shared out among the birds of a day. */
interface Room {
  readonly kind: LimitKind;
  readonly name: string;
  readonly have: QuantityInput & { readonly value: number };
  readonly each: QuantityInput & { readonly value: number };
  /** Days after the arrival. */
  readonly day: number;
}

/**
 * The largest batch that brooder, heat, pens or coop, freezer and hours allow on the dates of a
 * plan, and which of them stops it. The hours are those of the days among which processing at home
 * is split, as long as the plan lets them be; lamps and gas are held against what a cold night asks for, plates against their places.
 */
export function largestBatch(context: PlanContext): LargestBatch | undefined {
  const rooms = [
    inBrooder(context),
    underPlates(context),
    outdoors(context),
    inFreezer(context),
    inHours(context),
  ];
  const limits = [
    ...rooms.flatMap((room) => (room ? [limitOf(context, room)] : [])),
    ...underHeat(context),
  ].sort((a, b) => a.chicks.value - b.chicks.value);
  const [tightest] = limits;
  if (!tightest) return undefined;
  const { odds } = context.life;
  return {
    limits,
    birds: quantity(
      'Largest batch',
      mostWanted(context, tightest.chicks.value),
      'count',
      largestBatchFormulas.wanted,
      [
        from(tightest.chicks, 'N₀', tightest.name),
        fromTable(
          context.tables.orders.surety,
          'How sure',
          context.tables.orders.surety.usual,
          'share',
        ),
        input('Lives to the end, on average', odds.survivingShare, 'share'),
      ],
      { rows: [context.life.losses, context.tables.orders.togetherness] },
    ),
  };
}

function limitOf({ life, words }: PlanContext, { kind, name, have, each, day }: Room): BatchLimit {
  const alive = life.aliveAll[day]! / life.placed;
  return {
    kind,
    name,
    chicks: quantity(
      `${name}: most ${words.young}`,
      Math.max(0, Math.floor(have.value / (each.value * alive) + 1e-9)),
      'count',
      largestBatchFormulas.chicks,
      [
        have,
        each,
        { ...input('Alive that day', alive, 'share', 's'), mark: life.losses.mark },
        input('Age', life.arrivalAgeDays + day, 'day'),
      ],
      { rows: [life.losses] },
    ),
  };
}

function mostWanted({ life, tables }: PlanContext, chicks: number): number {
  const toOrder = (wanted: number): number =>
    orderChances({ ...life.odds, wanted }).toOrder(tables.orders.surety.usual);
  let fits = 0;
  let tooMany = chicks + 1;
  while (fits + 1 < tooMany) {
    const middle = Math.floor((fits + tooMany) / 2);
    if (toOrder(middle) <= chicks) fits = middle;
    else tooMany = middle;
  }
  return fits;
}

type Valued = QuantityInput & { readonly value: number };

function inBrooder(context: PlanContext): Room | undefined {
  const { batch, facilities, life, brooderDays } = context;
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder) return undefined;
  const standard = spaceStandardOf(context);
  const floorOn = (day: number): number =>
    spaceRowAt(standard.rows, life.arrivalAgeDays + day).floorM2;
  let worst = 0;
  for (let day = 1; day < brooderDays; day++) {
    if (life.aliveAll[worst]! * floorOn(worst) < life.aliveAll[day]! * floorOn(day)) worst = day;
  }
  return {
    kind: 'brooder',
    name: brooder.name,
    have: floorHad(brooder, 'Floor', 'A') as Valued,
    each: fromTable(standard, 'Floor a bird', floorOn(worst), 'birdM2', 'a') as Valued,
    day: worst,
  };
}

function underPlates({ batch, facilities, tables }: PlanContext): Room | undefined {
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (brooder?.heat.kind !== 'plate') return undefined;
  const { plate } = tables.heat;
  const { count, wattsEach } = brooder.heat;
  const from = ['heat.count', 'heat.wattsEach'] as const;
  return {
    kind: 'heat',
    name: 'Heat plates',
    have: fromRow(brooder, from, 'Heat plates', count * wattsEach, 'W', 'A') as Valued,
    each: fromTable(plate, 'For each chick', plate.wattsPerChick, 'W', 'a') as Valued,
    day: 0,
  };
}

/** Lamps and gas are a limit by the coldest night, not by the places under them alone. */
function underHeat(context: PlanContext): BatchLimit[] {
  const brooder = facilityOf(context.facilities, 'brooder', context.batch.brooderId);
  if (!brooder || brooder.heat.kind === 'plate') return [];
  const chicks = mostUnderHeat(context, brooder);
  const name = brooder.heat.kind === 'gas' ? 'Gas heaters' : 'Heat lamps';
  return chicks ? [{ kind: 'heat', name, chicks }] : [];
}

function outdoors(context: PlanContext): Room | undefined {
  const { batch, facilities, moveOutDay, life } = context;
  if (moveOutDay === undefined) return undefined;
  const { each } = homeSpaceOf(context);
  const pens = facilityOf(facilities, 'field-pen', batch.penId);
  if (batch.purpose === 'meat' && pens) {
    return {
      kind: 'pens',
      name: pens.name,
      have: floorHad(pens, 'Ground under the pens', 'A') as Valued,
      each,
      day: moveOutDay,
    };
  }
  const coop = facilityOf(facilities, 'coop', batch.coopId);
  if (!coop) return undefined;
  const last = (life.firstEggAgeDays ?? life.lastAgeDays) - life.arrivalAgeDays;
  return {
    kind: 'coop',
    name: coop.name,
    have: floorHad(coop, 'Floor', 'A') as Valued,
    each,
    day: batch.purpose === 'meat' ? moveOutDay : last,
  };
}

function inFreezer(context: PlanContext): Room | undefined {
  const { batch, facilities, life, packed, tables } = context;
  const freezer = facilityOf(facilities, 'freezer', batch.freezerId);
  const own = packedOf(context).at(-1);
  if (!freezer || !own) return undefined;
  const others = packed
    .filter(({ freezerId }) => freezerId === freezer.id)
    .sort((a, b) => (a.on < b.on ? -1 : 1));
  const left = leftOn(others, paceOf(context, freezer), own.on);
  const taken = others.reduce((sum, each, k) => sum + left[k]! * each.literEach, freezer.usedL);
  return {
    kind: 'freezer',
    name: freezer.name,
    have: fromRow(
      freezer,
      ['liters', 'usedL'],
      'Room that day',
      Math.max(0, freezer.liters - taken),
      'freezerL',
      'A',
    ) as Valued,
    each: fromTable(
      tables.processing.packing,
      'A bird, packed',
      own.literEach,
      'freezerL',
      'a',
    ) as Valued,
    day: life.days - 1,
  };
}

function inHours(context: PlanContext): Room | undefined {
  const { batch, life, tables } = context;
  if (batch.purpose !== 'meat' || batch.processing === 'hired') return undefined;
  // Where nobody is named it is not known who could come.
  if (areHandsUnknown(context)) return undefined;
  const work = workOfDay(context);
  const days = tables.judgements.birds.splitDaysMost;
  return {
    kind: 'hours',
    name: 'Hands on the last days',
    have: fromTable(
      days,
      `Hours for birds, on long days too, up to ${days.value} days before`,
      mostOnAllDays(context) * work.birdH,
      'h',
      'A',
    ) as Valued,
    each: fromTable(work.rows[0]!, 'A bird on the day', work.birdH, 'h', 'a') as Valued,
    day: life.days - 1,
  };
}
