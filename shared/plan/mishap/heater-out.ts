import { dayLengthH } from '../../calendar/day-length.js';
import { dayOfYear, daysBetween } from '../../calendar/plain-date.js';
import { fromTable, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { facilityOf, type Brooder } from '../../farm/facility.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { heatersFor } from '../../poultry/brooder-heat.js';
import { underHeaterC } from '../../poultry/brooding.js';
import { chickBoxFormulas } from '../../poultry/chick-box.js';
import { spaceRowAt } from '../../poultry/space.js';
import { formatHours, formatValue } from '../../units/format.js';
import { batchContext } from '../batch-request.js';
import { scheduleOf } from '../brooding.js';
import type { PlanContext } from '../context.js';
import { broodingHeat } from '../heat-days.js';
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
      whichNight(context, day),
      ...(isPowerOut ? ['A pump stands still too: see that all animals have water.'] : []),
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
    boarded(night, left, {
      id: 'smaller',
      words: (floor) => `Close the box off to ${floor}, all birds in the small part`,
    }),
    isPowerOut || brooder.heat.count <= working
      ? undefined
      : nightWith(night, withHeaters(left, working + 1), {
          id: 'spare',
          words: `Hang a spare ${HEATER[brooder.heat.kind]} of ${context.say(brooder.heat.wattsEach, 'W')}`,
        }),
    isPowerOut || brooder.heat.count <= working
      ? undefined
      : boarded(night, withHeaters(left, working + 1), {
          id: 'spare-and-smaller',
          words: (floor) =>
            `A spare ${HEATER[brooder.heat.kind]} and the box closed off to ${floor}`,
        }),
    packedClose(
      night,
      nightWith(night, indoors, {
        id: 'indoors',
        words: small ? `${indoorsWords}, all birds close together` : indoorsWords,
        more: ['Out of drafts, on dry bedding, away from the kitchen; wash your hands after.'],
      }),
    ),
  ];
}

/** A warm room without any heat: what chicks boxed as close as they came make of it, by what is printed. */
function packedClose(
  { context, day, working }: NightAsked,
  way: WayOn | undefined,
): WayOn | undefined {
  const { life, say, tables } = context;
  const { chickBox, heatedRoom } = tables.heat;
  if (!way || 0 < working || chickBox.toAgeDays < life.arrivalAgeDays + day) return way;
  const air = quantity(
    'Air in a full chick box',
    heatedRoom.airC + chickBox.warmerK,
    'degC',
    chickBoxFormulas.chickBox,
    [
      fromTable(heatedRoom, 'Air of the room', heatedRoom.airC, 'degC', 'T_room'),
      fromTable(chickBox, 'A full box is warmer by', chickBox.warmerK, 'K'),
    ],
  );
  const perHundred = (share: number): number => Number((100 * share).toFixed(1));
  return {
    ...way,
    numbers: [air, ...(way.numbers ?? [])],
    follows: [
      ...way.follows,
      `Packed as close as in the box they came in they warm its air to about ${say(air.value, 'degC')}. That is cold for them, but they come through a night of it: of chicks kept two days in air of ${say(20, 'degC')} about ${perHundred(chickBox.diedShareAt20C)} in 100 died, in air of ${say(30, 'degC')} ${perHundred(chickBox.diedShareAt30C)}. Small boxes with holes, no more than came in one; feed and water at daylight.`,
    ],
  };
}

const HEATER = { lamp: 'lamp', plate: 'plate', gas: 'gas heater' } as const;

const withHeaters = (brooder: Brooder, count: number): Brooder => ({
  ...brooder,
  heat: { ...brooder.heat, count },
});

/** Says which night is meant: without a forecast a cold one, colder than the usual low beside it on Today. */
function whichNight({ weather, climate, today, say }: PlanContext, day: number): string {
  const lowOf = (lows: Float64Array): number => Math.min(lows[day]!, lows[day + 1] ?? lows[day]!);
  const [coldC, usualC] = [lowOf(weather.coldMinC), lowOf(weather.minC)];
  return climate.forecast?.some(({ date }) => date === today)
    ? `Tonight is reckoned with ${say(coldC, 'degC')} outdoors, as forecast.`
    : `There is no forecast of tonight, so it is reckoned as cold as one night in ten: ${say(coldC, 'degC')} outdoors. The usual low is ${say(usualC, 'degC')}.`;
}

/** Parts of the floor to try, in floors that birds of that age need. */
const FLOORS = [1, 1.25, 1.5, 2, 3];

/** Closed off to the least floor on which it does: on less, what is strong gets too hot everywhere. */
function boarded(
  night: NightAsked,
  brooder: Brooder,
  { id, words }: { readonly id: string; readonly words: (floor: string) => string },
): WayOn | undefined {
  const ways = FLOORS.flatMap((floors) => {
    const part = smaller(night, brooder, floors);
    if (!part) return [];
    const floor = night.context.say(part.lengthM * part.widthM, 'm2');
    return [nightWith(night, part, { id, words: words(floor) })];
  });
  return ways.find((way) => way?.isEnough) ?? ways[0];
}

/** The brooder closed off to so many floors as birds of that age need; undefined where that is no less. */
function smaller({ context, day }: NightAsked, brooder: Brooder, floors = 1): Brooder | undefined {
  const { life } = context;
  const { floorM2 } = spaceRowAt(spaceStandardOf(context).rows, life.arrivalAgeDays + day);
  const needed = floors * Math.ceil(life.aliveAll[day]!) * floorM2;
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
  const { warnC, dangerC } = broodingHeat(context, brooder).conditions[day]!;
  const isTooHot = warnC < air.value;
  const isWarmEnough =
    brooder.heat.kind === 'plate' && 0 < brooder.heat.count
      ? platesFor(context, brooder, day) <= brooder.heat.count
      : wantedC - offByK <= warmest.value;
  const isEnough = isWarmEnough && !isTooHot;
  const numbers = [...(underHeat ? [underHeat] : []), air];
  return {
    ...{ id: way.id, words: way.words, isEnough, numbers },
    follows: [
      ...(isTooHot
        ? [
            `Too hot: ${context.say(air.value, 'degC')} in all of it, and they cannot get away; birds of that age suffer above ${context.say(warnC, 'degC')} and are in danger above ${context.say(dangerC, 'degC')}. Leave them more room, or turn the heat down.`,
          ]
        : isEnough
          ? []
          : [sayStillShort(night, warmest)]),
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
