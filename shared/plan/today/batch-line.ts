import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { quantityOfDay } from '../../explain/daily-series.js';
import { input, quantity, type NumberQuantity, type Quantity } from '../../explain/quantity.js';
import { comesByPost } from '../../farm/batch-origin.js';
import type { Purpose } from '../../farm/batch.js';
import { facilityOf } from '../../farm/facility.js';
import { FROST_CAUTIONS, HEAT_OUT_CAUTIONS, isFrost } from '../../farm/heat-caution.js';
import { heatersOn, heatOutsIn } from '../../farm/heat-out.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import type { EventKind } from '../../tables/task-template.js';
import { formatDate } from '../../units/dates.js';
import { formatValue } from '../../units/format.js';
import { inOwnUnits } from '../../units/own-units.js';
import { isAllUntold } from '../came-untold.js';
import { AWAITED_DAYS } from '../awaited.js';
import { GETS_BROODER } from '../batch-events.js';
import type { BatchPlan } from '../batch-plan.js';
import { saidOf } from '../bird-words.js';
import { refillsOn } from '../refills-on.js';
import { dayInPlan } from '../day-in-plan.js';
import { heatOfDay } from '../heat-of-day.js';
import type { HeatWeekPart } from '../heat-instructions.js';
import { leftUntold, processedUntold, type ProcessingUntold } from '../left-untold.js';
import type { PlannedBatch } from '../work/dated-work.js';
import { stageOf, type BatchStage } from './batch-stage.js';
import { nextDate, type NextDate } from './days-to-go.js';
import { medicinesToday, type MedicineToday } from '../medicines.js';
import { todayFormulas } from './today-formulas.js';

/** What is on in the brooder by day and tonight, and how warm it is to be. */
export interface HeatToday {
  /** Asked for under the heat at chick height. */
  readonly wanted: Quantity;
  /** Left out where no brooder is chosen. */
  readonly day?: HeatWeekPart['day'];
  readonly night?: HeatWeekPart['night'];
  readonly lampHeight?: NumberQuantity;
  /** What to do where the day is warmer than the birds want it. */
  readonly hot?: string;
  /** The warmest they have tonight, where that is too cold for them. */
  readonly tooCold?: NumberQuantity;
  /** Air of the whole brooder at noon, where today’s forecast makes it too hot for them. */
  readonly tooHot?: TooHot;
  /** The brooder is still to be built: the birds came before it stood. */
  readonly isToBuild?: true;
  /** What was told to be out and is not mended, or was mended today. */
  readonly out?: HeatOutToday;
}

/** Heat of a day that is forecast, with as little on as the birds can do with. */
interface TooHot {
  readonly air: NumberQuantity;
  readonly suffersAboveC: number;
  readonly level: 'stop' | 'act';
}

/** A report of heat that is out, or that was mended today. */
export interface HeatOutToday {
  readonly factId: string;
  readonly since: PlainDate;
  /** Left out once all of it works again. */
  readonly working?: number;
  readonly of: number;
}

/** A batch in one line of the day. */
export interface BatchLine {
  readonly kind: 'batch';
  readonly id: string;
  readonly name: string;
  readonly purpose: Purpose;
  readonly stage: BatchStage;
  readonly age?: NumberQuantity;
  /** Alive by the plan; of a batch to come the chicks that are ordered. */
  readonly head: Quantity;
  /** A box of them is sent, that may not come. */
  readonly isSent: boolean;
  /** Chicks that are due by the plan, of which nobody has told whether they came. */
  readonly awaited?: Quantity;
  /** The same in words: until it is told they are expected, not alive. */
  readonly awaitedSaid?: string;
  /** The day on which they were to come, where it is past and nobody told that they did. */
  readonly wasToCome?: PlainDate;
  /** What is to be so on the day on which the box is due, before it is opened. */
  readonly beforeBox?: string;
  /** The day on which they were to leave, where nobody told that they did: looked after as the day before it. */
  readonly wasToLeave?: PlainDate;
  /** Days before that one on which some were to be processed, of which nobody told: all are looked after. */
  readonly untoldDays?: readonly ProcessingUntold[];
  readonly where?: string;
  readonly heat?: HeatToday;
  readonly feed?: { readonly amount: Quantity; readonly phase: string };
  readonly water?: Quantity;
  /** Drinkers and feeders that do not last from one morning to the next. */
  readonly refills: readonly string[];
  readonly eggs?: Quantity;
  /** What a bag of today's feed and a bird weigh by the plan, for whoever tells what they do. */
  readonly weighs?: {
    readonly bagKg?: number;
    readonly liveKg?: number;
    readonly dressedKg?: number;
  };
  /** Lamp of the coop: hours to add today, and when that changes. */
  readonly lamp?: { readonly hours: NumberQuantity; readonly changesOn?: PlainDate };
  readonly next?: NextDate;
  /** Left out while none is waited for. */
  readonly medicines?: readonly MedicineToday[];
  /** What can hurt somebody or the birds beside what is shown. */
  readonly cautions: readonly { readonly title: string; readonly text: string }[];
}

/**
 * A batch on the day it is; undefined when it is over.
 *
 * @param planned with the days on which it may still be here (`withStillHere`)
 */
export function batchLine(
  picture: FarmPicture,
  tables: Tables,
  { id, name, plan }: PlannedBatch,
): BatchLine | undefined {
  const { today } = picture;
  const wasToLeave = leftUntold({ id, plan }, { ...picture, tables });
  // Of those who may still be here the day before the first untold one: on their last they are fed no more.
  const told = dayInPlan(plan, today);
  const asksIfCame = told === undefined && isAskedIfCame({ id, plan }, picture, tables);
  if (told === undefined && plan.arrivalDate <= today && !asksIfCame) return undefined;
  const untoldDays = processedUntold({ id, plan }, picture);
  const stage = asksIfCame ? 'coming' : stageOf(plan, today);
  const next = asksIfCame ? undefined : nextOf(plan, today);
  const line = {
    kind: 'batch' as const,
    ...{ id, name, stage, purpose: plan.purpose },
    isSent: picture.batches.some((batch) => batch.id === id && comesByPost(batch)),
    ...(next ? { next } : {}),
  };
  if (told === undefined || stage === 'coming' || stage === 'eggs') {
    const head = comingHead(plan, stage);
    const wasToCome = asksIfCame ? { wasToCome: plan.arrivalDate } : {};
    return { ...line, ...wasToCome, head, refills: [], cautions: [] };
  }
  const day = daysBetween(plan.arrivalDate, told);
  const ofDay = (series: string): Quantity | undefined => quantityOfDay(plan.daily, series, day);
  const phase = plan.feed.phases.findLast(({ starts }) => String(starts.value) <= today);
  const feed = ofDay('feed-day');
  const water = ofDay('water-day');
  const eggs = ofDay('eggs-day');
  const where = whereIs(plan, told, picture);
  const heat = stage === 'brooder' ? heatToday(picture, tables, { id, plan, day }) : undefined;
  const medicines = medicinesToday(picture, id, { eggs: eggs !== undefined });
  const isInBox = heat?.isToBuild === true;
  const lamp = lampToday(plan, today);
  const freezes = isFrost(ofDay('night-low')?.value);
  const { lastHotDays } = tables.judgements.arrival;
  const last = plan.leaving ? String(plan.leaving.on.value) : plan.lastDate;
  // Of what was to go and did not, all have grown on to today: as far as the plan says how they grow.
  const grownOn = today < last ? today : last;
  const isHeavy = plan.purpose !== 'meat' || daysBetween(today, last) < lastHotDays.value;
  return {
    ...line,
    age: quantity('Age', daysBetween(plan.hatchDate, today), 'day', todayFormulas.age, [
      input('Hatched', plan.hatchDate, 'date', 'hatch'),
    ]),
    head: headOf(plan, told, day),
    ...(0 < medicines.length ? { medicines } : {}),
    ...(isAwaited(picture, id, day)
      ? {
          awaited: plan.birds.chicksPlaced,
          awaitedSaid: awaitedSaid(plan.arrivalDate, picture),
          ...(day === 0 && plan.brooding && !plan.hatching ? { beforeBox: BEFORE_BOX } : {}),
        }
      : {}),
    ...(wasToLeave === undefined ? {} : { wasToLeave }),
    ...(0 < untoldDays.length ? { untoldDays } : {}),
    ...(wasToLeave === undefined && isUntold(picture, { id, plan, stage })
      ? { wasToCome: plan.arrivalDate }
      : {}),
    ...(where === undefined || isInBox ? {} : { where }),
    ...(heat ? { heat } : {}),
    ...(feed && phase ? { feed: { amount: feed, phase: phase.name } } : {}),
    ...(water ? { water } : {}),
    refills: refillsOn(plan, told, {
      ...{ farm: picture.farm, tables },
      say: (value, unit) => formatValue(value, unit, { ...picture.farm, today }),
    })
      .filter(({ rounds }) => 1 < rounds.length)
      .map(({ said }) => said),
    ...(eggs && 0 < Number(eggs.value) ? { eggs } : {}),
    ...(lamp ? { lamp } : {}),
    weighs: {
      ...(phase ? { bagKg: phase.bagKg } : {}),
      ...weighsOn(plan, plan.leaving ? daysBetween(plan.arrivalDate, grownOn) : day),
    },
    cautions: plan.cautions
      .filter(
        (key) =>
          (heat?.night ? OF_HEAT.includes(key) : key === OF_HOT_DAYS && isHeavy) ||
          (freezes &&
            (heat?.night ? OF_HEAT_OUT : stage === 'brooder' ? [] : FROST_CAUTIONS).includes(key)),
      )
      .map((key) => {
        const { title, text } = tables.cautions[key]!;
        return { title, text: inOwnUnits(text, picture.farm.units) };
      }),
  };
}

const isAwaited = ({ headChanges }: FarmPicture, id: string, day: number): boolean =>
  day <= AWAITED_DAYS && !headChanges.some(({ batchId }) => batchId === id);

/** Of hens that are long out nobody asks whether they ever came, nor of birds that somebody weighed. */
const isUntold = (
  { headChanges, weighings, today }: FarmPicture,
  { id, plan, stage }: { id: string; plan: BatchPlan; stage: BatchStage },
): boolean =>
  plan.arrivalDate < today &&
  (stage === 'brooder' || plan.purpose === 'meat') &&
  ![...headChanges, ...weighings].some(({ batchId }) => batchId === id);

/** For a year nobody has told whether they came; what is older is history. */
const isAskedIfCame = (
  batch: Pick<PlannedBatch, 'id' | 'plan'>,
  picture: FarmPicture,
  tables: Tables,
): boolean =>
  isAllUntold(batch, { ...picture, tables }) &&
  picture.today <= addDays(batch.plan.arrivalDate, YEAR_DAYS);

const YEAR_DAYS = 365;

const awaitedSaid = (on: PlainDate, { farm, today }: FarmPicture): string =>
  on === today
    ? 'expected today'
    : `expected ${formatDate(on, { units: farm.units, today })}: nobody has told that they came`;

/** As the tasks of that day have it; the order of it stands in none of them. */
const BEFORE_BOX =
  'Before the box is opened: the brooder warm since yesterday, water and feed out. Then count them, and tell.';

const OF_HEAT = ['heat-lamp', 'heat-plate', 'carbon-monoxide'];
const OF_HEAT_OUT = Object.values(HEAT_OUT_CAUTIONS);
const OF_HOT_DAYS = 'heat-stress';

/** Alive in the morning: the series of a day leaves out those that are processed on it. */
function headOf({ daily, leaving }: BatchPlan, on: PlainDate, day: number): Quantity {
  const someGo = leaving?.processingDays.some((each) => each.on === on) ?? false;
  return quantityOfDay(daily, 'alive', someGo && 0 < day ? day - 1 : day)!;
}

const comingHead = ({ birds, hatching }: BatchPlan, stage: BatchStage): Quantity =>
  stage === 'eggs' && hatching ? hatching.eggs : birds.chicksPlaced;

/** A bird on a day, live and as it would be dressed. */
function weighsOn(plan: BatchPlan, day: number): BatchLine['weighs'] {
  const liveKg = plan.daily.find(({ id }) => id === 'weight-mean')?.values[day];
  if (liveKg === undefined) return {};
  const { liveEach, dressedEach } = plan.leaving ?? {};
  return {
    liveKg,
    ...(liveEach && dressedEach
      ? { dressedKg: (liveKg * dressedEach.value) / liveEach.value }
      : {}),
  };
}

function whereIs(
  { occupies }: BatchPlan,
  on: PlainDate,
  { facilities }: FarmPicture,
): string | undefined {
  const homes = occupies.filter(({ from, to }) => from <= on && on <= to);
  // A brooder is held for some days after the birds have gone: the last place taken is theirs.
  const home = homes.reduce<(typeof homes)[number] | undefined>(
    (last, each) => (last && each.from < last.from ? last : each),
    undefined,
  );
  return facilities.find((facility) => facility.id === home?.facilityId)?.name;
}

function heatToday(
  picture: FarmPicture,
  tables: Tables,
  { id, plan, day }: { id: string; plan: BatchPlan; day: number },
): HeatToday | undefined {
  const wanted = quantityOfDay(plan.daily, 'under-heater', day);
  if (!wanted) return undefined;
  const of = plan.heat && heatOfDay(picture, tables, id, day);
  if (!of) return { wanted };
  const { night, day: byDay, lampHeight, hot, noonHeat, suffersAboveC } = of;
  const warmest = night.underHeat ?? night.air;
  // A plate that is on warms by touch, which no air shows.
  const isKnown = night.underHeat !== undefined || night.on.value === 0;
  const offByK = tables.judgements.alarms.brooderOffK.value;
  const isToBuild = isBrooderToBuild(picture, plan, id);
  const isForecast = picture.climate.forecast?.some(({ date }) => date === picture.today);
  const isHot = !isToBuild && isForecast === true && noonHeat !== 'note';
  const isCold = !isToBuild && isKnown && warmest.value < Number(wanted.value) - offByK;
  return {
    ...{ wanted, night, day: byDay },
    ...(isCold ? { tooCold: warmest } : {}),
    ...(isHot ? { tooHot: { air: of.noon.air, suffersAboveC, level: noonHeat } } : {}),
    ...(isToBuild ? { isToBuild: true } : {}),
    ...heatOutToday(picture, id),
    ...(lampHeight ? { lampHeight } : {}),
    ...(hot === undefined ? {} : { hot }),
  };
}

/** Whether birds were told to have come while work to build their brooder is open, by the ticks. */
function isBrooderToBuild({ progress, headChanges }: FarmPicture, plan: BatchPlan, id: string) {
  const building = plan.tasks.tasks.find(
    ({ templateId, isOver }) => GETS_BROODER.has(templateId) && isOver !== true,
  );
  const hasCome = headChanges.some((each) => each.batchId === id && each.change === 'arrived');
  if (!building || !hasCome) return false;
  const key = `batch/${id}/${building.id}`;
  return !progress.some(
    (each) => each.key === key && (each.doneOn !== undefined || each.struckOut),
  );
}

function heatOutToday(
  { heatOuts, batches, facilities, today }: FarmPicture,
  batchId: string,
): Pick<HeatToday, 'out'> {
  const batch = batches.find(({ id }) => id === batchId);
  const brooder = facilityOf(facilities, 'brooder', batch?.brooderId);
  const outs = heatOutsIn(batch?.brooderId, heatOuts, batches);
  const last = outs.at(-1);
  if (last?.id === undefined || !brooder) return {};
  const { id: factId, date: since } = last;
  const isMended = last.working === undefined;
  const of = brooder.heat.count;
  const working = heatersOn(brooder, outs, today);
  // Where the brooder holds only what works since, nothing is out any more.
  if (isMended ? since !== today : working === of) return {};
  return { out: { factId, since, of, ...(isMended ? {} : { working }) } };
}

function lampToday({ laying }: BatchPlan, today: PlainDate): BatchLine['lamp'] {
  if (laying?.lampH === undefined) return undefined;
  const step = laying.light.findLast(({ from }) => from <= today);
  if (!step) return undefined;
  const isOn = 0 < step.add.value;
  const change = laying.light.find(({ from, add }) => today < from && 0 < add.value !== isOn);
  return { hours: step.add, ...(change ? { changesOn: change.from } : {}) };
}

/** What the next day in the life of a batch is called, as it stands before “in 9 days”. */
const WORDS: Partial<Record<EventKind, string>> = {
  'eggs-set': 'eggs are set',
  candle: 'candle',
  lockdown: 'lockdown',
  arrival: 'chicks arrive',
  'move-out': 'out of the brooder',
  'first-egg': 'first eggs',
  processing: 'they leave',
};

function nextOf(plan: BatchPlan, today: PlainDate): NextDate | undefined {
  const ahead = plan.tasks.events
    .filter(({ kind, date }) => WORDS[kind] !== undefined && today <= date)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    // Of the day itself the work says what is to do.
    .find(({ date, kind }) => today < date || kind !== 'arrival');
  if (!ahead) return undefined;
  const { kind, date, words } = ahead;
  const isOfLayers = kind === 'processing' && plan.purpose === 'layers';
  const usual = isOfLayers ? 'the cockerels leave' : WORDS[kind]!;
  return nextDate(words ?? saidOf(plan.words, usual), {
    on: date,
    today,
    worked: workedOut(plan, kind, date),
  });
}

/** The date as the plan worked it out, where it can be opened. */
function workedOut(plan: BatchPlan, kind: EventKind, date: PlainDate): Quantity | undefined {
  if (kind === 'move-out') return plan.outdoors.moveOut;
  if (kind === 'first-egg') return plan.laying?.firstEgg;
  if (kind === 'processing') {
    const on = plan.birds.cockerelsLeave?.on ?? plan.leaving?.on;
    // Of several days only the last is a number of the plan.
    return on?.value === date ? on : undefined;
  }
  return undefined;
}
