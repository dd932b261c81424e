import type { Batch } from '../farm/batch.js';
import { stationPerHour } from '../poultry/stations.js';
import type { Station } from '../tables/processing-tables.js';
import type { TaskCircumstance, TaskTemplate } from '../tables/task-template.js';
import type { PlanContext } from './context.js';

/** Hours of a day of processing at home: to set up and clean down, and for a bird. */
export interface DayWork {
  readonly fixedH: number;
  readonly birdH: number;
  /** What of it each bird takes from killing to the ice. */
  readonly killH: number;
  readonly rows: readonly TaskTemplate[];
  readonly killRows: readonly TaskTemplate[];
}

/** Tasks in which birds are killed, plucked and opened. */
export const KILLING = [
  'processing.kill-scald-pluck-eviscerate',
  'processing.pluck-by-hand',
  'processing.first-time',
];

/** Whether the household's way of processing asks for some work; undefined where it is of others. */
export function holdsOfProcessing(
  { plucking, processingIsFirst }: Pick<Batch, 'plucking' | 'processingIsFirst'>,
  circumstance: TaskCircumstance,
): boolean | undefined {
  if (circumstance === 'plucked-by-hand') return plucking === 'hand';
  if (circumstance === 'plucked-by-machine') return plucking !== 'hand';
  if (circumstance === 'first-processing') return processingIsFirst === true;
  return undefined;
}

/** Work of the day itself: all that hangs on it without days before or after. */
export function workOfDay({ batch, tables }: Pick<PlanContext, 'batch' | 'tables'>): DayWork {
  const { taskTemplates } = tables;
  let works = known.get(taskTemplates);
  if (!works) known.set(taskTemplates, (works = new Map()));
  const key = `${batch.plucking === 'hand'} ${batch.processingIsFirst === true}`;
  let work = works.get(key);
  if (!work) works.set(key, (work = sumOfDay(batch, taskTemplates)));
  return work;
}

const known = new WeakMap<readonly TaskTemplate[], Map<string, DayWork>>();

function sumOfDay(batch: Batch, templates: readonly TaskTemplate[]): DayWork {
  const rows = templates.filter(
    (t) =>
      t.event === 'processing' &&
      t.processing === 'home' &&
      t.offsetDays === 0 &&
      !t.isDaily &&
      !t.onDemand &&
      (t.onlyIf === undefined || holdsOfProcessing(batch, t.onlyIf) === true),
  );
  const killRows = rows.filter(({ id }) => KILLING.includes(id));
  const eachOf = (of: readonly TaskTemplate[]): number =>
    of.reduce((sum, t) => sum + t.hoursPerUnit / 100, 0);
  return {
    fixedH: rows.reduce((sum, t) => sum + t.hoursBase, 0),
    birdH: eachOf(rows),
    killH: eachOf(killRows),
    rows,
    killRows,
  };
}

/** A station of which the household has said how much it takes. */
export interface StationHad {
  readonly name: string;
  readonly places: number;
  readonly perHour: number;
  readonly row: Station;
  /** Field of the batch that says it. */
  readonly field: 'killingCones' | 'scalderBirds' | 'pluckerBirds';
}

/** Cones, scalder and plucker as far as they are said; what is not said holds nobody up. */
export function stationsOf({ batch, tables }: Pick<PlanContext, 'batch' | 'tables'>): StationHad[] {
  const { cones, scalder, plucker } = tables.processing.stations;
  const had = (
    name: string,
    field: StationHad['field'],
    row: Station,
    places = batch[field],
  ): StationHad[] =>
    places === undefined
      ? []
      : [{ name, places, perHour: stationPerHour(places, row.minutes), row, field }];
  return [
    ...had(
      batch.killingCones === 1 ? 'the killing cone' : 'the killing cones',
      'killingCones',
      cones,
    ),
    ...had('the scalder', 'scalderBirds', scalder),
    ...(batch.plucking === 'hand' ? [] : had('the plucker', 'pluckerBirds', plucker)),
  ];
}

/** Birds an hour by so many hands, and the station that is slower than they are, if one is. */
export function paceOf(
  context: Pick<PlanContext, 'batch' | 'tables'>,
  hands: number,
): { readonly perHour: number; readonly slowest?: StationHad } {
  const byHands = hands / workOfDay(context).killH;
  const [slowest] = stationsOf(context).sort((a, b) => a.perHour - b.perHour);
  return slowest && slowest.perHour < byHands
    ? { perHour: slowest.perHour, slowest }
    : { perHour: byHands };
}

/** Hours from the first bird caught to the last thing clean, with so many hands. */
export function hoursOfDay(
  context: Pick<PlanContext, 'batch' | 'tables'>,
  hands: number,
  birds: number,
): number {
  const { fixedH, birdH, killH } = workOfDay(context);
  return (fixedH + birds * (birdH - killH)) / hands + birds / paceOf(context, hands).perHour;
}

/** Birds that stations let through in the hours of the longest pair of hands; without end where none holds up. */
export function mostThroughStations(
  context: Pick<PlanContext, 'batch' | 'tables'>,
  hands: number,
  longestH: number,
): number {
  const { fixedH, birdH, killH } = workOfDay(context);
  const { perHour, slowest } = paceOf(context, hands);
  if (!slowest) return Infinity;
  return (longestH - fixedH / hands) / ((birdH - killH) / hands + 1 / perHour);
}
