import type { PlainDate } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import {
  from,
  fromRow,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
} from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { brooderBoxFormulas } from '../poultry/brooder-box.js';
import { lampZoneFormulas } from '../poultry/lamp-zone.js';
import type { Tables } from '../tables/tables.js';
import type { PlanContext } from './context.js';
import { surroundingRows, type BroodingHeat } from './heat-days.js';
import { warmsRoom } from './heat-rig.js';
import type { HeatSetting } from './heat-setting.js';
import type { HeatWeek } from './heat-weeks.js';

export const instructionFormulas = {
  on: {
    id: 'heaters-on',
    title: 'Heaters to have on',
    words:
      'The fewest of those there are with which it is warm enough under them, the cool end stays at least 3 °C (5 °F) below that, and the air nowhere comes to what birds of that age cannot stand; in the first two weeks at night as many as give every chick a place. The lid comes off where heaters fewer by one would be too cold. By day a lamp under which it is more than 5 °C (9 °F) too warm is raised, with the lid off where that is in the way, or switched off.',
    symbols: 'min{n: T(n) ≥ T_h, T_air(n) ≤ T_h − 3 °C}',
    sources: ['PLANNING_GUESS'],
    mark: 'estimate',
  },
} satisfies Record<string, Formula>;

/** What is on at one time of day, in words and numbers. */
export interface HeatInstruction {
  readonly words: string;
  readonly around: NumberQuantity;
  readonly on: NumberQuantity;
  readonly lidOff: boolean;
  /** By day, where the lamps at the night's height make it far too warm straight below them. */
  readonly raisedTo?: NumberQuantity;
  /** Straight under a heater; of plates and with none on it is left out. */
  readonly underHeat?: NumberQuantity;
  readonly air: NumberQuantity;
}

/** A week of age on the brooder card. */
export interface HeatWeekPart {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly fromAgeDays: number;
  readonly toAgeDays: number;
  readonly lampHeight?: NumberQuantity;
  readonly night: HeatInstruction;
  readonly day: HeatInstruction;
  readonly noon: HeatInstruction;
  /** Air at a hot noon with all left as on a cold night, where that is something else. */
  readonly ifLeft?: NumberQuantity;
  /** What to do against heat, when it is warmer outside than the birds want their air. */
  readonly hot?: string;
}

export const COOLING =
  'Hot weather: no heat while the air is this warm. Lid off, doors and windows open, shade over the roof, a gentle fan across the room but not on the birds. Cool water in twice the drinkers, room to spread out. Open beaks and drooping wings mean too hot: cool them at once.';

/** The same in short, for paper beside the brooder. */
export const SPOT_UNDER_HEAT =
  'A thermometer straight under the heat shows that spot: it may well be hotter than the birds are to have, for they walk away from it. Go by the birds, and by the air around the brooder.';

/** What the two temperatures of a brooder are, said wherever they stand side by side. */
export const SPOT_AND_AIR =
  'The spot under the heat is where a cold bird warms itself and walks away from again: it may well be hotter than the schedule. The air of the whole brooder is what none of them can leave, and it must not get too hot. Go by what it is around the brooder, not by the clock.';

export function instructionsOf(
  context: PlanContext,
  brooder: Brooder,
  heat: BroodingHeat,
  { weeks, conduction }: { weeks: readonly HeatWeek[]; conduction: NumberQuantity },
): HeatWeekPart[] {
  const { life, dateOf } = context;
  const shared: Shared = { context, brooder, heat, conduction };
  return weeks.map((week) => {
    const differs = week.noon.on !== week.night.on || week.noon.isOpen !== week.night.isOpen;
    const hangs = brooder.heat.kind === 'lamp' && 0 < week.night.on;
    const night = instruction(shared, week, 'night');
    return {
      from: dateOf(week.first),
      to: dateOf(week.last),
      fromAgeDays: life.arrivalAgeDays + week.first,
      toAgeDays: life.arrivalAgeDays + week.last,
      ...(hangs ? { lampHeight: heightOf(shared, week.night.heightM, night.air) } : {}),
      night,
      day: instruction(shared, week, 'day'),
      noon: instruction(shared, week, 'noon'),
      ...(differs ? { ifLeft: airOf(shared, week, 'left', 'Air at noon if all is left on') } : {}),
      ...(isHot(heat, week, context.tables.heatStress) ? { hot: COOLING } : {}),
    };
  });
}

interface Shared {
  readonly context: PlanContext;
  readonly brooder: Brooder;
  readonly heat: BroodingHeat;
  readonly conduction: NumberQuantity;
}

/**
 * Warmer outside at noon than the air that the schedule asks for, and in the brooder as warm as
 * birds pant from: older ones are asked less than a mild day has, and need no fan for that.
 */
const isHot = (
  { rig }: BroodingHeat,
  { hotDay, noon }: HeatWeek,
  { beginsC }: Tables['heatStress'],
): boolean =>
  hotDay.targetC - (rig.isAirSchedule ? 0 : rig.table.zone.roomBelowHeaterK) < hotDay.noonC &&
  beginsC <= noon.airC;

type Time = 'night' | 'day' | 'noon';

const TIMES: Record<Time, string> = { night: 'cold night', day: 'usual day', noon: 'hot noon' };

function instruction(shared: Shared, week: HeatWeek, when: Time): HeatInstruction {
  const setting = week[when];
  const { aroundC, targetC } = {
    night: { aroundC: week.coldDay.nightC, targetC: week.coldDay.targetC },
    day: { aroundC: week.usualDay.usualDayC, targetC: week.usualDay.targetC },
    noon: { aroundC: week.hotDay.noonC, targetC: week.hotDay.targetC },
  }[when];
  const { rig } = shared.heat;
  const time = TIMES[when];
  const { heightM } = setting;
  const isRaised = 0 < setting.on && week.night.heightM < heightM;
  const hasSpot = 0 < setting.on && rig.heat.kind !== 'plate' && !rig.isAirSchedule;
  const air = airOf(shared, week, when, `Air in the brooder, ${time}`);
  const { lamps, tooHot } = rig.table;
  return {
    words: wordsOf(shared, week, when),
    around: quantity(`Around the brooder, ${time}`, aroundC, 'degC', AROUND_FACT, [], {
      rows: surroundingRows(shared.brooder, shared.context.tables),
    }),
    on: quantity(
      `${HEATERS[rig.heat.kind]} on, ${time}`,
      setting.on,
      'count',
      instructionFormulas.on,
      [
        from(air, 'T_air'),
        input('Wanted under the heat', targetC, 'degC', 'T_h'),
        ...(week.coldDay.working === rig.heat.count
          ? [fromRow(shared.brooder, 'heat.count', 'There are', rig.heat.count, 'count')]
          : [input('Work', week.coldDay.working, 'count')]),
        fromTable(lamps, 'Cool end at least so much cooler', lamps.coolEndBelowK, 'K'),
      ],
      { rows: [tooHot] },
    ),
    lidOff: rig.hasLid && !rig.isRoom && setting.isOpen,
    ...(isRaised ? { raisedTo: heightOf(shared, heightM, air) } : {}),
    ...(hasSpot
      ? { underHeat: underOf(shared, { air, setting, heightM, label: `Under the heat, ${time}` }) }
      : {}),
    air,
  };
}

const AROUND_FACT: Formula = {
  id: 'around-brooder-then',
  title: 'Air around the brooder',
  words:
    'The coldest night of the week to expect, in a building 3 °C warmer than outdoors; a usual day and the hottest noon to expect, with the doors of a building open. Sun on the roof is not counted.',
  symbols: 'T_out = T_night + 3 °C; T_out = T_day; T_out = T_hot',
  sources: ['ARITHMETIC'],
  mark: 'computed',
};
export const aroundFormulas = { around: AROUND_FACT };

function airOf(
  { heat: { rig }, conduction, brooder, context }: Shared,
  week: HeatWeek,
  when: Time | 'left',
  label: string,
): NumberQuantity {
  const setting = week[when];
  const { ventilation, birds, openTop } = rig.table;
  const isOpen = 0 < rig.box(week.share, setting.isOpen).openTopM2;
  const hour = {
    night: { day: week.coldDay, aroundC: week.coldDay.nightC, birdsW: week.coldDay.birds.mid },
    day: { day: week.usualDay, aroundC: week.usualDay.usualDayC, birdsW: week.usualDay.birdsW },
    noon: { day: week.hotDay, aroundC: week.hotDay.noonC, birdsW: week.hotDay.birdsW },
    left: { day: week.hotDay, aroundC: week.hotDay.noonC, birdsW: week.hotDay.birdsW },
  }[when];
  return quantity(
    label,
    setting.airC,
    'degC',
    brooderBoxFormulas.air,
    [
      input('Around the brooder', hour.aroundC, 'degC', 'T_out'),
      input(`${HEATERS[rig.heat.kind]} on`, setting.on, 'count', 'n'),
      fromRow(brooder, 'heat.wattsEach', 'Each', rig.heat.wattsEach, 'W', 'P'),
      fromTable(birds, 'Warmth of the birds', hour.birdsW, 'W', 'Q_birds'),
      from(conduction, 'UA', 'Whole brooder, lid on where there is one'),
      fromTable(ventilation, 'Fresh air', hour.day.freshAir.mid, 'm3PerH', 'V'),
      input('Part of its length in use', week.share, 'share'),
      isOpen ? fromTable(openTop, 'Top', 'open', 'text') : input('Top', 'lid on', 'text'),
    ],
    { rows: surroundingRows(brooder, context.tables) },
  );
}

function underOf(
  { heat: { rig }, brooder }: Shared,
  {
    air,
    setting,
    heightM,
    label,
  }: { air: NumberQuantity; setting: HeatSetting; heightM: number; label: string },
): NumberQuantity {
  const { radiant, zone, gasBrooder } = rig.table;
  if (rig.heat.kind === 'gas') {
    return quantity(
      label,
      setting.underC,
      'degC',
      lampZoneFormulas.underGas,
      [
        from(air, 'T_air'),
        fromRow(brooder, 'heat.wattsEach', 'Each', rig.heat.wattsEach, 'W', 'P'),
        input(
          'Burning, of what they could',
          setting.watts / (setting.on * rig.heat.wattsEach),
          'share',
          'd',
        ),
        warmsRoom(rig.heat)
          ? fromTable(zone, 'Floor warmer than the air', zone.roomBelowHeaterK, 'K', 'ΔT')
          : fromTable(
              gasBrooder,
              'Rays on each square meter below',
              gasBrooder.fluxWPerM2,
              'W',
              'E',
            ),
      ],
      { rows: [radiant] },
    );
  }
  return quantity(label, setting.underC, 'degC', lampZoneFormulas.underLamp, [
    from(air, 'T_air'),
    fromRow(brooder, 'heat.wattsEach', 'Each', rig.heat.wattsEach, 'W', 'P'),
    input('Height', heightM * 100, 'cm', 'h'),
    fromTable(radiant, 'Part of it that is rays', radiant.share, 'share'),
  ]);
}

function heightOf(
  { heat: { rig }, context }: Shared,
  heightM: number,
  air: NumberQuantity,
): NumberQuantity {
  const { clearance, lamps } = rig.table;
  const { litter } = context.tables;
  return quantity('Lamps above the bedding', heightM * 100, 'cm', lampZoneFormulas.height, [
    fromTable(clearance, 'At least', rig.clearanceM * 100, 'cm', 'h_least'),
    fromTable(lamps, 'At most', lamps.highestM * 100, 'cm'),
    fromTable(litter, 'Bedding', litter.depthM * 100, 'cm'),
    from(air, 'T_air'),
  ]);
}

function wordsOf({ heat: { rig } }: Shared, week: HeatWeek, when: Time): string {
  const { working } = week.coldDay;
  const { heat } = rig;
  const { on, isOpen } = week[when];
  const name = HEATERS[heat.kind].toLowerCase();
  const one = name.replace(/s$/, '');
  // A plate goes by its own warmth, not by the air that is reckoned with here.
  const byHand = heat.kind === 'gas' ? ', turned down by the thermometer under it' : '';
  const all = heat.thermostat && heat.kind !== 'plate' ? ', by the thermostat' : byHand;
  const of =
    working === heat.count
      ? `${heat.count} ${heat.count === 1 ? one : name}`
      : working === 1
        ? `the 1 ${one} that works`
        : `the ${working} ${name} that work`;
  const none = working === 0 && 0 < heat.count ? `No ${one} works` : `No ${name} on`;
  const count = on === 0 ? none : `${on} of ${of} on${all}`;
  const airing = isOpen ? ', doors and windows open' : '';
  const lid = rig.isRoom ? airing : rig.hasLid ? (isOpen ? ', lid off' : ', lid on') : '';
  return `${count}${lid}`;
}

const HEATERS = { lamp: 'Lamps', plate: 'Plates', gas: 'Gas heaters' } as const;
