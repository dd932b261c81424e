import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { DailySeries } from '../explain/daily-series.js';
import type { Purpose, Sex } from '../farm/batch.js';
import type { Occupancy } from '../farm/occupancy.js';
import type { AnimalPicture } from '../farm/picture.js';
import type { PlanIssue } from '../problems/plan-issue.js';
import { rowById, type Tables } from '../tables/tables.js';
import type { WeatherWay } from '../weather/climate.js';
import { batchContext, batchRequest } from './batch-request.js';
import { planBill, type BillPart } from './bill.js';
import { birdsApart } from './birds-apart.js';
import { planBirds, type BirdsPart } from './birds.js';
import { planBrooding, type BroodingPart } from './brooding.js';
import type { BirdWords } from './bird-words.js';
import { checkBatch } from './check-batch.js';
import type { PlanContext } from './context.js';
import { planFeed, type FeedPart } from './feed.js';
import { byLevel, joined } from './found.js';
import { planHatching, type HatchingPart } from './hatching.js';
import { planHeat, type HeatPart } from './heat.js';
import { planLaying, type LayingPart } from './laying.js';
import { planLeaving, type LeavingPart } from './leaving.js';
import { collisions, occupanciesOf } from './occupancy.js';
import { noPost } from './no-post.js';
import { planRefills, type RefillPart } from './refills.js';
import { planOutdoors, type OutdoorsPart } from './outdoors.js';
import { planSpace, type SpacePart } from './space.js';
import { planTasks, type TasksPart } from './batch-tasks.js';

/** A plan of one batch from order to the end, as sent by the API and printed by the terminal. */
export interface BatchPlan {
  readonly name: string;
  readonly purpose: Purpose;
  readonly strain: string;
  /** What its young are called, and the sexes of them. */
  readonly words: BirdWords;
  readonly sex: Sex;
  readonly arrivalDate: PlainDate;
  readonly hatchDate: PlainDate;
  readonly lastDate: PlainDate;
  readonly today: PlainDate;
  readonly weather: { readonly way: WeatherWay; readonly label: string; readonly years: number };
  /** Eggs that the household sets itself. */
  readonly hatching?: HatchingPart;
  readonly birds: BirdsPart;
  readonly feed: Omit<FeedPart, 'flockFeedKg'>;
  /** Left out under a hen and of grown birds. */
  readonly brooding?: BroodingPart;
  readonly heat?: HeatPart;
  readonly space: SpacePart;
  /** How long drinkers and feeders last, by home. */
  readonly refills: readonly RefillPart[];
  readonly outdoors: OutdoorsPart;
  readonly leaving?: LeavingPart;
  readonly laying?: LayingPart;
  readonly bill: BillPart;
  readonly tasks: TasksPart;
  readonly occupies: readonly Occupancy[];
  readonly issues: readonly PlanIssue[];
  /** Keys of the cautions that belong to this plan. */
  readonly cautions: readonly string[];
  /** Values by day after arrival, the arrival day first. */
  readonly daily: readonly DailySeries[];
}

/**
 * Plans one batch of a farm.
 *
 * @param previousArrivalDate when given, the plan says which tasks moved since
 * @throws FieldError naming every field that makes a plan impossible; anything less is an issue
 *   inside the plan
 */
export function planBatch(
  picture: AnimalPicture,
  tables: Tables,
  batchId: string,
  previousArrivalDate?: PlainDate,
): BatchPlan {
  const request = batchRequest(picture, tables, batchId, previousArrivalDate);
  checkBatch(request);
  const context = batchContext(picture, tables, batchId, request);
  const { batch, life, words } = context;
  const hatching = planHatching(context);
  const birds = planBirds(context, hatching.part);
  const feed = planFeed(context);
  const brooding = planBrooding(context);
  const heat = planHeat(context);
  const space = planSpace(context);
  const refills = planRefills(context, feed.part.flockFeedKg);
  const outdoors = planOutdoors(context);
  const leaving = planLeaving(context, feed.part);
  const laying = planLaying(context, feed.part);
  const bill = planBill(context, {
    hatching: hatching.part,
    birds: birds.part,
    feed: feed.part,
    heat: heat.part,
    space: space.part,
    outdoors: outdoors.part,
    leaving: leaving.part,
    laying: laying.part,
  });
  const tasks = planTasks(context, feed.part, heat.part);
  const occupies = occupanciesOf(context);
  const taken = {
    issues: [...collisions(occupies, context), ...noPost(context), ...birdsApart(context)],
  };
  const { issues, cautions, series } = joined([
    { cautions: cautionsOf(context) },
    ...[
      hatching,
      birds,
      feed,
      brooding,
      heat,
      space,
      refills,
      outdoors,
      leaving,
      laying,
      bill,
      tasks,
    ],
    taken,
  ]);
  const { flockFeedKg: _byDay, ...feedPart } = feed.part;
  return {
    name: batch.name,
    purpose: batch.purpose,
    strain: life.strain.name,
    words,
    sex: batch.sex,
    arrivalDate: batch.arrivalDate,
    hatchDate: addDays(batch.arrivalDate, -life.arrivalAgeDays),
    lastDate: context.dateOf(life.days - 1),
    today: context.today,
    weather: {
      way: context.climate.way,
      label: context.climate.label,
      years: context.climate.years,
    },
    ...(hatching.part ? { hatching: hatching.part } : {}),
    birds: birds.part,
    feed: feedPart,
    ...(brooding.part ? { brooding: brooding.part } : {}),
    ...(heat.part ? { heat: heat.part } : {}),
    space: space.part,
    refills: refills.part,
    outdoors: outdoors.part,
    ...(leaving.part ? { leaving: leaving.part } : {}),
    ...(laying.part ? { laying: laying.part } : {}),
    bill: bill.part,
    tasks: tasks.part,
    occupies,
    issues: byLevel(issues),
    cautions,
    daily: series,
  };
}

/** Keys of the cautions that belong to any plan with birds, and to those of their kind. */
function cautionsOf({
  life: { eggs, hasBrooder, isStarted, strain },
  tables,
}: PlanContext): string[] {
  const { caution } = rowById(tables.hatching.species, strain.species);
  return [
    ...(caution === undefined ? [] : [caution]),
    ...(eggs || isStarted ? [] : ['post']),
    'salmonella',
    ...(hasBrooder ? ['behavior'] : []),
  ];
}
