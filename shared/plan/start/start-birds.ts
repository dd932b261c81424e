import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { Purpose } from '../../farm/batch.js';
import type { Brooder, Facility } from '../../farm/facility.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../farm/picture.js';
import type { BirdsToCome, LayersToCome } from '../../farm/start.js';
import type { Tables } from '../../tables/tables.js';
import { findArrivals } from '../arrival-finder.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { usualFeeds, type OrderedBirds } from '../usual-feeds.js';
import type { StartDefaults, StartSizes } from './start-defaults.js';

/** What is at hand while a farm is begun. */
export interface StartSetting {
  readonly defaults: StartDefaults;
  readonly tables: Tables;
  readonly newId: () => string;
}

/** Room that any young bird has by the end of brooding, to begin with, m². */
const TRIAL_M2 = 0.1;
/** A box that comes in a month is looked for in its four weeks, and else within a year. */
const MONTH_DAYS = 27;
const YEAR_DAYS = 370;
const MOST_PASSES = 4;

const NAMES = {
  meat: { batch: 'Meat birds', brooder: 'Brooder for meat birds' },
  layers: { batch: 'Layers', brooder: 'Brooder for pullets' },
} as const;

/**
 * The farm with a batch more, and with what it needs: a brooder where the birds come as chicks, and
 * pens, freezer or a coop, each as large as the plan of the batch asks for and round in the farm's units.
 */
export function withBirds(
  picture: FarmPicture,
  purpose: Purpose,
  toCome: BirdsToCome & Pick<LayersToCome, 'startedWeeks' | 'areHere'>,
  setting: StartSetting,
): FarmPicture {
  const { tables, defaults, newId } = setting;
  const { birds, areHere = false } = toCome;
  const { hensHere } = defaults;
  const startedWeeks = areHere ? hensHere.ageWeeks : toCome.startedWeeks;
  const sizes = defaults[picture.farm.units];
  const ids = { batch: newId(), brooder: newId(), home: newId(), freezer: newId() };
  const strain = tables.strains.find((each) => each.defaultFor?.includes(purpose))!;
  const store = picture.facilities.find(({ kind }) => kind === 'feed-store');
  const order: OrderedBirds = {
    ...{ purpose, strainId: strain.id, wantedBirds: birds },
    ...(startedWeeks === undefined ? {} : { origin: 'started' }),
  };
  const feeds = usualFeeds(order, tables);
  const hasFewFeeds = feeds.id !== strain.feedProgram[purpose];
  const batch: NamedBatch = {
    id: ids.batch,
    name: NAMES[purpose].batch,
    ...order,
    sex: purpose === 'meat' ? 'straight-run' : 'pullets',
    arrivalDate: addDays(picture.today, areHere ? -hensHere.daysAgo : defaults.leadDays),
    ...(areHere ? { orderedBirds: birds } : {}),
    ...(startedWeeks === undefined
      ? { hatchToArrivalDays: 1, brooderId: ids.brooder }
      : {
          hatchToArrivalDays: 0,
          arrivalAgeWeeks: startedWeeks,
        }),
    ...(purpose === 'meat' ? { penId: ids.home, freezerId: ids.freezer } : { coopId: ids.home }),
    ...(store === undefined ? {} : { feedStoreId: store.id }),
    ...(hasFewFeeds ? { feedProgramId: feeds.id } : {}),
    assumed: [
      ...['name', 'strainId', 'sex', ...(hasFewFeeds ? ['feedProgramId'] : [])],
      ...(startedWeeks === undefined ? ['hatchToArrivalDays'] : []),
      ...(areHere ? ['arrivalAgeWeeks'] : []),
      ...(isOnOneDay(toCome) ? [] : ['arrivalDate']),
    ],
  };
  const trial: Facility[] = [
    ...(startedWeeks === undefined
      ? [brooderOf(ids.brooder, NAMES[purpose].brooder, birds * TRIAL_M2, picture, setting)]
      : []),
    ...homesOf(purpose, ids, sizes),
  ];
  // They were counted where they are: no usual losses of the time since they came are taken off.
  const came = { batchId: ids.batch, change: 'arrived', date: batch.arrivalDate, birds } as const;
  const begun = withBatch(
    {
      ...picture,
      facilities: [...picture.facilities, ...trial],
      headChanges: [...picture.headChanges, ...(areHere ? [came] : [])],
    },
    batch,
  );
  const arrivalDate = areHere ? batch.arrivalDate : bestArrival(begun, ids.batch, toCome, setting);
  const dated = withBatch(begun, { ...batch, arrivalDate });
  const fitted = (before: FarmPicture, lamps: LampChoice): FarmPicture => {
    const plan = planBatch(before, tables, ids.batch);
    const fit = (each: Facility): Facility =>
      Object.values(ids).includes(each.id) ? fitFacility(each, plan, before, lamps, setting) : each;
    return { ...before, facilities: before.facilities.map(fit) };
  };
  const fittedAll = (lamps: LampChoice): FarmPicture => {
    // Lamps are chosen once the brooder has its size and its board, and counted once they are chosen.
    let before = dated;
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      const after = fitted(before, lamps);
      if (JSON.stringify(after.facilities) === JSON.stringify(before.facilities)) return after;
      before = after;
    }
    return before;
  };
  const fit = fittedAll('smaller-if-too-strong');
  // Nobody hangs half a dozen small lamps over twenty chicks: a weaker bulb in later weeks is easier.
  const chosen = hasManySmallLamps(fit, ids.brooder, sizes) ? fittedAll('usual') : fit;
  return purpose === 'meat' ? withoutIdlePen(chosen, ids, tables) : chosen;
}

/** Birds of winter that no night lets out have no use for a pen. */
function withoutIdlePen(
  picture: FarmPicture,
  ids: { readonly batch: string; readonly home: string },
  tables: Tables,
): FarmPicture {
  if (planBatch(picture, tables, ids.batch).outdoors.moveOut) return picture;
  const { penId: _, ...batch } = picture.batches.find(({ id }) => id === ids.batch)!;
  const facilities = picture.facilities.filter(({ id }) => id !== ids.home);
  return withBatch({ ...picture, facilities }, batch);
}

type LampChoice = 'usual' | 'smaller-if-too-strong';

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
  toCome: BirdsToCome,
  { defaults, tables }: StartSetting,
): PlainDate {
  const { today } = picture;
  const { from, to } = toCome;
  if (from !== undefined && isOnOneDay(toCome)) return from;
  const first =
    from === undefined ? addDays(today, defaults.leadDays) : from < today ? today : from;
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
  ids: { readonly home: string; readonly freezer: string },
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

/** The smallest box of usual sides with so much floor, and not more than twice as long as wide. */
export function sidesFor(
  floorM2: number,
  sidesM: readonly number[],
): Pick<Brooder, 'lengthM' | 'widthM'> {
  const boxes = sidesM.flatMap((widthM) =>
    sidesM
      .filter((lengthM) => widthM <= lengthM && lengthM <= 2 * widthM)
      .map((lengthM) => ({ lengthM, widthM })),
  );
  const areaOf = ({ lengthM, widthM }: (typeof boxes)[number]): number => lengthM * widthM;
  const enough = boxes.filter((box) => floorM2 <= areaOf(box));
  const [smallest] = enough.sort((a, b) => areaOf(a) - areaOf(b));
  return smallest ?? boxes.at(-1)!;
}

/** A facility as large as the plan asks for. */
function fitFacility(
  facility: Facility,
  plan: BatchPlan,
  { farm, batches }: FarmPicture,
  lamps: LampChoice,
  { defaults }: StartSetting,
): Facility {
  const sizes = defaults[farm.units];
  const { outdoors, leaving } = plan;
  switch (facility.kind) {
    case 'brooder': {
      const [floor, feeder, drinker] = plan.space.needs.map(({ most }) => most.value);
      const neededW = (plan.heat?.heatersNeeded?.value ?? 0) * facility.heat.wattsEach;
      // A board across it costs less than lamps for a floor that small chicks do not use yet.
      const boarded = sizes.lamp.mostInAll * sizes.lamp.wattsEach < neededW && !facility.closesOff;
      const heat = boarded ? facility.heat : heatFor(facility, plan, sizes, lamps);
      return {
        ...facility,
        ...(boarded ? boardOf(facility) : {}),
        ...sidesFor(
          Math.max(floor!, plan.birds.toOrder.value * defaults.brooderM2PerChick),
          defaults.brooderSidesM[farm.units],
        ),
        feederCm: upTo(feeder!, sizes.edgeStepCm),
        drinkerCm: upTo(drinker!, sizes.edgeStepCm),
        heat,
        // Gas warms a room with a ceiling, not a box.
        ...(heat.kind === 'gas' ? roomOf(facility, sizes.roomHeightM) : {}),
      };
    }
    case 'field-pen':
      return { ...facility, count: outdoors.pensNeeded?.value ?? facility.count };
    case 'freezer': {
      const need = leaving?.freezerNeed?.value ?? 0;
      const { freezersL } = sizes;
      return { ...facility, liters: freezersL.find((each) => need <= each) ?? freezersL.at(-1)! };
    }
    case 'coop': {
      const hens = batches.find(({ coopId }) => coopId === facility.id)!.wantedBirds;
      const { floorStepM2, roostStepM, runStepM2 } = sizes.coop;
      return {
        ...facility,
        floorM2: upTo(outdoors.floorNeeded?.value ?? 0, floorStepM2),
        roostM: upTo(outdoors.roost?.value ?? 0, roostStepM),
        nestBoxes: outdoors.nests?.value ?? facility.nestBoxes,
        runM2: upTo(defaults.runM2PerHen * hens, runStepM2),
      };
    }
    default:
      return facility;
  }
}

const roomOf = ({ walls, assumed = [] }: Brooder, heightM: number): Partial<Brooder> => ({
  ...{ heightM, roof: walls },
  assumed: [...new Set([...assumed, 'roof'])],
});

const boardOf = ({ assumed = [] }: Brooder): Partial<Brooder> => ({
  closesOff: true,
  assumed: [...new Set([...assumed, 'closesOff'])],
});

/** Lamps that leave a cool end; gas where lamps would be too many. */
function heatFor(
  { heat }: Brooder,
  plan: BatchPlan,
  { lamp, gas }: StartSizes,
  lamps: LampChoice,
): Brooder['heat'] {
  const needed = plan.heat?.heatersNeeded?.value ?? 0;
  if (heat.kind === 'gas') return { ...heat, count: Math.max(1, needed) };
  if (lamp.most < needed)
    return { ...heat, kind: 'gas', wattsEach: gas.wattsEach, count: 1, thermostat: true };
  const isSmaller = lamps === 'smaller-if-too-strong' && isTooStrong(plan);
  const wattsEach = isSmaller ? lamp.smallerWatts : heat.wattsEach;
  return { ...heat, wattsEach, count: Math.max(lamp.least, needed) };
}

const isTooStrong = ({ issues }: BatchPlan): boolean =>
  issues.some(({ code }) => code === 'lamp-too-strong');

/** The next whole number of steps; four decimals, which no rounding of a step goes past. */
const upTo = (value: number, step: number): number =>
  Number((Math.max(1, Math.ceil(value / step - 1e-6)) * step).toFixed(4));
