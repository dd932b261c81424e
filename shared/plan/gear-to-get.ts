import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import { facilityOf, type Brooder, type Facility } from '../farm/facility.js';
import type { Tables } from '../tables/tables.js';
import type { Unit } from '../units/unit.js';
import { GETS_BROODER } from './batch-events.js';
import type { BatchPlan } from './batch-plan.js';
import { HOLDERS, type HolderKind } from './refills.js';

/** Gear that a plan reckons with and nobody has said to be there. */
export interface GearToGet {
  readonly by: PlainDate;
  readonly what: string;
  readonly amounts: readonly {
    readonly value: number;
    readonly unit: Unit;
    readonly of: 'hold' | 'edge' | 'count';
  }[];
}

interface Asked {
  readonly batch: Batch;
  readonly facilities: readonly Facility[];
  readonly tables: Tables;
}

/**
 * What a household has to get that has typed nothing of it: feeders and drinkers of each size, heaters,
 * and what birds are killed and plucked with. Each once, for the day on which it is of use first.
 */
export function gearToGet(plan: BatchPlan, asked: Asked): GearToGet[] {
  const brooder = facilityOf(asked.facilities, 'brooder', asked.batch.brooderId);
  return [
    ...holders(plan, brooder, 'drinkers'),
    ...holders(plan, brooder, 'feeders'),
    ...heaters(plan, brooder),
    ...ofProcessing(plan, asked),
  ];
}

const EDGES = {
  drinkers: { field: 'drinkerCm', need: 'Drinker length' },
  feeders: { field: 'feederCm', need: 'Feeder length' },
} as const;

/** An edge that was typed and becomes too short. */
export interface EdgeToAdd {
  readonly by: PlainDate;
  readonly kind: HolderKind;
  readonly needCm: number;
  readonly haveCm: number;
}

/** What is outgrown of typed edges; an assumed one is among the gear to get, as long as is needed. */
export function edgesToAdd(
  { space }: BatchPlan,
  { batch, facilities }: Pick<Asked, 'batch' | 'facilities'>,
): EdgeToAdd[] {
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  return (['feeders', 'drinkers'] as const).flatMap((kind) => {
    const { field, need } = EDGES[kind];
    const of = space.needs.find(({ name }) => name === need);
    if (!of?.have || !of.runsOut || !isSaid(brooder, field)) return [];
    const [needCm, haveCm] = [of.most.value, Number(of.have.value)];
    return [{ by: String(of.runsOut.value), kind, needCm, haveCm }];
  });
}

const isSaid = (brooder: Brooder | undefined, field: 'drinkerCm' | 'feederCm'): boolean =>
  brooder?.[field] !== undefined && brooder.assumed?.includes(field) !== true;

/** Each size that stands there in turn; the first with the edge that all of them need in the end. */
function holders(plan: BatchPlan, brooder: Brooder | undefined, kind: HolderKind): GearToGet[] {
  const { field, need } = EDGES[kind];
  const { name, unit } = HOLDERS[kind];
  const hold = plan.daily.find(({ id }) => id === `${kind}-hold`)?.values ?? [];
  const edge = isSaid(brooder, field)
    ? undefined
    : plan.space.needs.find((each) => each.name === need)?.most.value;
  const ofEdge = edge === undefined ? [] : [{ value: edge, unit: 'cm', of: 'edge' } as const];
  const sizes = plan.refills
    .filter((part) => part.kind === kind && part.isAssumed)
    .flatMap(({ from, to }) => sizesIn(plan.arrivalDate, hold, { from, to }))
    .filter(
      ({ value }, k, all) => k === 0 || Math.max(...all.slice(0, k).map((a) => a.value)) < value,
    );
  if (sizes.length === 0)
    return ofEdge.length === 0 ? [] : [{ by: plan.arrivalDate, what: name, amounts: ofEdge }];
  return sizes.map(({ by, value }, k) => ({
    by,
    what: k === 0 ? name : `Bigger ${kind}`,
    amounts: [{ value, unit, of: 'hold' }, ...(k === 0 ? ofEdge : [])],
  }));
}

/** What is held on the first day of each size, of days in one home. */
function sizesIn(
  arrival: PlainDate,
  hold: ArrayLike<number>,
  { from, to }: { readonly from: PlainDate; readonly to: PlainDate },
): { by: PlainDate; value: number }[] {
  return Array.from(hold).flatMap((value, day) => {
    const by = addDays(arrival, day);
    const isFirst = by === from || value !== hold[day - 1];
    return from <= by && by <= to && isFirst ? [{ by, value }] : [];
  });
}

function heaters({ tasks, arrivalDate }: BatchPlan, brooder: Brooder | undefined): GearToGet[] {
  if (!brooder?.heat || brooder.assumed?.includes('heat.count') !== true) return [];
  const { kind, count } = brooder.heat;
  const gets = tasks.tasks.find(({ templateId }) => GETS_BROODER.has(templateId));
  return [
    {
      by: gets?.latestStart ?? arrivalDate,
      what: HEATERS[kind],
      amounts: [{ value: count, unit: 'count', of: 'count' }],
    },
  ];
}

const HEATERS = { lamp: 'Heat lamps', plate: 'Heat plates', gas: 'Gas heaters' } as const;

const TESTED_BY = /^processing\.(test-|gather-)/;

/** Cones for as many birds as the hands get through; the machines, to borrow, rent or buy. */
function ofProcessing({ leaving, tasks }: BatchPlan, { batch, tables }: Asked): GearToGet[] {
  const [day] = leaving?.processingDays ?? [];
  const birdsAnHour = leaving?.birdsAnHour?.value;
  if (!day || birdsAnHour === undefined || batch.processing === 'hired') return [];
  const tested = tasks.tasks.find(({ templateId }) => TESTED_BY.test(templateId));
  const by = tested?.start ?? day.on;
  const { cones, scalder, plucker } = tables.processing.stations;
  const places = (minutes: number): GearToGet['amounts'] => [
    {
      value: Math.max(1, Math.ceil((birdsAnHour * minutes) / MINUTES)),
      unit: 'count',
      of: 'count',
    },
  ];
  const isMachineSaid = batch.plucking !== undefined;
  return [
    ...(batch.killingCones === undefined
      ? [{ by, what: 'Killing cones', amounts: places(cones.minutes) }]
      : []),
    ...(batch.scalderBirds === undefined && !isMachineSaid
      ? [{ by, what: 'Scalder: birds it takes at once', amounts: places(scalder.minutes) }]
      : []),
    ...(batch.pluckerBirds === undefined && !isMachineSaid
      ? [
          {
            by,
            what: 'Plucker, borrowed, rented or bought: birds it takes at once',
            amounts: places(plucker.minutes),
          },
        ]
      : []),
  ];
}

const MINUTES = 60;
