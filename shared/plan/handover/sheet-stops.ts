import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { quantityOfDay } from '../../explain/daily-series.js';
import { input, quantity, type Quantity } from '../../explain/quantity.js';
import type { Farm } from '../../farm/farm.js';
import type { Facility } from '../../farm/facility.js';
import { FROST_CAUTIONS, HEAT_OUT_CAUTIONS, isFrost } from '../../farm/heat-caution.js';
import type { Herd } from '../../farm/herd.js';
import type { FarmPicture } from '../../farm/picture.js';
import { cattleWaterFormulas } from '../../pasture/cattle-water.js';
import { calvesBeside, calvingSeasons, mayCalve } from '../../pasture/calving-season.js';
import { dueOf, isThere, milkedHead } from '../../pasture/herd-demand.js';
import { withNamedCows } from '../../pasture/named-cows.js';
import type { Tables } from '../../tables/tables.js';
import { formatValue, type Reader } from '../../units/format.js';
import { carriedSaid, lastsForDays } from '../../units/carried.js';
import { formatDate } from '../../units/dates.js';
import type { AnimalPlans } from '../farm/animal-plans.js';
import type { BatchPlan } from '../batch-plan.js';
import type { FeedPhasePart } from '../feed.js';
import { SPOT_UNDER_HEAT, type HeatInstruction } from '../heat-instructions.js';
import { heatOfDay } from '../heat-of-day.js';
import { calvingSaid } from '../calving-said.js';
import { dayInPlan } from '../day-in-plan.js';
import { withStillHere } from '../left-untold.js';
import { medicinesToday, waitedToday, type Waited } from '../medicines.js';
import { refillsOn } from '../refills-on.js';
import { hayPartFormulas } from '../pasture/hay-part.js';
import { hayOfDay, herdDays, type HerdDay } from '../pasture/herd-day.js';
import { heatActions } from './sheet-heat.js';
import { bagsOpened, bagWords, type AwayDays } from './bags-to-open.js';
import { placeNow } from '../pasture/moves-assumed.js';
import type { NamedCow } from '../pasture/herd-part.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import { freshGrassOf } from '../pasture/strips.js';

/** One place on the round of a day: which animals, where, how much, what to look for. */
export interface SheetStop {
  readonly id: string;
  readonly name: string;
  readonly where?: string;
  readonly amounts: readonly Quantity[];
  /** Feed and hay as they are carried: bags and bales. */
  readonly carried: readonly string[];
  readonly actions: readonly string[];
  /** Of lines with amounts that change little by little, what is done. */
  readonly does?: Readonly<Record<string, string>>;
  readonly lookFor: readonly string[];
  /** Chicks that something warms on that day. */
  readonly isHeated?: true;
  /** Cattle, who drink outdoors. */
  readonly isHerd?: true;
  /** Animals that go by a name, and what to know of each. */
  readonly named?: readonly string[];
  /** A cow may calve: soon, early, late, or nobody told when. */
  readonly mayCalve?: true;
  /** What of theirs nobody eats, because of a medicine; left out while there is none. */
  readonly keptOut?: readonly Waited[];
  /** Keys of cautions. */
  readonly cautions: readonly string[];
}

interface SavedPlan {
  readonly id: string;
  readonly plan: BatchPlan;
}

/** A batch on a date; undefined when it is not there. */
export function batchStop(
  { id, plan }: SavedPlan,
  on: PlainDate,
  {
    facilities,
    tables,
    farm,
    reader,
    away,
    usualNight,
  }: {
    facilities: readonly Facility[];
    tables: Tables;
    farm: Farm;
    reader: Reader;
    away: AwayDays;
    /** How the heaters are set in a usual night, some days after arrival. */
    usualNight?: (day: number) => HeatInstruction | undefined;
  },
): SheetStop | undefined {
  const date = dayInPlan(plan, on);
  if (date === undefined) return undefined;
  const day = daysBetween(plan.arrivalDate, date);
  const { lookFor } = tables.work;
  const moveOut = plan.outdoors.moveOut && String(plan.outdoors.moveOut.value);
  const isBrooding = moveOut === undefined || date < moveOut;
  const homes = plan.occupies.filter(({ from, to }) => from <= date && date <= to);
  // A brooder is held for some days after the birds have gone: the last place taken is theirs.
  const home = homes.reduce<(typeof homes)[number] | undefined>(
    (last, each) => (last && each.from < last.from ? last : each),
    undefined,
  );
  const where = facilities.find((facility) => facility.id === home?.facilityId)?.name;
  const amounts = AMOUNTS.flatMap((series) => quantityOfDay(plan.daily, series, day) ?? []).filter(
    ({ value }) => 0 < Number(value),
  );
  const freezes = isFrost(quantityOfDay(plan.daily, 'night-low', day)?.value);
  const feedKg = Number(quantityOfDay(plan.daily, 'feed-day', day)?.value ?? 0);
  const lays = amounts.some(({ unit }) => unit === 'eggs');
  const phase = plan.feed.phases.findLast(({ starts }) => String(starts.value) <= date);
  const next = plan.feed.phases.find(({ starts }) => String(starts.value) === date);
  const moves = plan.outdoors.movesPerDay?.value;
  const heatSaid = isBrooding ? heatActions(plan, date, reader, usualNight?.(day)) : [];
  const refills = refillsOn(plan, date, {
    ...{ farm, tables },
    say: (value, unit) => formatValue(value, unit, reader),
  });
  const carried =
    0 < feedKg && phase
      ? [feedText(plan, { phase, bags: feedKg / phase.bagKg, date: on, away, reader })]
      : [];
  const actions = [
    ...(next && 0 < day ? [`${next.name} begins today: mix old and new over a few days.`] : []),
    'Fresh water, drinkers rinsed.',
    ...refills.map(({ said }) => said),
    ...heatSaid,
    ...(moveOut === date
      ? [
          plan.brooding
            ? 'They move out of the brooder today.'
            : 'They do without the hen from today.',
        ]
      : []),
    ...(lays ? ['Collect the eggs.'] : []),
    ...(isBrooding ? [] : [moves === undefined ? LET_OUT : movesText(moves)]),
  ];
  return {
    id,
    name: plan.name,
    ...(where === undefined ? {} : { where }),
    amounts,
    carried,
    actions,
    does: Object.fromEntries([
      ...carried.map((line) => [line, phase!.name]),
      ...refills.map(({ said, does }) => [said, does]),
    ]),
    ...(0 < heatSaid.length ? { isHeated: true } : {}),
    lookFor: isBrooding && plan.brooding ? lookInBrooder(plan, date) : lookFor.outdoorBirds,
    cautions: plan.cautions.filter(
      (key) =>
        (isBrooding ? BROODING_CAUTIONS.has(key) : key === 'heat-stress') ||
        (freezes && (isBrooding ? HEAT_OUT : FROST_CAUTIONS).includes(key)),
    ),
  };
}

/** Feed as it is carried; where a bag lasts for days, on which of them one is opened. */
function feedText(
  plan: BatchPlan,
  {
    phase: { name },
    bags,
    date,
    away,
    reader,
  }: {
    phase: FeedPhasePart;
    bags: number;
    date: PlainDate;
    away: AwayDays;
    reader: Reader;
  },
): string {
  const said = carriedSaid(bags, 'bag');
  if (!lastsForDays(bags)) return `Feed: ${name}, ${said}.`;
  const say = (day: PlainDate): string => formatDate(day, reader);
  const words = bagWords(bagsOpened(plan, away), { from: away.from, on: date, say });
  return `Feed: ${name}, ${said}: ${words}.`;
}

/** What to look for; where heaters have a spot below them, what a thermometer there is worth. */
function lookInBrooder({ heat, brooding }: BatchPlan, date: PlainDate): readonly string[] {
  const week = heat?.weeks.find(({ from, to }) => from <= date && date <= to);
  const hasSpot = week && [week.night, week.day, week.noon].some(({ underHeat }) => underHeat);
  const lookFor = brooding?.lookFor ?? [];
  return hasSpot ? [...lookFor, SPOT_UNDER_HEAT] : lookFor;
}

const AMOUNTS = ['alive', 'feed-day', 'water-day', 'under-heater', 'eggs-day'];
const HEAT_OUT = Object.values(HEAT_OUT_CAUTIONS);
const BROODING_CAUTIONS = new Set(['heat-lamp', 'heat-plate', 'carbon-monoxide', 'salmonella']);

/** Birds of a coop; a pen that is moved has no run, and nobody opens it. */
const LET_OUT = 'Out in the morning; at dusk in, all counted, doors latched.';

function movesText(movesPerDay: number): string {
  if (movesPerDay < 1) return `Move the pen every ${Math.round(1 / movesPerDay)} days.`;
  return movesPerDay === 1 ? 'Move the pen once.' : `Move the pen ${movesPerDay} times.`;
}

/** A herd on a date; undefined when it has no cattle then. */
export function herdStop(
  herd: Herd,
  day: HerdDay | undefined,
  { picture, tables, pasture }: Season,
): SheetStop | undefined {
  if (!day || day.head === 0) return undefined;
  const { units } = picture.farm;
  const { on: date } = day;
  const part = pasture?.herds.find(({ id }) => id === herd.id);
  const paddock = (id: string): string => pasture?.paddocks.find((p) => p.id === id)?.name ?? id;
  const moves = pasture?.moves.filter((move) => move.herdId === herd.id) ?? [];
  const stay = moves.find(({ from, to }) => from <= date && date <= to);
  const fresh = pasture
    ? freshGrassOf(herd, pasture, picture.today).find((each) => each.date === date)
    : undefined;
  const next = moves.find(({ from }) => date < from);
  const on = input('On', date, 'date');
  const whole = withNamedCows(herd, picture.cows);
  const births = picture.calvings ?? [];
  const calves = calvesBeside(whole, births, date, tables);
  const { alarms: judged } = tables.judgements;
  const calving = calvingSaid(calvingSeasons(whole, births, date, tables), { date, units, judged });
  const isAwaited = mayCalve(whole, births, date, tables);
  const hay = 0 < day.dryKg ? hayOfDay(picture, tables, day) : undefined;
  const carried = hay ? [hayText(hay, formatValue(hay.baleKg, 'kg', picture.farm))] : [];
  return {
    id: herd.id,
    name: herd.name,
    where: stay ? paddock(stay.paddockId) : offSeason(herd, moves, day, { picture, pasture }),
    amounts: [
      quantity('Head', day.head, 'count', hayPartFormulas.headToday, [on]),
      ...(0 < calves
        ? [quantity('Calves beside them', calves, 'count', hayPartFormulas.headToday, [on])]
        : []),
      quantity(
        'Water today',
        day.waterL,
        'L',
        cattleWaterFormulas.day,
        [input('Head', day.head, 'count'), on],
        { rows: [day.water] },
      ),
      ...(hay ? [{ ...hay.weight, label: 'Hay for this day, with what they waste' }] : []),
    ],
    carried,
    does: Object.fromEntries(carried.map((line) => [line, 'hay'])),
    actions: [
      ...calving,
      ...untoldCalves(whole, date, tables),
      ...(0 < milkedHead(whole, date, tables) ? [MILKING] : []),
      ...(fresh?.strip === 1 ? [`They come into ${fresh.paddock} today.`] : []),
      ...(fresh && 1 < fresh.strip ? [`Today the next strip of ${fresh.paddock}.`] : []),
      ...(next && next.from === addDays(date, 1)
        ? [`Tomorrow they go into ${paddock(next.paddockId)}.`]
        : next && stay
          ? [
              `They stay in ${paddock(stay.paddockId)} until ${formatDate(addDays(next.from, -1), { units, today: date })}.`,
            ]
          : []),
    ],
    lookFor: tables.work.lookFor.cattle,
    isHerd: true,
    ...(isAwaited ? { mayCalve: true } : {}),
    ...(part?.cows ? { named: part.cows.map(knownBy) } : {}),
    cautions: [],
  };
}

/** Where they are on a day without a stay: until the next one where they were told to stand. */
function offSeason(
  herd: Herd,
  moves: PasturePlan['moves'],
  { on, dryKg }: HerdDay,
  { picture, pasture }: Pick<Season, 'picture' | 'pasture'>,
): string {
  const { inPaddockId } = placeNow(herd, pasture?.assumedMoves);
  const stands = picture.paddocks.find(({ id }) => id === inPaddockId)?.name;
  // After a stay of the plan they have come off grass as planned.
  const isGone = moves.some(({ from, to }) => picture.today <= to && from <= on);
  if (stands === undefined || isGone) return 'not on grass';
  return `in ${stands}${0 < dryKg ? ', with hay' : ''}`;
}

/** Of some calves nobody has told when they come: a sheet makes none up. */
function untoldCalves({ groups }: Pick<Herd, 'groups'>, date: PlainDate, tables: Tables): string[] {
  const untold = groups.some(
    (group) =>
      isThere(group, date) && group.classId === 'cow-calf' && dueOf(group, tables) === undefined,
  );
  return untold
    ? ['When their calves come, or came, is not written down: count cows and calves.']
    : [];
}

/** Bales of the day; one that lasts for days is counted from the day it was put out. */
function hayText({ bales, said, bale }: ReturnType<typeof hayOfDay>, weight: string): string {
  const days = Math.round(1 / bales.value);
  return days < 2
    ? `Hay today: ${said} (${bale}, ${weight} each).`
    : `Hay: a bale (${bale}, ${weight}) lasts them ${days} days from the day it was put out: put out the next when it is all but eaten.`;
}

const MILKING =
  'The two milkings about twelve hours apart, each until no more comes. Where a calf still drinks, it has its share first or is kept apart at night, as is usual here.';

interface Season {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly pasture: PasturePlan | undefined;
}

/** “Clover (ear tag 12): stands for milking only with feed.” */
const knownBy = ({ name, earTag, notes }: NamedCow): string =>
  `${name}${earTag === undefined ? '' : ` (ear tag ${earTag})`}${notes === undefined ? '' : `: ${notes}`}`;

/** Batches and herds that are there on a date, as stops of a round. */
export const stopsOn = (
  picture: FarmPicture,
  tables: Tables,
  { batches, pasture }: Pick<AnimalPlans, 'batches' | 'pasture'>,
  away: AwayDays,
): ((date: PlainDate) => SheetStop[]) => {
  const { facilities, herds } = picture;
  const stillHere = withStillHere(batches, { ...picture, tables });
  return (date) => {
    const dayOf = herdDays(picture, tables, { pasture, on: date });
    return [
      ...stillHere.flatMap(
        (batch) =>
          batchStop(batch, date, {
            ...{ facilities, tables, farm: picture.farm },
            reader: { ...picture.farm, today: date },
            away,
            usualNight: (day) => heatOfDay(picture, tables, batch.id, day, 'usual')?.night,
          }) ?? [],
      ),
      ...herds.flatMap((herd) => herdStop(herd, dayOf(herd), { picture, tables, pasture }) ?? []),
    ].map((stop) => withMedicines(stop, { ...picture, today: date }));
  };
};

/** Whoever milks or gathers eggs for the household reads first what is not to be used. */
function withMedicines(stop: SheetStop, picture: FarmPicture): SheetStop {
  const gives = {
    milk: stop.actions.includes(MILKING),
    eggs: stop.amounts.some(({ unit }) => unit === 'eggs'),
  };
  const medicines = medicinesToday(picture, stop.id, gives);
  if (medicines.length === 0) return stop;
  return {
    ...stop,
    actions: [...medicines.map(({ said }) => `${said}.`), ...stop.actions],
    keptOut: waitedToday(picture, stop.id, gives),
  };
}
