import type { PlainDate } from '../calendar/plain-date.js';
import type { Climate } from '../weather/climate.js';
import type { Batch } from './batch.js';
import type { BrooderLook } from './brooder-look.js';
import type { CalvingTold } from './calving-told.js';
import type { HeatOut } from './heat-out.js';
import type { Cow } from './cow.js';
import type { EggCount } from './egg-count.js';
import type { Facility } from './facility.js';
import type { Farm, Person } from './farm.js';
import type { FeedBought } from './feed-bought.js';
import type { FeedOpening } from './feed-opening.js';
import type { Mowing } from './mowing.js';
import type { GroundCheck } from './ground-check.js';
import type { HeadChange } from './head-count.js';
import type { Handover } from './handover.js';
import type { Herd } from './herd.js';
import type { Grazing } from './herd-places.js';
import type { OwnJob, Progress } from './job.js';
import type { KeptPlan } from './kept-plan.js';
import type { GrassReading, Paddock } from './paddock.js';
import type { Weighing } from './weighing.js';
import type { PastureChoices } from './pasture-choices.js';
import type { Product } from './product.js';
import type { Supplier } from './supplier.js';
import type { FactOf } from './told-fact.js';
import type { Treatment } from './treated.js';

/** A day on which offices and post are closed. */
export interface PublicHoliday {
  readonly date: PlainDate;
  readonly name: string;
}

/** A batch that can be named. */
export type NamedBatch = Batch & { readonly id: string };

/**
 * All that planners need to know of a farm, as plain data: the one thing that plans are made from.
 * It comes from the database or from one document that is sent; a what-if is the same picture with
 * one thing changed. What planners do not need (everything ever told) is in the farm's archive.
 */
export interface FarmPicture {
  /** The day it is on the farm. */
  readonly today: PlainDate;
  readonly farm: Farm;
  readonly climate: Climate;
  readonly facilities: readonly Facility[];
  /** What the place buys for its birds, and at what price. */
  readonly products: readonly Product[];
  /** From whom it buys; left out, from nobody in particular. */
  readonly suppliers?: readonly Supplier[];
  readonly people: readonly Person[];
  /** Public holidays of the farm’s country and region, of this year and those that are planned. */
  readonly publicHolidays?: readonly PublicHoliday[];
  readonly batches: readonly NamedBatch[];
  /** What changed how many birds of batches there are, the oldest first. */
  readonly headChanges: readonly HeadChange[];
  /** Thermometers that were read in brooders these days, the oldest first. */
  readonly brooderLooks: readonly BrooderLook[];
  /** Heat of batches that was told to be out or mended, the oldest first. */
  readonly heatOuts?: readonly HeatOut[];
  /** Birds of batches that were put on a scale, the oldest first. */
  readonly weighings: readonly Weighing[];
  /** Eggs of batches that were counted, the oldest first. */
  readonly eggCounts: readonly EggCount[];
  /** Bags of feed that were opened for batches, the oldest first. */
  readonly feedOpenings?: readonly FeedOpening[];
  /** Feed that was bought these months, the oldest first. */
  readonly feedBought?: readonly FeedBought[];
  /** Hay and minerals that were bought in the last year, as they were told. */
  readonly herdFeedBought?: readonly FactOf<'bought'>[];
  /** Medicines given to batches and herds within the year, the oldest first. */
  readonly treatments?: readonly Treatment[];
  /** Births of herds within the year, as they were told, the oldest first. */
  readonly calvings?: readonly CalvingTold[];
  /** Cattle that died or went within the year, as it was told. */
  readonly cattleLeft?: readonly FactOf<'cattle-left'>[];
  readonly paddocks: readonly Paddock[];
  readonly herds: readonly Herd[];
  /** Cattle of the herds that go by a name. */
  readonly cows: readonly Cow[];
  /** Heights of grass, the oldest first. */
  readonly readings: readonly GrassReading[];
  /** Where herds were, as it was told, the oldest first. */
  readonly grazings?: readonly Grazing[];
  /** Paddocks that were mown or topped, as it was told, the oldest first. */
  readonly mowings?: readonly Mowing[];
  readonly pastureChoices: PastureChoices;
  readonly jobs: readonly OwnJob[];
  readonly handovers: readonly Handover[];
  /** What was done of the work, or put off. */
  readonly progress: readonly Progress[];
  readonly groundChecks: readonly GroundCheck[];
  /** The last plan of the work there is and the last of a day before today, the newest first. */
  readonly keptPlans: readonly KeptPlan[];
}

/** What no plan of animals rests on: the household's work, and what is only looked at. */
const BESIDE_ANIMALS = [
  ...(['jobs', 'progress', 'groundChecks', 'keptPlans'] as const),
  ...(['brooderLooks', 'feedBought', 'herdFeedBought', 'suppliers', 'treatments'] as const),
  ...(['calvings', 'cattleLeft'] as const),
] as const;

/** A farm as far as the plans of its animals and their ground rest on it. */
export type AnimalPicture = Omit<FarmPicture, (typeof BESIDE_ANIMALS)[number]>;

/**
 * Leaves out of a farm what no plan of its animals rests on: work that is ticked off moves none of
 * them, nor does the number of times that anything was saved.
 */
export function animalPicture(picture: FarmPicture): AnimalPicture {
  const isBeside = (part: string): boolean => (BESIDE_ANIMALS as readonly string[]).includes(part);
  const {
    revision: _revision,
    version: _version,
    ...farm
  } = picture.farm as Farm & {
    readonly revision?: number;
    readonly version?: number;
  };
  return {
    ...(Object.fromEntries(
      Object.entries(picture).filter(([part]) => !isBeside(part)),
    ) as unknown as AnimalPicture),
    farm,
  };
}

/** The same farm with a batch as it would be: in the place of the one with its id, else added. */
export function withBatch(picture: FarmPicture, batch: NamedBatch): FarmPicture {
  const isThere = picture.batches.some(({ id }) => id === batch.id);
  return {
    ...picture,
    batches: isThere
      ? picture.batches.map((each) => (each.id === batch.id ? batch : each))
      : [...picture.batches, batch],
  };
}
