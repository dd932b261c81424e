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
import { broodingHeat, daysOfHeat } from '../heat-days.js';
import { heatOfDay } from '../heat-of-day.js';
import { sharesNeeded } from '../heat-weeks.js';
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
  told: FarmPicture,
  tables: Tables,
  { batchId, working: stillWork, isPowerOut }: HeaterOut,
): Mishap | undefined {
  // What was told to be out before is asked again here.
  const picture = { ...told, heatOuts: [] };
  const context = batchContext(picture, tables, batchId);
  const { batch, facilities, farm, life, today, say } = context;
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  const day = daysBetween(batch.arrivalDate, today);
  if (!brooder || day < 0 || life.days <= day) return undefined;
  const ageDays = life.arrivalAgeDays + day;
  const wantedC = underHeaterC(scheduleOf(context), ageDays);
  if (wantedC === undefined) return undefined;
  const { kind } = brooder.heat;
  const working = isPowerOut && kind !== 'gas' ? 0 : stillWork;
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
      ...(isPowerOut && kind === 'gas'
        ? [
            'Gas burns on without power unless its thermostat or fan is plugged in: see that it does.',
          ]
        : []),
      `It is dark for about ${formatHours(Math.round(hours))}, and coldest just before sunrise.`,
      ...(now.isEnough
        ? []
        : [
            'Do something within the hour, then look again in an hour: piled up and loud is too cold.',
          ]),
    ],
    numbers: now.numbers ?? [],
    ways: now.isEnough
      ? []
      : withBottles(
          byEnough([
            ...waysOf(night, brooder, left, isPowerOut),
            ...(isPowerOut && kind !== 'gas' ? waysWithoutPower(night, brooder) : []),
          ]),
          isPowerOut,
        ),
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
  const indoorsWords = `Bring the box into a room ${isPowerOut ? 'that a stove keeps at' : 'of'} ${context.say(roomC, 'degC')}`;
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
        more: [
          ...(isPowerOut
            ? [
                'A room without a stove of its own cools all night too, and this is not reckoned with: measure it, and take the warmest.',
              ]
            : []),
          'Out of drafts, on dry bedding, away from the kitchen; wash your hands after.',
        ],
      }),
    ),
  ];
}

/** Heat that asks for no power from the line, as strong as tonight needs it. */
function waysWithoutPower(night: NightAsked, brooder: Brooder): (WayOn | undefined)[] {
  const { context, day } = night;
  const { count, wattsEach, kind } = brooder.heat;
  const generator = (on: number): WayOn | undefined =>
    nightWith(night, withHeaters(brooder, on), {
      id: 'generator',
      words: `A generator for ${on} ${HEATER[kind]}${on === 1 ? '' : 's'}, ${context.say(on * wattsEach, 'W')}`,
      more: [
        'Outdoors, far from doors, windows and vents, dry, with cords made for that load; never wired into the house without a switch that cuts the line off.',
      ],
    });
  const counts = Array.from({ length: count }, (_, k) => k + 1);
  const least = counts.find((on) => generator(on)?.isEnough) ?? count;
  const gas: Brooder = {
    ...brooder,
    heat: { kind: 'gas', warms: 'spot', wattsEach: 1, count: 1, thermostat: true },
  };
  const heat = broodingHeat(context, gas);
  const needed = sharesNeeded(heat, gas.lengthM * gas.widthM);
  const days = daysOfHeat(heat, gas.closesOff ? needed : needed.map(() => 1));
  const needW = days[day]?.need.mid ?? 0;
  const stepW = context.tables.judgements.alarms.gasStepW.value;
  const gasW = Math.ceil(needW / stepW) * stepW;
  return [
    0 < count ? generator(least) : undefined,
    0 < gasW
      ? nightWith(
          night,
          { ...gas, heat: { ...gas.heat, wattsEach: gasW } },
          {
            id: 'gas',
            words: `A gas brooder heater that needs no plug, ${context.say(gasW, 'W')} or more`,
            more: [
              'Only one made for animals and indoors, hung by chain as high as its maker says, with fresh air all the time and a carbon monoxide alarm; never a grill, a camp stove or a patio heater.',
            ],
          },
        )
      : undefined,
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
  const { coldAirC, coldDiedShare, warmAirC, warmDiedShare } = chickBox;
  const perHundred = (share: number): number => Number((100 * share).toFixed(1));
  return {
    ...way,
    numbers: [air, ...(way.numbers ?? [])],
    follows: [
      ...way.follows,
      `Packed as close as in the box they came in they warm its air to about ${say(air.value, 'degC')}. That is cold for them, but they come through a night of it: of chicks kept two days in air of ${say(coldAirC, 'degC')} about ${perHundred(coldDiedShare)} in 100 died, in air of ${say(warmAirC, 'degC')} ${perHundred(warmDiedShare)}. Small boxes with holes, no more than came in one; feed and water at daylight.`,
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

/** Closed off to the least floor on which it does: on less, what is strong gets too hot everywhere. */
function boarded(
  night: NightAsked,
  brooder: Brooder,
  { id, words }: { readonly id: string; readonly words: (floor: string) => string },
): WayOn | undefined {
  const { boardFloorsStep, boardFloorsMost } = night.tables.judgements.alarms;
  let first: WayOn | undefined;
  for (let floors = 1; floors <= boardFloorsMost.value; floors += boardFloorsStep.value) {
    const part = smaller(night, brooder, floors);
    if (!part) break;
    const floor = night.context.say(part.lengthM * part.widthM, 'm2');
    const way = nightWith(night, part, { id, words: words(floor) });
    if (way?.isEnough) return way;
    first ??= way;
  }
  return first;
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
        ? [`Hang it higher until it shows ${context.say(wantedC, 'degC')} under it.`]
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
const withBottles = (ways: readonly WayOn[], isPowerOut: boolean): WayOn[] =>
  // What asks for gear may not be there in the hour it is needed.
  !isPowerOut && ways.some(({ isEnough }) => isEnough)
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
