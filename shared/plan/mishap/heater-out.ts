import { dayLengthH } from '../../calendar/day-length.js';
import { dayOfYear, daysBetween } from '../../calendar/plain-date.js';
import type { NumberQuantity } from '../../explain/quantity.js';
import { facilityOf, type Brooder } from '../../farm/facility.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { heatersFor } from '../../poultry/brooder-heat.js';
import { underHeaterC } from '../../poultry/brooding.js';
import { spaceRowAt } from '../../poultry/space.js';
import { formatHours, formatValue } from '../../units/format.js';
import { batchContext } from '../batch-request.js';
import { scheduleOf } from '../brooding.js';
import type { PlanContext } from '../context.js';
import { heatOfDay } from '../heat-of-day.js';
import { spaceStandardOf } from '../space-standard.js';
import { cautionsSaid } from './cautions-said.js';
import type { Mishap, WayOn } from './way-on.js';

/** Heaters of a batch that have failed. */
export interface HeaterOut {
  readonly batchId: string;
  /** Heaters that still work, 0 or more. */
  readonly working: number;
  readonly isPowerOut: boolean;
}

/**
 * What tonight is like in a brooder with fewer heaters, and what each thing that can be done within
 * the hour makes of it, each worked out as the plan works out its nights. In their first week chicks
 * are counted as giving no warmth.
 *
 * Left out: how fast the box cools; of plates the warmth of touch, which no air shows.
 *
 * @returns undefined where the batch has no brooder, or is old enough to need no heat
 */
export function heaterOut(
  picture: FarmPicture,
  tables: Tables,
  { batchId, working, isPowerOut }: HeaterOut,
): Mishap | undefined {
  const context = batchContext(picture, tables, batchId);
  const { batch, facilities, farm, life, today, say } = context;
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  const day = daysBetween(batch.arrivalDate, today);
  if (!brooder || day < 0 || life.days <= day) return undefined;
  const ageDays = life.arrivalAgeDays + day;
  const wantedC = underHeaterC(scheduleOf(context), ageDays);
  if (wantedC === undefined) return undefined;
  const left = { ...brooder, heat: { ...brooder.heat, count: working } };
  const night: NightAsked = { picture, tables, context, day, wantedC, working };
  const now = nightWith(night, left, { id: 'as-is', words: 'Left as it is' });
  if (!now) return undefined;
  const hours = 24 - dayLengthH({ latitudeDeg: farm.latitudeDeg, dayOfYear: dayOfYear(today) });
  return {
    name: brooder.name,
    follows: [
      `${ageDays === 1 ? 'A day' : `${ageDays} days`} old they want ${say(wantedC, 'degC')} under the heat. ${now.isEnough ? `${heatersSaid(brooder, working)} are enough tonight.` : sayShort(night, now)}`,
      `It is dark for about ${formatHours(Math.round(hours))}, and coldest just before sunrise.`,
      ...(now.isEnough
        ? []
        : [
            'Do something within the hour, then look again in an hour: piled up and loud is too cold.',
          ]),
    ],
    numbers: now.numbers ?? [],
    ways: now.isEnough ? [] : withBottles(byEnough(waysOf(night, brooder, left, isPowerOut))),
    cautions: cautionsSaid(tables, picture.farm, [
      'heat-lamp',
      'carbon-monoxide',
      ...(isPowerOut ? ['freezer-power'] : []),
    ]),
  };
}

interface NightAsked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly context: PlanContext;
  readonly day: number;
  readonly wantedC: number;
  readonly working: number;
}

function waysOf(
  night: NightAsked,
  brooder: Brooder,
  left: Brooder,
  isPowerOut: boolean,
): (WayOn | undefined)[] {
  const { context, working } = night;
  const small = smaller(night, left);
  const roomC = context.tables.heat.heatedRoom.airC;
  const indoors = { ...(small ?? left), standsIn: 'heated-room' as const, roomC };
  const indoorsWords = `Bring the box into a room of ${context.say(roomC, 'degC')}`;
  return [
    small &&
      nightWith(night, small, {
        id: 'smaller',
        words: `Close the box off to ${context.say(small.lengthM * small.widthM, 'm2')}, all birds in the small part`,
      }),
    isPowerOut || brooder.heat.count <= working
      ? undefined
      : nightWith(night, withHeaters(left, working + 1), {
          id: 'spare',
          words: `Hang a spare ${HEATER[brooder.heat.kind]} of ${context.say(brooder.heat.wattsEach, 'W')}`,
        }),
    isPowerOut || !small || brooder.heat.count <= working
      ? undefined
      : nightWith(night, withHeaters(small, working + 1), {
          id: 'spare-and-smaller',
          words: `A spare ${HEATER[brooder.heat.kind]} and the box closed off`,
        }),
    nightWith(night, indoors, {
      id: 'indoors',
      words: small ? `${indoorsWords}, all birds close together` : indoorsWords,
      more: ['Out of drafts, on dry bedding, away from the kitchen; wash your hands after.'],
    }),
  ];
}

const HEATER = { lamp: 'lamp', plate: 'plate', gas: 'gas heater' } as const;

const withHeaters = (brooder: Brooder, count: number): Brooder => ({
  ...brooder,
  heat: { ...brooder.heat, count },
});

/** The brooder closed off to the floor that birds of that age need. */
function smaller({ context, day }: NightAsked, brooder: Brooder): Brooder | undefined {
  const { life } = context;
  const { floorM2 } = spaceRowAt(spaceStandardOf(context).rows, life.arrivalAgeDays + day);
  const needed = Math.ceil(life.aliveAll[day]!) * floorM2;
  const share = needed / (brooder.lengthM * brooder.widthM);
  if (context.tables.judgements.alarms.boardShare.value < share) return undefined;
  return { ...brooder, lengthM: brooder.lengthM * share };
}

/** Tonight with a brooder as it would be, by the reckoning that sets its heaters every night. */
function nightWith(
  night: NightAsked,
  brooder: Brooder,
  way: { readonly id: string; readonly words: string; readonly more?: readonly string[] },
): WayOn | undefined {
  const { picture, tables, context, day, wantedC } = night;
  const facilities = picture.facilities.map((each) => (each.id === brooder.id ? brooder : each));
  const of = heatOfDay({ ...picture, facilities }, tables, context.batch.id!, day);
  if (!of) return undefined;
  const offByK = tables.judgements.alarms.brooderOffK.value;
  const { air, underHeat } = of.night;
  const warmest = underHeat ?? air;
  const isEnough =
    brooder.heat.kind === 'plate' && 0 < brooder.heat.count
      ? platesFor(context, brooder, day) <= brooder.heat.count
      : wantedC - offByK <= warmest.value;
  const numbers = [...(underHeat ? [underHeat] : []), air];
  return {
    ...{ id: way.id, words: way.words, isEnough, numbers },
    follows: [
      ...(isEnough ? [] : [sayStillShort(night, warmest)]),
      ...(underHeat && wantedC + offByK < underHeat.value
        ? [`Raise the heat until it shows ${context.say(wantedC, 'degC')} under it.`]
        : []),
      ...(way.more ?? []),
    ],
  };
}

const platesFor = ({ life, tables }: PlanContext, { heat }: Brooder, day: number): number =>
  heatersFor(life.aliveAll[day]! * tables.heat.plate.wattsPerChick, heat.wattsEach);

const sayStillShort = (
  { picture: { farm }, wantedC }: NightAsked,
  warmest: NumberQuantity,
): string =>
  `${formatValue(warmest.value, 'degC', farm)} of the ${formatValue(wantedC, 'degC', farm)} wanted: not enough alone.`;

function sayShort({ picture: { farm }, working }: NightAsked, now: WayOn): string {
  const at = formatValue(now.numbers![0]!.value, 'degC', farm);
  return working === 0
    ? `With no heat it comes to ${at} in the box tonight.`
    : `With what still works it comes to ${at} tonight.`;
}

const heatersSaid = ({ heat }: Brooder, working: number): string =>
  `${working} of ${heat.count} ${HEATER[heat.kind]}s`;

/** Those that do first, and of these the simplest. */
const byEnough = (ways: readonly (WayOn | undefined)[]): WayOn[] =>
  ways
    .filter((way): way is WayOn => way !== undefined)
    .sort((a, b) => Number(b.isEnough ?? false) - Number(a.isEnough ?? false));

/** What is left where nothing that was worked out does it alone. */
const withBottles = (ways: readonly WayOn[]): WayOn[] =>
  ways.some(({ isEnough }) => isEnough)
    ? [...ways]
    : [
        ...ways,
        {
          id: 'bottles',
          words: 'Bottles of hot water, wrapped in cloth, among them',
          follows: [
            'Together with the rest: a cover over the box with a gap for air, and bottles filled again as they cool, all night. Common practice; how warm it gets is not worked out.',
          ],
        },
      ];
