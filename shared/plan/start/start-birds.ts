import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { Purpose } from '../../farm/batch.js';
import type { Brooder, Facility } from '../../farm/facility.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../farm/picture.js';
import type { BirdsToCome, LayersToCome } from '../../farm/start.js';
import type { Tables } from '../../tables/tables.js';
import { findArrivals } from '../arrival-finder.js';
import { planBatch } from '../batch-plan.js';
import { usualFeeds, type OrderedBirds } from '../usual-feeds.js';
import { sidesFor, type LampChoice } from './fit-brooder.js';
import { fitFacility } from './fit-facility.js';
import { largerOf } from './larger-of.js';
import type { StartSizes } from './start-defaults.js';
import type { StartSetting } from './start-setting.js';

/** Room that any young bird has by the end of brooding, to begin with, m². */
const TRIAL_M2 = 0.1;
/** A box that comes in a month is looked for in its four weeks, and else within a year. */
const MONTH_DAYS = 27;
const YEAR_DAYS = 370;
const MOST_PASSES = 7;

const NAMES = {
  meat: { batch: 'Meat birds', each: 'meat birds', brooder: 'Brooder for meat birds' },
  layers: { batch: 'Layers', each: 'layers', brooder: 'Brooder for pullets' },
} as const;
/** Batches of one kind by their order, whatever month they are moved to later. */
const ORDER = ['First', 'Second', 'Third', 'Fourth'] as const;

type ToCome = BirdsToCome & Pick<LayersToCome, 'startedWeeks' | 'areHere'>;

/** Places that all batches of one kind have one after the other. */
interface Places {
  readonly brooder: string;
  readonly home: string;
  readonly freezer: string;
}

/**
 * The farm with the batches of one kind, and with what they need: a brooder where the birds come as
 * chicks, and pens, freezer or a coop, each as large as the plans of the batches ask for and round in
 * the farm's units.
 */
export function withBirds(
  picture: FarmPicture,
  purpose: Purpose,
  toCome: readonly ToCome[],
  setting: StartSetting,
): FarmPicture {
  const { newId } = setting;
  const places: Places = { brooder: newId(), home: newId(), freezer: newId() };
  const sizes = setting.defaults[picture.farm.units];
  const isBrooded = toCome.some((each) => startedWeeksOf(each, setting) === undefined);
  const mostBirds = Math.max(...toCome.map(({ birds }) => birds));
  const trial: Facility[] = [
    ...(isBrooded
      ? [brooderOf(places.brooder, NAMES[purpose].brooder, mostBirds * TRIAL_M2, picture, setting)]
      : []),
    ...homesOf(purpose, places, sizes),
  ];
  const begun: FarmPicture = { ...picture, facilities: [...picture.facilities, ...trial] };
  const ids: string[] = [];
  const dated = toCome.reduce<FarmPicture>((before, each) => {
    const { batch: name } = NAMES[purpose];
    const batch = batchOf(before, { purpose, name, toCome: each, places }, setting);
    const after = ids.at(-1);
    ids.push(batch.id);
    return withDated(before, batch, each, { after, setting });
  }, begun);
  const named = ids.length === 1 ? dated : namedByOrder(dated, ids, NAMES[purpose].each);
  const fitted = (before: FarmPicture, lamps: LampChoice): FarmPicture => {
    const plans = ids.map((id) => planBatch(before, setting.tables, id));
    const fit = (each: Facility): Facility =>
      Object.values(places).includes(each.id)
        ? plans
            .map((plan) => fitFacility(each, plan, before, lamps, setting))
            .reduce((one, other) => largerOf(one, other))
        : each;
    return { ...before, facilities: before.facilities.map(fit) };
  };
  const fittedAll = (lamps: LampChoice): FarmPicture => {
    // Lamps are chosen once the brooder has its size, its board and its place, and then counted.
    let before = named;
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      const after = fitted(before, lamps);
      if (JSON.stringify(after.facilities) === JSON.stringify(before.facilities)) return after;
      before = after;
    }
    return before;
  };
  const fit = fittedAll('smaller-if-too-strong');
  // Nobody hangs half a dozen small lamps over twenty chicks: a weaker bulb in later weeks is easier.
  const chosen = hasManySmallLamps(fit, places.brooder, sizes) ? fittedAll('usual') : fit;
  return purpose === 'meat' ? withoutIdlePen(chosen, ids, places.home, setting.tables) : chosen;
}

/** Batches that are called by the order in which they come, whichever of them was asked for first. */
function namedByOrder(picture: FarmPicture, ids: readonly string[], each: string): FarmPicture {
  const inOrder = picture.batches
    .filter(({ id }) => ids.includes(id))
    .sort((a, b) => a.arrivalDate.localeCompare(b.arrivalDate))
    .map(({ id }) => id);
  const batches = picture.batches.map((batch) =>
    ids.includes(batch.id)
      ? { ...batch, name: `${ORDER[inOrder.indexOf(batch.id)]!} ${each}` }
      : batch,
  );
  return { ...picture, batches };
}

const startedWeeksOf = (
  { areHere, startedWeeks }: ToCome,
  { defaults }: Pick<StartSetting, 'defaults'>,
): number | undefined => (areHere ? defaults.hensHere.ageWeeks : startedWeeks);

/** The order of one batch, with everything but its day. */
function batchOf(
  picture: FarmPicture,
  order: {
    readonly purpose: Purpose;
    readonly name: string;
    readonly toCome: ToCome;
    readonly places: Places;
  },
  setting: StartSetting,
): NamedBatch {
  const { tables, defaults, newId } = setting;
  const { purpose, name, toCome, places } = order;
  const { birds, areHere = false } = toCome;
  const startedWeeks = startedWeeksOf(toCome, setting);
  const strain = tables.strains.find((each) => each.defaultFor?.includes(purpose))!;
  const store = picture.facilities.find(({ kind }) => kind === 'feed-store');
  const ordered: OrderedBirds = {
    ...{ purpose, strainId: strain.id, wantedBirds: birds },
    ...(startedWeeks === undefined ? {} : { origin: 'started' }),
  };
  const feeds = usualFeeds(ordered, tables);
  const hasFewFeeds = feeds.id !== strain.feedProgram[purpose];
  return {
    ...{ id: newId(), name },
    ...ordered,
    sex: purpose === 'meat' ? 'straight-run' : 'pullets',
    arrivalDate: addDays(picture.today, areHere ? -defaults.hensHere.daysAgo : defaults.leadDays),
    ...(areHere ? { orderedBirds: birds } : {}),
    ...(startedWeeks === undefined
      ? { hatchToArrivalDays: 1, brooderId: places.brooder }
      : {
          hatchToArrivalDays: 0,
          arrivalAgeWeeks: startedWeeks,
        }),
    ...(purpose === 'meat'
      ? { penId: places.home, freezerId: places.freezer }
      : { coopId: places.home }),
    ...(store === undefined ? {} : { feedStoreId: store.id }),
    ...(hasFewFeeds ? { feedProgramId: feeds.id } : {}),
    assumed: [
      ...['name', 'strainId', 'sex', ...(hasFewFeeds ? ['feedProgramId'] : [])],
      ...(startedWeeks === undefined ? ['hatchToArrivalDays'] : []),
      ...(areHere ? ['arrivalAgeWeeks'] : []),
      ...(isOnOneDay(toCome) ? [] : ['arrivalDate']),
    ],
  };
}

/** The farm with a batch on its day: that which was said, or the best week of the time that was. */
function withDated(
  picture: FarmPicture,
  batch: NamedBatch,
  toCome: ToCome,
  { after, setting }: { readonly after: string | undefined; readonly setting: StartSetting },
): FarmPicture {
  const { birds, areHere = false } = toCome;
  // They were counted where they are: no usual losses of the time since they came are taken off.
  const came = { batchId: batch.id, change: 'arrived', date: batch.arrivalDate, birds } as const;
  if (areHere) return withBatch({ ...picture, headChanges: [...picture.headChanges, came] }, batch);
  const begun = withBatch(picture, batch);
  const before = picture.batches.find(({ id }) => id === after);
  const arrivalDate = bestArrival(begun, batch.id, { toCome, before }, setting);
  return withBatch(begun, { ...batch, arrivalDate });
}

/** Birds of winter that no night lets out have no use for a pen. */
function withoutIdlePen(
  picture: FarmPicture,
  ids: readonly string[],
  penId: string,
  tables: Tables,
): FarmPicture {
  const stayIn = ids.filter((id) => !planBatch(picture, tables, id).outdoors.moveOut);
  const parted = stayIn.reduce((before, id) => {
    const { penId: _, ...batch } = before.batches.find((each) => each.id === id)!;
    return withBatch(before, batch);
  }, picture);
  if (stayIn.length < ids.length) return parted;
  return { ...parted, facilities: parted.facilities.filter(({ id }) => id !== penId) };
}

const hasManySmallLamps = (
  { facilities }: FarmPicture,
  brooderId: string,
  { lamp }: StartSizes,
): boolean =>
  facilities.some(
    (each) =>
      each.id === brooderId &&
      each.kind === 'brooder' &&
      each.heat.wattsEach === lamp.smallerWatts &&
      lamp.smallerMost < each.heat.count,
  );

/** Whether the household says the day itself. */
const isOnOneDay = ({ from, to }: BirdsToCome): boolean => from !== undefined && from === to;

/** The best week of a time, in the terms of the arrival finder; the day itself where it is said. */
function bestArrival(
  picture: FarmPicture,
  batchId: string,
  { toCome, before }: { readonly toCome: BirdsToCome; readonly before: NamedBatch | undefined },
  { defaults, tables }: StartSetting,
): PlainDate {
  const { today } = picture;
  const { from, to } = toCome;
  if (from !== undefined && isOnOneDay(toCome)) return from;
  // A second batch is one after the first, as soon as its places are free.
  const soonest = before ? addDays(before.arrivalDate, 1) : addDays(today, defaults.leadDays);
  const first = from === undefined ? soonest : from < today ? today : from;
  const span = from === undefined ? YEAR_DAYS : MONTH_DAYS;
  const last = [to ?? addDays(first, span), addDays(first, 7)].sort().at(-1)!;
  const weeks = findArrivals(picture, tables, batchId, { from: first, to: last });
  const best = weeks.find(({ rank }) => rank === 1)!;
  // Who names no month means the next good one: half a year more is not worth a few points.
  const { soonerWithin } = tables.judgements.arrival;
  const least = Math.max(1, best.score - soonerWithin.value);
  const sooner = weeks.find(({ score }) => least <= score) ?? best;
  return (from === undefined ? sooner : best).arrivalDate;
}

const homesOf = (
  purpose: Purpose,
  ids: Pick<Places, 'home' | 'freezer'>,
  sizes: StartSizes,
): Facility[] =>
  purpose === 'meat'
    ? [
        {
          ...{ id: ids.home, kind: 'field-pen', name: 'Pasture pen', count: 1 },
          floorM2: sizes.pen.floorM2,
          assumed: ['name', 'floorM2', 'count'],
        },
        {
          ...{ id: ids.freezer, kind: 'freezer', name: 'Chest freezer', usedL: 0 },
          liters: sizes.freezersL[0]!,
          assumed: ['name', 'liters', 'usedL'],
        },
      ]
    : [
        {
          ...{ id: ids.home, kind: 'coop', name: 'Coop', nestBoxes: 1 },
          ...{ floorM2: sizes.coop.floorStepM2, roostM: sizes.coop.roostStepM, runM2: 0 },
          assumed: ['name', 'floorM2', 'roostM', 'nestBoxes', 'runM2'],
        },
      ];

function brooderOf(
  id: string,
  name: string,
  floorM2: number,
  { farm }: FarmPicture,
  { defaults }: StartSetting,
): Brooder {
  const { brooderHeightM, plywoodMm, lamp } = defaults[farm.units];
  const board = { layers: [{ materialId: 'plywood', thicknessMm: plywoodMm }] };
  return {
    ...{ id, kind: 'brooder', name },
    ...sidesFor(floorM2, defaults.brooderSidesM[farm.units]),
    heightM: brooderHeightM,
    // No lid: wood is not hung a hand's breadth above a lamp.
    ...{ walls: board, standsIn: 'unheated-building' },
    heat: { kind: 'lamp', wattsEach: lamp.wattsEach, count: lamp.least, thermostat: false },
    assumed: [
      ...['name', 'lengthM', 'widthM', 'heightM', 'walls', 'standsIn'],
      ...['heat.kind', 'heat.wattsEach', 'heat.count', 'heat.thermostat', 'feederCm', 'drinkerCm'],
    ],
  };
}
