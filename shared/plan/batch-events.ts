import { facilityOf } from '../farm/facility.js';
import { underHeaterC } from '../poultry/brooding.js';
import type { TaskCircumstance } from '../tables/task-template.js';
import { scheduleOf } from './brooding.js';
import type { PlanContext } from './context.js';
import { coopRoomOf, shortOfCoop } from './coop-room.js';
import type { HeatPart } from './heat.js';
import type { PlanEvent } from './tasks/event.js';
import { hardenFromDay } from './when-out.js';

/** The days in the life of a batch that its tasks hang on, as far as it has them. */
export function eventsOf(context: PlanContext): PlanEvent[] {
  const { batch, life, moveOutDay, dateOf } = context;
  return [
    { kind: 'arrival', date: batch.arrivalDate },
    ...on(context, 'mild-days', mildDay(context)),
    ...on(context, 'harden-off', moveOutDay && hardenFromDay(context, moveOutDay)),
    ...on(context, 'move-out', moveOutDay),
    ...on(context, 'last-medicated', lastMedicatedDay(context)),
    life.firstEggAgeDays === undefined
      ? { kind: 'processing', date: dateOf(life.days - 1) }
      : { kind: 'first-egg', date: dateOf(life.firstEggAgeDays - life.arrivalAgeDays) },
  ];
}

const on = (
  { dateOf }: PlanContext,
  kind: PlanEvent['kind'],
  day: number | undefined,
): PlanEvent[] => (day === undefined ? [] : [{ kind, date: dateOf(day) }]);

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

/** Last day of medicated feed: the days on its label before the birds or the first egg are eaten. */
function lastMedicatedDay({ batch, life }: PlanContext): number | undefined {
  const days = batch.medicatedWithdrawalDays;
  if (days === undefined) return undefined;
  const eatenFrom =
    life.firstEggAgeDays === undefined ? life.days - 1 : life.firstEggAgeDays - life.arrivalAgeDays;
  return Math.max(0, eatenFrom - Math.max(1, days));
}

/** The heaters that are to be bought before the brooder is preheated. */
export function missingHeat(
  { batch, facilities }: PlanContext,
  heat: HeatPart | undefined,
): PlanEvent[] {
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder || !heat || heat.enough) return [];
  const missing = heat.heatersNeeded.value - brooder.heat.count;
  const what = `${missing} more ${missing === 1 ? ONE[brooder.heat.kind] : `${ONE[brooder.heat.kind]}s`}`;
  return [{ kind: 'heaters-short', date: batch.arrivalDate, what }];
}

const ONE = { lamp: 'lamp', plate: 'plate', gas: 'gas heater' } as const;

/** Whether what some work is only for holds of a batch. */
export function holds(context: PlanContext, circumstance: TaskCircumstance): boolean {
  const { batch, hasOlderFlock, moveOutDay } = context;
  if (circumstance === 'medicated') return batch.medicatedWithdrawalDays !== undefined;
  if (circumstance === 'older-flock') return batch.joinsOlderFlock ?? hasOlderFlock ?? false;
  const short = shortOfCoop(coopRoomOf(context, moveOutDay ?? 0));
  return circumstance === 'nests-short' ? short.nests : short.floor || short.roost || short.nests;
}
