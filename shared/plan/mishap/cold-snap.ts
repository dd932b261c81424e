import { addDays, daysBetween } from '../../calendar/plain-date.js';
import { oldSaid } from '../age-said.js';
import type { Quantity } from '../../explain/quantity.js';
import { facilityOf, type Brooder } from '../../farm/facility.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../farm/picture.js';
import { underHeaterC } from '../../poultry/brooding.js';
import { spaceRowAt } from '../../poultry/space.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { formatMoney } from '../../units/format.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { batchContext } from '../batch-request.js';
import { scheduleOf } from '../brooding.js';
import { extraFeed, nightHours, nightOfHeat } from '../cold-nights.js';
import type { PlanContext } from '../context.js';
import { heatOfDay } from '../heat-of-day.js';
import { nightLowAt } from '../move-out.js';
import { rowsOfMove } from '../nights-of-move.js';
import { spaceStandardOf } from '../space-standard.js';
import { whatChanged } from '../what-changed.js';
import { cautionsSaid } from './cautions-said.js';
import { withSpell, type Spell } from './typed-weather.js';
import type { Mishap, WayOn } from './way-on.js';

interface Asked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly spell: Spell;
}

/**
 * What cold nights ahead mean for every batch that is there: whether birds of their age stand them,
 * and what each way on comes to. Those in the brooder are held against what its heaters can do, and
 * against the move if it falls on these nights.
 *
 * Left out: wind and wet, which make a night colder than its low; batches of which no plan can be made.
 */
export function coldSnap(picture: FarmPicture, tables: Tables, spell: Spell): Mishap[] {
  const asked = { picture, tables, spell };
  return picture.batches
    .filter(({ arrivalDate }) => arrivalDate <= addDays(picture.today, spell.days))
    .flatMap((batch) => planned(() => ofBatch(asked, batch)) ?? []);
}

/** A batch that cannot be planned says so on its own screen. */
export function planned<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}

function ofBatch(asked: Asked, batch: NamedBatch): Mishap | undefined {
  const { picture, tables, spell } = asked;
  const context = batchContext(picture, tables, batch.id);
  const { life, moveOutDay, today } = context;
  const day = Math.max(0, daysBetween(batch.arrivalDate, today));
  if (life.days <= day) return undefined;
  const isOut = moveOutDay !== undefined && moveOutDay <= day;
  const of: OfBatch = {
    ...asked,
    ...{ batch, context, day },
    colder: withSpell(picture, spell),
  };
  const mishap = isOut ? outdoors(of) : inBrooder(of);
  return mishap && { ...mishap, cautions: cautionsSaid(tables, picture.farm, mishap.cautionKeys) };
}

interface OfBatch extends Asked {
  readonly batch: NamedBatch;
  readonly context: PlanContext;
  readonly day: number;
  /** The farm with the spell in its forecast. */
  readonly colder: FarmPicture;
}

type Found = Omit<Mishap, 'cautions'> & { readonly cautionKeys: readonly string[] };

/** Birds on grass or in a coop. */
function outdoors(of: OfBatch): Found {
  const { batch, context, day, spell } = of;
  const { life, moveOutRule, say } = context;
  const ageDays = life.arrivalAgeDays + day;
  const standC = nightLowAt(moveOutRule, ageDays);
  const nights = Array.from({ length: spell.days }, (_, k) => k).filter(
    (k) => spell.airC < nightLowAt(moveOutRule, ageDays + k),
  );
  const about = `${oldSaid(ageDays)} old, they stand nights down to ${say(standC, 'degC')} in a dry shelter`;
  const name = batch.name;
  if (nights.length === 0) {
    return {
      name,
      follows: [`${about}: nothing to do but keep them dry and out of the wind.`],
      ...{ numbers: [], ways: [], cautionKeys: [] },
    };
  }
  return {
    name,
    follows: [
      `${about}. ${say(spell.airC, 'degC')} is too cold for them ${nights.length === 1 ? 'for a night' : `on ${nights.length} nights`}.`,
    ],
    numbers: [],
    ways: [shelter(of), ...heatOutside(of), ...backIn(of)],
    cautionKeys: ['cold', 'heat-lamp'],
  };
}

function shelter({ context, day, spell }: OfBatch): WayOn {
  const feed = extraFeed(
    context,
    { night: day, lowC: spell.airC, hours: nightHours(context, day) },
    rowsOfMove(context, day),
  );
  return {
    id: 'shelter',
    words: 'Extra bedding, the wind side closed',
    follows: [
      'Deep dry bedding, tarps on the wind side, corners rounded off; air must still get out at the top. Look after dark: birds that pile smother.',
      `They eat about ${context.say(feed.value, 'kg')} more a night: fill the feeders in the evening.`,
    ],
    numbers: [feed],
  };
}

/** The heaters of their brooder, where nobody else needs them. */
function heatOutside(of: OfBatch): WayOn[] {
  const { context, day, spell } = of;
  const brooder = freeBrooder(of);
  const cost = brooder && nightOfHeat(context, nightHours(context, day));
  if (!brooder || !cost) return [];
  const { count, wattsEach } = brooder.heat;
  const all = formatMoney(cost.value * spell.days, context.farm.currency);
  return [
    {
      id: 'heat',
      words: `Heat in the shelter: the ${count} of ${brooder.name}`,
      follows: [
        `${count} of ${context.say(wattsEach, 'W')} from dusk to dawn, ${all} for the ${spell.days === 1 ? 'night' : `${spell.days} nights`}.`,
        'Only with heaters made for outdoors, hung twice, clear of bedding and tarps; no cord through wet grass.',
      ],
      numbers: [cost],
    },
  ];
}

/** Their brooder, unless another batch holds it on one of these nights. */
function freeBrooder({ context, spell }: OfBatch): Brooder | undefined {
  const { facilities, batch, occupied, today } = context;
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  const to = addDays(today, spell.days);
  const isTaken = occupied.some(
    (each) => each.facilityId === brooder?.id && each.from <= to && today <= each.to,
  );
  return isTaken ? undefined : brooder;
}

function backIn(of: OfBatch): WayOn[] {
  const { context, day, spell } = of;
  const { life, say } = context;
  const brooder = freeBrooder(of);
  if (!brooder) return [];
  const { rows } = spaceStandardOf(context);
  const needM2 =
    Math.ceil(life.aliveAll[day]!) * spaceRowAt(rows, life.arrivalAgeDays + day).floorM2;
  const haveM2 = brooder.lengthM * brooder.widthM;
  const isEnough = needM2 <= haveM2 + 1e-9;
  return [
    {
      id: 'back-in',
      words: `Back into ${brooder.name} for ${spell.days === 1 ? 'the night' : `${spell.days} nights`}`,
      isEnough,
      follows: [
        isEnough
          ? `They need ${say(needM2, 'm2')} at their age and have ${say(haveM2, 'm2')}. Clean and dry it first.`
          : `They need ${say(needM2, 'm2')} at their age and would have ${say(haveM2, 'm2')}: too tight for more than the coldest hours.`,
      ],
    },
  ];
}

/** Chicks that are still on heat: tonight's heat, and the move where it falls on these nights. */
function inBrooder(of: OfBatch): Found | undefined {
  const { batch, colder, tables, day, context, spell, picture } = of;
  const { say } = context;
  const isThere = batch.arrivalDate <= picture.today;
  const night = isThere ? heatOfDay(colder, tables, batch.id, day)?.night : undefined;
  const heat = night && [...(night.underHeat ? [night.underHeat] : []), night.air];
  const move = movedBy(of);
  if (!heat && move.length === 0) return undefined;
  return {
    name: batch.name,
    follows: [
      ...(night && heat
        ? [
            `In the brooder: ${lower(night.words)}, ${say(heat[0]!.value, 'degC')} ${night.underHeat ? 'under the heat' : 'in the box'}${wanted(of)}.`,
          ]
        : []),
      ...(move.length === 0 && moveSoon(of)
        ? [
            `They go out as planned, ${say(moveDate(context)!, 'date')}: these nights are over by then or warm enough.`,
          ]
        : []),
    ],
    numbers: heat ?? [],
    ways: move,
    cautionKeys: heat && spell.airC < 0 ? ['heat-lamp'] : [],
  };
}

/** What they want under the heat at their age. */
function wanted({ context, day }: OfBatch): string {
  const brooder = facilityOf(context.facilities, 'brooder', context.batch.brooderId);
  // A plate warms by touch: what is wanted under it is no air of the box.
  if (brooder?.heat.kind === 'plate') return ', and the plates warm those under them';
  const wantedC = underHeaterC(scheduleOf(context), context.life.arrivalAgeDays + day);
  return wantedC === undefined ? '' : `; ${context.say(wantedC, 'degC')} is wanted`;
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

const moveDate = ({ moveOutDay, dateOf }: PlanContext): string | undefined =>
  moveOutDay === undefined ? undefined : dateOf(moveOutDay);

/** Nights that the rule looks at after a move. */
const moveSoon = ({ context, spell, picture }: OfBatch): boolean => {
  const on = moveDate(context);
  return on !== undefined && on <= addDays(picture.today, spell.days);
};

/** The move later, where the cold nights fall on it, as the real plan has it with these nights known. */
function movedBy(of: OfBatch): WayOn[] {
  const { batch, tables, picture, colder, context, spell } = of;
  if (!moveSoon(of)) return [];
  const before = planBatch(picture, tables, batch.id);
  const free: NamedBatch = withoutMoveOut(batch);
  const after = planBatch(withBatch(colder, free), tables, batch.id);
  const on = dayOf(after.outdoors.moveOut);
  if (on === undefined || on <= moveDate(context)!) return [];
  const kept = { ...batch, moveOutDate: on };
  return [
    {
      id: 'stay-in',
      words: `Keep them in until ${context.say(on, 'date')}`,
      follows: changes(before, planBatch(withBatch(picture, kept), tables, batch.id), of),
      batch: kept,
      isEnough: true,
    },
    {
      id: 'out-anyway',
      words: `Out as planned, ${context.say(moveDate(context)!, 'date')}`,
      follows: [
        `Nights down to ${context.say(spell.airC, 'degC')}; at that age they stand ${context.say(standAt(context), 'degC')}.`,
      ],
      isEnough: standAt(context) <= spell.airC,
    },
  ];
}

const standAt = ({ life, moveOutRule, moveOutDay }: PlanContext): number =>
  nightLowAt(moveOutRule, life.arrivalAgeDays + moveOutDay!);

const withoutMoveOut = ({ moveOutDate: _own, ...batch }: NamedBatch): NamedBatch => batch;

const dayOf = (of: Quantity | undefined): string | undefined =>
  typeof of?.value === 'string' && /^\d{4}-/.test(of.value) ? of.value : undefined;

/** What a change of a batch leads to, in words. */
export const changes = (
  before: BatchPlan,
  after: BatchPlan,
  { picture, tables }: Pick<Asked, 'picture' | 'tables'>,
): string[] => {
  const list = whatChanged(before, after, {
    reader: { ...picture.farm, today: picture.today },
    judged: tables.judgements.birds,
  });
  const said = list.filter(({ id }) => id !== 'solved').map(({ words }) => words);
  return said.length === 0 ? ['Nothing else changes.'] : said;
};
