import type { PlainDate } from '../calendar/plain-date.js';
import {
  from,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { facilityOf } from '../farm/facility.js';
import { lossFormulas } from '../poultry/losses.js';
import { birdsThatFit, spaceFormulas, spaceRowAt } from '../poultry/space.js';
import { floorHad, floorHadM2, type Floored } from './floor-had.js';
import { birdsToProcess } from './leaving-weights.js';
import { processingDays, shareStillThere } from './processing-days.js';
import type { PlanContext } from './context.js';
import { homeSpaceOf } from './home-space.js';
import { spaceStandardOf } from './space-standard.js';

/** How many birds one place holds on a day, at the limit that is gone by. */
export interface Stocking {
  readonly when: string;
  readonly on: PlainDate;
  readonly isBrooder: boolean;
  readonly place: string;
  readonly birds: NumberQuantity;
  /** Floor for one bird of that day. */
  readonly limit: NumberQuantity;
  readonly needed: NumberQuantity;
  /** Left out where no place is chosen. */
  readonly fits?: NumberQuantity;
}

/** A place and a day on which birds are to fit. */
interface Asked extends Pick<Stocking, 'when' | 'isBrooder' | 'place'> {
  readonly day: number;
  readonly home: Floored | undefined;
  readonly birds: number;
  readonly limit: NumberQuantity;
}

/**
 * Birds that fit, and the floor they need: in the brooder at arrival and on its last day, in their
 * pen or coop at the move and on the last day (hens: at the first egg).
 */
export function stockingOf(context: PlanContext): Stocking[] {
  return [...inBrooder(context), ...atHome(context)].map((asked) => rowOf(context, asked));
}

function inBrooder(context: PlanContext): Asked[] {
  const { batch, facilities, life, brooderDays } = context;
  if (!life.hasBrooder) return [];
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  const standard = spaceStandardOf(context);
  const ask = (when: string, day: number, leftShare = 1): Asked => {
    const ageDays = life.arrivalAgeDays + day;
    return {
      when,
      day,
      isBrooder: true,
      place: brooder?.name ?? 'Brooder',
      home: brooder,
      birds: life.aliveAll[day]! * leftShare,
      limit: limit(
        fromTable(
          standard,
          standard.name,
          spaceRowAt(standard.rows, ageDays).floorM2,
          'birdM2',
          'a',
        ),
        ageDays,
      ),
    };
  };
  const planned = Math.max(0, brooderDays - 1);
  // Birds that never go out are in it to the day on which the last of them is processed.
  const leaving =
    batch.purpose === 'meat' ? processingDays(context, birdsToProcess(life)).leaving : [];
  const first = Math.min(planned, leaving[0]?.index ?? planned);
  const last = Math.min(planned, leaving.at(-1)?.index ?? planned);
  return [
    ask('At arrival', 0),
    ...(0 < first && first < last ? [ask('Before the first are processed', first)] : []),
    ...(0 < last ? [ask('Last day in the brooder', last, leftOn(context, last))] : []),
  ];
}

const limit = (each: QuantityInput, ageDays: number): NumberQuantity =>
  quantity('Floor a bird', Number(each.value), 'birdM2', spaceFormulas.limit, [
    each,
    input('Age', ageDays, 'day'),
  ]);

function atHome(context: PlanContext): Asked[] {
  const { batch, facilities, life, moveOutDay } = context;
  if (moveOutDay === undefined) return [];
  const pens = facilityOf(facilities, 'field-pen', batch.penId);
  const coop = facilityOf(facilities, 'coop', batch.coopId);
  const isMeat = batch.purpose === 'meat';
  const home = isMeat ? (pens ?? coop) : coop;
  const place = home?.name ?? (isMeat ? 'Pen' : 'Coop');
  const at = { isBrooder: false, place, home };
  const { each } = homeSpaceOf(context);
  const moved = {
    ...at,
    when: life.isStarted ? 'When they come' : 'At the move',
    day: moveOutDay,
    birds: life.aliveAll[moveOutDay]!,
  };
  const last = isMeat
    ? processingDays(context, birdsToProcess(life)).leaving.at(-1)!.index
    : (life.firstEggAgeDays ?? life.lastAgeDays) - life.arrivalAgeDays;
  const ended = { ...at, when: isMeat ? 'On the last day' : 'At the first egg', day: last };
  return [
    { ...moved, limit: limit(each, life.arrivalAgeDays + moveOutDay) },
    isMeat
      ? {
          ...ended,
          birds: life.aliveAll[last]! * leftOn(context, last),
          limit: limitAtTheEnd(context, each, last),
        }
      : {
          ...ended,
          birds: life.alive.female[last]!,
          limit: limit(each, life.arrivalAgeDays + last),
        },
  ];
}

/** Share of the birds that is processed on the last day, and not before it. */
const leftOn = (context: PlanContext, day: number): number =>
  context.batch.purpose !== 'meat'
    ? 1
    : (shareStillThere(context, birdsToProcess(context.life))[day - 1] ?? 1);

/** Grown birds also go by their weight. */
function limitAtTheEnd(
  { life, tables }: PlanContext,
  each: QuantityInput & { readonly value: number },
  day: number,
): NumberQuantity {
  const cap = tables.space.liveWeightCapKgPerM2;
  const kg = life.meanWeightKg[day]!;
  return quantity(
    'Floor a bird',
    Math.max(each.value, kg / cap.value),
    'birdM2',
    spaceFormulas.limit,
    [
      each,
      input('Live weight', kg, 'kg', 'W'),
      fromTable(cap, 'Most live weight on the floor', cap.value, 'kgPerM2', 'd'),
      input('Age', life.arrivalAgeDays + day, 'day'),
    ],
    { rows: life.weightRows },
  );
}

function rowOf(
  { life, dateOf }: PlanContext,
  { when, day, isBrooder, place, home, birds, limit: each }: Asked,
): Stocking {
  const alive = { ...input('Birds alive', birds, 'count', 'N'), mark: life.losses.mark };
  const rows = [life.losses];
  return {
    ...{ when, isBrooder, place, on: dateOf(day), limit: each },
    birds: quantity('Birds then', Math.round(birds), 'count', lossFormulas.alive, [alive], {
      rows,
    }),
    needed: quantity(
      'Floor they need',
      birds * each.value,
      'm2',
      spaceFormulas.floor,
      [alive, from(each, 'a')],
      { rows: [...rows, each] },
    ),
    ...(home === undefined
      ? {}
      : {
          fits: quantity(
            'Birds that fit',
            birdsThatFit(floorHadM2(home), each.value),
            'count',
            spaceFormulas.fits,
            [floorHad(home, 'Floor you have', 'A'), from(each, 'a')],
            { rows: [each] },
          ),
        }),
  };
}
