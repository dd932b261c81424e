import type { DayInZone } from '../../calendar/day-in-zone.js';
import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { FactOf } from '../../farm/told-fact.js';
import type { FarmPicture } from '../../farm/picture.js';
import { withStillHere } from '../left-untold.js';
import type { Tables } from '../../tables/tables.js';
import type { WorkPlan } from '../work/planned-work.js';
import { calvingDue } from './calving-due.js';
import { howManyWereThey } from './have-they-left.js';
import { haveTheyCalved } from './have-they-calved.js';
import { animalLines, type AnimalLine, type PlannedAnimals } from './animal-lines.js';
import { attentionOf } from './attention.js';
import type { Attention } from './looked-at.js';
import { orderedToday } from './late-orders.js';
import { silentHerds } from './silent-herds.js';
import type { ComingDate } from './coming-date.js';
import { comingDates } from './coming.js';
import { whoIsAway, type AwayToday } from './who-is-away.js';
import { todayChores, todayHours, freeToday, todayJobs } from './today-work.js';
import type { TodayChore, TodayHours, TodayJob } from './today-work.js';
import { weightAlarms } from './weight-alarms.js';
import { todayGround, todayWeather, type TodayGround, type TodayWeather } from './today-weather.js';

/** All that a household asks on the day it is: nothing here is planned, it is read out of plans. */
export interface Today {
  readonly date: PlainDate;
  readonly weather: TodayWeather;
  readonly ground: TodayGround;
  readonly animals: readonly AnimalLine[];
  readonly hours: TodayHours;
  readonly hasPeople: boolean;
  /** Names of those who can have done it. */
  readonly names: readonly string[];
  /** Who of them is not there today. */
  readonly away: readonly AwayToday[];
  readonly jobs: readonly TodayJob[];
  readonly chores: readonly TodayChore[];
  readonly attention: readonly Attention[];
  readonly keyDates: readonly ComingDate[];
  /** Batches and herds of which no plan can be made. */
  readonly unplanned: readonly string[];
}

/** The same with its round ticked off as far as it is done. */
export interface TickedToday extends Omit<Today, 'chores'> {
  readonly chores: readonly (TodayChore & { readonly isDone: boolean })[];
  /** What was told as bought with work that was ticked off today, and what it was before. */
  readonly bought: readonly FactOf<'bought'>[];
}

/** The same as it is sent: whoever reads it need not work out how long it is that day. */
export interface DatedToday extends TickedToday {
  readonly inZone: DayInZone;
}

/** A day with the chores that were told done on it, what no plan knows of, and without the alarms that were seen. */
export const withTicks = (
  day: Today,
  /** Keys of chores that are done, and by whom. */
  done: ReadonlyMap<string, string | undefined>,
  /** Keys of alarms that were seen, and on which day last. */
  seen: ReadonlyMap<string, PlainDate> = new Map(),
  {
    more = [],
    bought = [],
  }: { readonly more?: readonly Attention[] } & Partial<Pick<TickedToday, 'bought'>> = {},
): TickedToday => ({
  ...{ ...day, bought },
  attention: [...day.attention, ...more].filter(
    (each) => !each.isAlarm || !isQuiet(each, seen.get(each.key), day.date),
  ),
  chores: day.chores
    .map((chore) => {
      const doneBy = done.get(chore.key);
      const by = doneBy === undefined ? {} : { doneBy };
      return { ...chore, ...by, isDone: done.has(chore.key) };
    })
    .filter(({ isTold, isDone }) => !isTold || isDone),
});

/** What was seen is not said again, but for what was only put off. */
const isQuiet = (
  { againDays }: Attention,
  seenOn: PlainDate | undefined,
  today: PlainDate,
): boolean =>
  seenOn !== undefined && (againDays === undefined || today < addDays(seenOn, againDays));

/** The day of a farm, out of the plans of its animals and of its work. */
export function todayOf(
  picture: FarmPicture,
  tables: Tables,
  { pasture, ...planned }: PlannedAnimals,
  plan: WorkPlan,
): Today {
  const { today, climate, people } = picture;
  const batches = withStillHere(planned.batches, { ...picture, tables });
  const animals = animalLines(
    picture,
    tables,
    { batches, ...(pasture ? { pasture } : {}) },
    plan.eventsToMove,
  );
  const chores = todayChores(plan, picture, pasture);
  const jobs = todayJobs(plan, picture, {
    free: freeToday(picture, tables, plan),
    asked: orderedToday(batches, picture),
  });
  return {
    date: today,
    weather: todayWeather({ climate, today, tables }, plan),
    ground: todayGround({ climate, today }, plan),
    animals,
    hours: todayHours(picture, tables, { chores, jobs }),
    hasPeople: 0 < people.length,
    names: people.map(({ name }) => name),
    away: whoIsAway(picture),
    jobs,
    chores,
    attention: attentionOf(
      { ...{ picture, plan, batches, pasture, animals }, judged: tables.judgements.alarms },
      [
        ...silentHerds(picture, tables, pasture),
        ...calvingDue(picture, tables),
        ...haveTheyCalved(picture, tables),
        ...weightAlarms(picture, tables, batches),
        ...howManyWereThey({ picture, batches }, tables),
      ],
    ),
    keyDates: comingDates({ picture, tables }, plan, batches, pasture),
    unplanned: plan.unplanned,
  };
}
