import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Sourced } from '../../explain/formula.js';
import { from, fromTable, input, quantity, together } from '../../explain/quantity.js';
import type { NumberQuantity } from '../../explain/quantity.js';
import type { Herd } from '../../farm/herd.js';
import type { FarmPicture } from '../../farm/picture.js';
import { cattleWaterFormulas } from '../../pasture/cattle-water.js';
import { hayNeededKg } from '../../pasture/hay.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { hayPartFormulas } from '../pasture/hay-part.js';
import { pastureContext } from '../pasture/pasture-context.js';
import { pastureOfFarm } from '../pasture/pasture-of-farm.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import { needRows, waterRows } from '../pasture/pasture-support.js';
import { chosenOr } from '../pasture/surplus.js';
import { nextDate, type NextDate } from './days-to-go.js';
import { todayFormulas } from './today-formulas.js';

/** Hay of a day as it is carried: bales first, the weight beside them. */
export interface HayToday {
  readonly bales: NumberQuantity;
  /** “3½ bales”, or “a bale every 5 days” of the large ones. */
  readonly said: string;
  /** The kind of bale. */
  readonly bale: string;
  readonly weight: NumberQuantity;
}

/** A herd in one line of the day. */
export interface HerdLine {
  readonly kind: 'herd';
  readonly id: string;
  readonly name: string;
  readonly head: NumberQuantity;
  /** Where it grazes; left out when it is not on grass. */
  readonly on?: { readonly paddock: string; readonly since: PlainDate; readonly until: PlainDate };
  readonly water: NumberQuantity;
  /** Left out on a day without any. */
  readonly hay?: HayToday;
  readonly next?: NextDate;
}

/** What a herd is and needs on one day. */
interface HerdDay {
  readonly head: number;
  readonly waterL: number;
  readonly dryKg: number;
  readonly water: Sourced;
  readonly fed: Sourced;
}

/** Herds on the day it is, those without cattle yet left out. */
export function herdLines(
  picture: FarmPicture,
  tables: Tables,
  pasture: PasturePlan | undefined,
): HerdLine[] {
  const dayOf = herdDays(picture, tables, pasture);
  return picture.herds.flatMap((herd) => {
    const day = dayOf(herd);
    return day && 0 < day.head ? [herdLine(picture, tables, { herd, day, pasture })] : [];
  });
}

function herdLine(
  picture: FarmPicture,
  tables: Tables,
  { herd, day, pasture }: { herd: Herd; day: HerdDay; pasture: PasturePlan | undefined },
): HerdLine {
  const { today } = picture;
  const on = input('On', today, 'date');
  const head = quantity('Head', day.head, 'count', hayPartFormulas.headToday, [on]);
  const stay = pasture?.moves.find(
    (move) => move.herdId === herd.id && move.from <= today && today <= move.to,
  );
  const next = pasture && nextMove(pasture, herd, today);
  return {
    kind: 'herd',
    ...{ id: herd.id, name: herd.name, head },
    ...(stay
      ? {
          on: {
            paddock: paddockName(pasture!, stay.paddockId),
            since: herd.inPaddockId === stay.paddockId ? (herd.inSince ?? stay.from) : stay.from,
            until: stay.to,
          },
        }
      : {}),
    water: quantity(
      'Water today',
      day.waterL,
      'L',
      cattleWaterFormulas.day,
      [input('Head', day.head, 'count'), on],
      { rows: [day.water] },
    ),
    ...(0 < day.dryKg ? { hay: hayToday(picture, tables, day) } : {}),
    ...(next ? { next } : {}),
  };
}

const paddockName = ({ paddocks }: PasturePlan, id: string): string =>
  paddocks.find((paddock) => paddock.id === id)?.name ?? id;

/** The next move; before the season the turn-out. */
function nextMove(pasture: PasturePlan, herd: Herd, today: PlainDate): NextDate | undefined {
  const move = pasture.moves.find((each) => each.herdId === herd.id && today < each.from);
  if (!move) return undefined;
  const turnOut = pasture.keyDates.herds.find(({ herdId }) => herdId === herd.id)?.turnOut;
  const isTurnOut = turnOut?.value === move.from;
  const paddock = paddockName(pasture, move.paddockId);
  return nextDate(isTurnOut ? `out on grass, ${paddock} first` : `on to ${paddock}`, {
    on: move.from,
    today,
    worked: isTurnOut ? turnOut : undefined,
  });
}

/** Hay to carry, what is lost at the feeder included; what is lost in store is lost already. */
function hayToday(
  { pastureChoices: choices, today }: FarmPicture,
  tables: Tables,
  { dryKg, fed }: HerdDay,
): HayToday {
  const { hay } = tables.pasture;
  const feeding = rowById(hay.feeding, choices.feedingId ?? 'ring');
  const bale = rowById(hay.bales, choices.baleId ?? hay.bales.at(-1)!.id);
  const { dryMatterShare } = hay;
  const dry = quantity(
    'Fed by hand today, dry matter',
    dryKg,
    'kg',
    hayPartFormulas.fedToday,
    [input('On', today, 'date')],
    { rows: [fed] },
  );
  const weight = quantity(
    'Hay to put out today',
    hayNeededKg({ dryMatterKg: dryKg, dryMatterShare, storeLoss: 0, feedLoss: feeding.loss }),
    'kg',
    todayFormulas.hay,
    [
      from(dry, 'F'),
      fromTable(hay, 'Dry share of hay', dryMatterShare, 'share', 'dm'),
      fromTable(
        chosenOr(choices.feedingId, feeding),
        ...([`Lost at feeding, ${feeding.name}`, feeding.loss, 'share', 'l_feed'] as const),
      ),
    ],
  );
  const one = fromTable(
    chosenOr(choices.baleId, hay),
    ...([`One bale, ${bale.name}`, bale.kg, 'kg', 'm_bale'] as const),
  );
  const bales = quantity('Bales to put out today', weight.value / bale.kg, 'ratio', BALES, [
    from(weight, 'H'),
    one,
  ]);
  return { bales, said: balesSaid(bales.value), bale: bale.name, weight };
}

const BALES = todayFormulas.bales;

/** Bales as they are carried: to the half where it takes one or more a day, else how long one lasts. */
export function balesSaid(aDay: number): string {
  if (aDay <= 2 / 3) return `a bale every ${Math.round(1 / aDay)} days`;
  const halves = Math.max(2, Math.round(2 * aDay));
  if (halves === 2) return '1 bale';
  return `${Math.floor(halves / 2)}${halves % 2 === 1 ? '½' : ''} bales`;
}

/** The day out of the plan of the pasture; between two seasons, which it leaves out, by itself. */
function herdDays(
  picture: FarmPicture,
  tables: Tables,
  pasture: PasturePlan | undefined,
): (herd: Herd) => HerdDay | undefined {
  const { today, herds } = picture;
  if (pasture && pasture.from <= today && today <= pasture.to) {
    const day = daysBetween(pasture.from, today);
    return ({ id }) => {
      const part = pasture.herds.find((each) => each.id === id);
      if (!part) return undefined;
      return {
        head: part.groups.reduce((sum, { headByDay }) => sum + headByDay[day]!, 0),
        waterL: part.waterByDay[day]!,
        dryKg: part.hayByDay[day]!,
        water: part.water,
        fed: pasture.order,
      };
    };
  }
  if (herds.length === 0) return () => undefined;
  const request = pastureOfFarm(picture, tables);
  const context = pastureContext({
    ...request,
    choices: { ...request.choices, from: today, to: addDays(today, 1) },
  });
  return ({ id }) => {
    const h = context.herds.findIndex((each) => each.id === id);
    const { head, waterL, demandKg } = context.herdDays[h]!;
    const at = context.span.from;
    return {
      head: head[at]!,
      waterL: waterL[at]!,
      dryKg: demandKg[at]!,
      water: together(waterRows(tables, context.herds[h]!)),
      fed: together(needRows({ ...context, herds: [context.herds[h]!] })),
    };
  };
}
