import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { quantityOfDay } from '../../explain/daily-series.js';
import type { NumberQuantity } from '../../explain/quantity.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { formatDate, type DateReader } from '../../units/dates.js';
import { formatValue } from '../../units/format.js';
import type { Unit } from '../../units/unit.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { heatOfDay } from '../heat-of-day.js';
import { cautionsSaid } from './cautions-said.js';
import { changes, planned } from './cold-snap.js';
import { leavingOn } from '../leaving-on.js';
import { withSpell, type Spell } from './typed-weather.js';
import type { Mishap, WayOn } from './way-on.js';

/**
 * What hot days ahead mean for every batch that is there: water, shade, and for meat birds near their
 * last day what it comes to if they leave before the heat or after it.
 *
 * Left out: damp air, which makes heat worse; batches of which no plan can be made.
 * Source of the limits: the table of heat stress.
 */
export function heatWave(picture: FarmPicture, tables: Tables, spell: Spell): Mishap[] {
  const each = picture.batches
    .filter(({ arrivalDate }) => arrivalDate <= picture.today)
    .flatMap((batch) => planned(() => ofBatch({ picture, tables, spell, batch })) ?? []);
  const areOut = each.some(({ isOnHeat }) => !isOnHeat);
  return [...(areOut ? [ofAll(picture, tables, spell)] : []), ...each.map(({ mishap }) => mishap)];
}

/** What holds for all that are out is said once. */
function ofAll(picture: FarmPicture, tables: Tables, spell: Spell): Mishap {
  const say = sayFor(picture);
  const { beginsC, seriousC } = tables.heatStress;
  return {
    name: 'All that are out',
    follows: [
      spell.airC < beginsC
        ? `They stand ${say(spell.airC, 'degC')}: birds pant from about ${say(beginsC, 'degC')}.`
        : `Birds pant from about ${say(beginsC, 'degC')}, and it is serious above ${say(seriousC, 'degC')}.`,
    ],
    numbers: [],
    ways: [shade()],
    cautions: cautionsSaid(tables, picture.farm, ['heat-stress']),
  };
}

interface Asked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly spell: Spell;
  readonly batch: NamedBatch;
}

function ofBatch(
  asked: Asked,
): { readonly mishap: Mishap; readonly isOnHeat: boolean } | undefined {
  const { picture, tables, spell, batch } = asked;
  const { today, farm } = picture;
  const plan = planBatch(picture, tables, batch.id);
  const leaves = plan.leaving && String(plan.leaving.on.value);
  if ((leaves ?? plan.lastDate) < today) return undefined;
  const hotter = planBatch(withSpell(picture, spell), tables, batch.id);
  const day = daysBetween(batch.arrivalDate, today);
  const [water, more] = [plan, hotter].map(({ daily }) => quantityOfDay(daily, 'water-day', day));
  const say = sayFor(picture);
  const { beginsC } = tables.heatStress;
  const isHot = beginsC <= spell.airC;
  const goesOut = plan.outdoors.moveOut && String(plan.outdoors.moveOut.value);
  const isIn = goesOut === undefined || today < goesOut;
  const isOnHeat = isIn && heatOfDay(picture, tables, batch.id, day) !== undefined;
  const isHeavy =
    leaves !== undefined &&
    daysBetween(today, leaves) <= tables.judgements.arrival.lastHotDays.value;
  const ways = [
    water && more ? drink(water as NumberQuantity, more as NumberQuantity, say) : undefined,
    ...(isOnHeat ? [lessHeat()] : []),
    ...(isHeavy && isHot ? otherDays(asked, plan, leaves) : []),
  ];
  const mishap: Mishap = {
    name: batch.name,
    follows: [
      ...(isOnHeat ? ['They are in the brooder: hot air there needs less from the heaters.'] : []),
      ...(isHeavy && isHot ? ['Heavy ones die first.'] : []),
      ...(leaves && isHot && !isOnHeat
        ? [
            `They leave ${formatDate(leaves, readerOf(picture))}${isInSpell(picture, spell, leaves) ? ', in the heat' : ''}.`,
          ]
        : []),
    ],
    numbers: [],
    ways: ways.filter((way): way is WayOn => way !== undefined),
    cautions: cautionsSaid(tables, farm, ['heat-stress']),
  };
  return { mishap, isOnHeat };
}

const readerOf = ({ farm, today }: FarmPicture): DateReader => ({ ...farm, today });
const sayFor =
  ({ farm }: FarmPicture) =>
  (value: number, unit: Unit): string =>
    formatValue(value, unit, farm);

const isInSpell = ({ today }: FarmPicture, { days }: Spell, on: PlainDate): boolean =>
  today <= on && on < addDays(today, days);

function drink(
  usual: NumberQuantity,
  hot: NumberQuantity,
  say: (value: number, unit: Unit) => string,
): WayOn {
  return {
    id: 'water',
    words: 'More water',
    follows: [
      `They drink ${say(hot.value, 'L')} on such a day instead of ${say(usual.value, 'L')}: fill twice, cool, in the shade.`,
    ],
    numbers: [hot],
  };
}

const shade = (): WayOn => ({
  id: 'shade',
  words: 'Shade and air',
  follows: [
    'Shade over the whole pen before the sun is high, sides open to the wind, fewer birds to a pen. Feed in the cool of the evening, take feed away at noon, do not chase or crate them by day.',
  ],
});

const lessHeat = (): WayOn => ({
  id: 'less-heat',
  words: 'Less heat in the brooder',
  follows: [
    'Take the lid off, raise the heaters or switch some off, open the shed to the air. Far from the heat with open beaks is too hot.',
  ],
});

/** Where their last day is a hot one, a day before it and one after the heat: what the plan of each comes to. */
function otherDays(asked: Asked, plan: BatchPlan, leaves: PlainDate): WayOn[] {
  const { picture, tables, spell } = asked;
  if (!isInSpell(picture, spell, leaves)) return [];
  const soonest = addDays(picture.today, tables.judgements.alarms.leaveSoonestDays.value);
  const after = addDays(picture.today, spell.days);
  return [
    ...(soonest < leaves ? [onDay(asked, plan, soonest, 'earlier')] : []),
    ...(leaves < after ? [onDay(asked, plan, after, 'later')] : []),
  ].filter((way): way is WayOn => way !== undefined);
}

function onDay(
  asked: Asked,
  plan: BatchPlan,
  on: PlainDate,
  id: 'earlier' | 'later',
): WayOn | undefined {
  const { picture, tables, batch } = asked;
  const other = leavingOn(batch, plan, on);
  const tried = planned(() => planBatch(withBatch(picture, other), tables, batch.id));
  const leaves = tried?.leaving && String(tried.leaving.on.value);
  if (!tried || leaves === undefined) return undefined;
  return {
    id,
    words: `Process ${id}, ${formatDate(leaves, readerOf(picture))}`,
    follows: [
      ...changes(plan, tried, asked),
      ...(id === 'earlier' ? ['Catch and haul in the cool of the morning.'] : []),
    ],
    batch: other,
  };
}
