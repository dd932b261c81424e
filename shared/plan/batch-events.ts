import { addDays, type PlainDate } from '../calendar/plain-date.js';
import { facilityOf } from '../farm/facility.js';
import { underHeaterC } from '../poultry/brooding.js';
import type { TaskCircumstance } from '../tables/task-template.js';
import { scheduleOf } from './brooding.js';
import { cockerelsLeaving } from './cockerels.js';
import type { PlanContext } from './context.js';
import { coopRoomOf, shortOfCoop } from './coop-room.js';
import type { EggsSet } from './eggs-set.js';
import { hatchDatesOf } from './hatch-dates.js';
import type { HeatPart } from './heat.js';
import { birdsToProcess } from './leaving-weights.js';
import { processingDays } from './processing-days.js';
import { holdsOfProcessing } from './processing-work.js';
import { needsShell } from './raising-pullets.js';
import type { PlanEvent } from './tasks/event.js';
import { hardenFromDay } from './when-out.js';

/** The days in the life of a batch that its tasks hang on, as far as it has them. */
export function eventsOf(context: PlanContext): PlanEvent[] {
  const { batch, life, moveOutDay, dateOf, words } = context;
  const { eggs, isStarted, isUnderHen } = life;
  const eggDay =
    life.firstEggAgeDays === undefined ? undefined : life.firstEggAgeDays - life.arrivalAgeDays;
  const processing = eggDay === undefined ? processingOf(context) : cockerelsProcessed(context);
  return [
    ...(eggs ? hatchEvents(context, eggs) : []),
    {
      kind: 'arrival',
      date: batch.arrivalDate,
      words: `${words.young} ${eggs ? 'hatch' : 'arrive'}`,
    },
    // Grown birds are in their home from the day they come: nothing is between.
    ...(isStarted
      ? []
      : [
          ...on(context, 'mild-days', mildDay(context)),
          ...on(context, 'harden-off', moveOutDay && hardenFromDay(context, moveOutDay)),
          ...on(context, 'move-out', moveOutDay).map((event) =>
            isUnderHen ? { ...event, words: 'without the hen' } : event,
          ),
        ]),
    ...processing,
    ...on(context, 'first-egg', eggDay),
    ...lastMedicated(context, eggDay === undefined ? processing.at(-1)!.date : dateOf(eggDay)),
  ];
}

/** Of layers the cockerels: the work of that day, and what leads up to it. */
function cockerelsProcessed(context: PlanContext): PlanEvent[] {
  const leaving = cockerelsLeaving(context);
  if (!leaving) return [];
  const { date, birds } = leaving;
  return [{ kind: 'processing', date, counts: { 'hundred-birds': birds } }];
}

const on = (
  { dateOf }: PlanContext,
  kind: PlanEvent['kind'],
  day: number | undefined,
): PlanEvent[] => (day === undefined ? [] : [{ kind, date: dateOf(day) }]);

function hatchEvents(context: PlanContext, eggs: EggsSet): PlanEvent[] {
  const { set, candle, lockdown } = hatchDatesOf(context, eggs);
  return [
    { kind: 'eggs-set', date: set },
    ...candle.map((date, k) => ({ kind: 'candle', number: k + 1, date }) as const),
    ...(lockdown === undefined ? [] : [{ kind: 'lockdown', date: lockdown } as const]),
  ];
}

/**
 * First day on which the brooding schedule asks for no more than an average day outdoors gives:
 * from then on the heat can be off by day. None where hardening off begins before it, or where the
 * schedule ends first.
 */
function mildDay(context: PlanContext): number | undefined {
  const { life, weather, brooderDays, moveOutDay } = context;
  const schedule = scheduleOf(context);
  const last = moveOutDay === undefined ? brooderDays : hardenFromDay(context, moveOutDay);
  for (let day = 0; day < last; day++) {
    const asked = underHeaterC(schedule, life.arrivalAgeDays + day);
    if (asked !== undefined && asked <= weather.maxC[day]!) return day;
  }
  return undefined;
}

/**
 * The days of processing: work that is done once before them hangs on the first, once after them on
 * the last, and that of the day itself on each. Birds that no day has hands for are work to arrange.
 */
function processingOf(context: PlanContext): PlanEvent[] {
  const { days, left, leaving } = processingDays(context, birdsToProcess(context.life));
  const short: PlanEvent[] =
    left === 0 ? [] : [{ kind: 'hands-short', date: leaving[0]!.date, what: `${left} birds` }];
  const { date: last } = leaving.at(-1)!;
  const aroundIt = { kind: 'processing', date: last, nearDays: NOT_OF_THE_DAY } as const;
  if (days.length === 0)
    return [...short, { ...aroundIt, once: 'before' }, { ...aroundIt, once: 'after' }];
  return [
    ...short,
    ...days.map(({ date, birds }, k): PlanEvent => {
      const event = { kind: 'processing', date, counts: { 'hundred-birds': birds } } as const;
      if (days.length === 1) return event;
      return {
        ...event,
        ...(k === 0 ? {} : { number: k + 1 }),
        what: `${birds} birds`,
        nearDays: 1,
        ...(k === 0 ? { once: 'before' } : k === days.length - 1 ? { once: 'after' } : {}),
      };
    }),
  ];
}

/** Where nobody has hours on any day, the work of the day itself is not the household's. */
export const NOT_OF_THE_DAY = -1;

/** Last day of medicated feed: the days on its label before the first bird or egg is eaten. */
function lastMedicated({ batch }: PlanContext, eatenFrom: PlainDate): PlanEvent[] {
  const days = batch.medicatedWithdrawalDays;
  if (days === undefined) return [];
  const last = addDays(eatenFrom, -Math.max(1, days));
  const date = last < batch.arrivalDate ? batch.arrivalDate : last;
  return [{ kind: 'last-medicated', date }];
}

/**
 * The heaters that are to be bought: before the brooder is preheated, and of birds that are there
 * before the first night that asks for more than there is.
 */
export function missingHeat(context: PlanContext, heat: HeatPart | undefined): PlanEvent[] {
  const { batch, facilities, today } = context;
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder || !heat?.firstShort) return [];
  const { toAdd: missing, firstShort } = heat;
  const one = ONE[brooder.heat.kind];
  const more = `${missing} more ${missing === 1 ? one : `${one}s`}`;
  // What the brooder is still to be built or bought with is no trip of its own.
  if (today < batch.arrivalDate)
    return isBrooderAssumed(context)
      ? []
      : [{ kind: 'heaters-short', date: batch.arrivalDate, what: more }];
  const { on, toAdd: first } = firstShort;
  const isTonight = on === today;
  const what = isTonight && first < missing ? `${more}, ${first} of them tonight` : more;
  return [{ kind: 'heaters-short', date: isTonight ? today : addDays(on, -1), what }];
}

const ONE = { lamp: 'lamp', plate: 'plate', gas: 'gas heater' } as const;

/** The heaters that a brooder takes which is still to be built or bought, where those assumed are too few. */
export function heatToBuildWith(
  { batch, facilities, today }: PlanContext,
  heat: HeatPart | undefined,
): string | undefined {
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder || !heat?.firstShort || batch.arrivalDate <= today) return undefined;
  const count = brooder.heat.count + heat.toAdd;
  return `${count} ${ONE[brooder.heat.kind]}${count === 1 ? ' is' : 's are'} needed`;
}

/** Work that builds or buys a brooder with all that belongs in it. */
export const GETS_BROODER: ReadonlySet<string> = new Set([
  'meat.get-brooder-and-gear',
  'layers.get-brooder-and-gear',
]);

/** Nobody has said how large the brooder is, and no earlier batch was in it: it may not be there yet. */
const isBrooderAssumed = (context: PlanContext): boolean =>
  isBrooderUnsaid(context) && !stands(context, context.batch.brooderId);

const isBrooderUnsaid = ({ batch, facilities }: PlanContext): boolean =>
  facilityOf(facilities, 'brooder', batch.brooderId)?.assumed?.includes('lengthM') ?? false;

/** Nor how large the pen is. */
const isPenAssumed = (context: PlanContext): boolean => {
  const { batch, facilities } = context;
  const isUnsaid = facilityOf(facilities, 'field-pen', batch.penId)?.assumed?.includes('floorM2');
  return isUnsaid === true && !stands(context, batch.penId);
};

/** Whether a batch before this one has had it built. */
const stands = ({ usedBefore }: PlanContext, id: string | undefined): boolean =>
  id !== undefined && (usedBefore?.includes(id) ?? false);

/** Whether what some work is only for holds of a batch. */
export function holds(context: PlanContext, circumstance: TaskCircumstance): boolean {
  const { batch, hasOlderFlock, life, moveOutDay, phases } = context;
  const ofProcessing = holdsOfProcessing(batch, circumstance);
  if (ofProcessing !== undefined) return ofProcessing;
  if (circumstance === 'medicated') return batch.medicatedWithdrawalDays !== undefined;
  if (circumstance === 'older-flock') return batch.joinsOlderFlock ?? hasOlderFlock ?? false;
  if (circumstance === 'grower-feed') return phases.some(({ phase }) => phase.id === 'grower');
  if (circumstance === 'laying-feed') return life.program.phases.at(-1)!.fromDay === 'first-egg';
  if (circumstance === 'shell-apart') return needsShell(context);
  if (circumstance === 'brooder-assumed') return isBrooderAssumed(context);
  if (circumstance === 'brooder-known') return !isBrooderUnsaid(context);
  if (circumstance === 'brooder-stands') return !isBrooderAssumed(context);
  if (circumstance === 'pen-assumed') return isPenAssumed(context);
  const short = shortOfCoop(coopRoomOf(context, moveOutDay ?? 0));
  return circumstance === 'nests-short' ? short.nests : short.floor || short.roost || short.nests;
}
