import type { BatchChoice } from '../../shared/farm/batch-choice.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import {
  findArrivals,
  type ArrivalSearch,
  type ArrivalWeek,
} from '../../shared/plan/arrival-finder.js';
import { betterWeek, type BetterWeek } from '../../shared/plan/better-week.js';
import { planBatch, type BatchPlan } from '../../shared/plan/batch-plan.js';
import { compareChoices, type Comparison } from '../../shared/plan/compare/compare-choices.js';
import { whatMoves, type WhatMoves } from '../../shared/plan/compare/what-moves.js';
import { batchCost, type BatchCost } from '../../shared/plan/cost/batch-cost.js';
import { planPasture, type PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { PastureRequest } from '../../shared/plan/pasture/pasture-request.js';
import type { ReadyGoal } from '../../shared/farm/ready-goal.js';
import { readyBy, type ReadyBy } from '../../shared/plan/ready-by.js';
import type { PlanRequest } from '../../shared/plan/request.js';

/** As a batch is called that is planned before it is saved. */
const BATCH = 'new';

/** A farm with nothing on it but what is given. */
export const newPicture = (
  more: Partial<FarmPicture> & Pick<FarmPicture, 'farm' | 'climate' | 'today'>,
): FarmPicture => ({
  facilities: [],
  products: [],
  people: [],
  batches: [],
  headChanges: [],
  brooderLooks: [],
  weighings: [],
  eggCounts: [],
  paddocks: [],
  herds: [],
  cows: [],
  readings: [],
  pastureChoices: {},
  jobs: [],
  handovers: [],
  progress: [],
  groundChecks: [],
  keptPlans: [],
  ...more,
});

/** One batch and what its plan looks at; other batches of the farm beside it. */
export type BatchCase = PlanRequest & Partial<Pick<FarmPicture, 'batches'>>;

const pictureOf = ({ batch, batches = [], farm, climate, today, ...rest }: BatchCase) =>
  newPicture({
    farm,
    climate,
    today,
    facilities: rest.facilities,
    products: rest.products,
    people: rest.people,
    handovers: rest.handovers ?? [],
    ...(rest.publicHolidays ? { publicHolidays: rest.publicHolidays } : {}),
    batches: [...batches, { ...batch, id: BATCH }],
    headChanges: (rest.headChanges ?? []).map((each) => ({ ...each, batchId: BATCH })),
    weighings: (rest.weighings ?? []).map((each) => ({ ...each, batchId: BATCH })),
    eggCounts: (rest.eggCounts ?? []).map((each) => ({ ...each, batchId: BATCH })),
    feedOpenings: (rest.feedOpenings ?? []).map((each) => ({ ...each, batchId: BATCH })),
  });

/** Plans the batch of a case. */
export const plannedBatch = (given: BatchCase): BatchPlan =>
  planBatch(pictureOf(given), given.tables, BATCH, given.previousArrivalDate);

/** What the batch of a case must bring, and when it has had enough feed. */
export const costedBatch = (given: BatchCase): BatchCost =>
  batchCost(pictureOf(given), given.tables, BATCH);

/** Ways to raise the batch of a case, beside its plan. */
export function comparedBatch(given: BatchCase, choices: readonly BatchChoice[]): Comparison {
  const picture = pictureOf(given);
  return compareChoices(picture, given.tables, picture.batches.at(-1)!, choices);
}

/** What moves the bill of the batch of a case. */
export function movesOfBatch(given: BatchCase): WhatMoves {
  const picture = pictureOf(given);
  const batch = picture.batches.at(-1)!;
  return whatMoves({ picture, tables: given.tables, batch, plan: plannedBatch(given) });
}

/** Looks for weeks in which the batch of a case might arrive. */
export const foundArrivals = (given: BatchCase, search: ArrivalSearch): ArrivalWeek[] =>
  findArrivals(pictureOf(given), given.tables, BATCH, search);

/** The week around the arrival of the batch of a case that would suit it better. */
export const foundBetter = (given: BatchCase): BetterWeek | undefined =>
  betterWeek(pictureOf(given), given.tables, BATCH);

/** Plans the batch of a case from the other end. */
export const foundReady = (given: BatchCase, goal: ReadyGoal): ReadyBy =>
  readyBy(pictureOf(given), given.tables, BATCH, goal);

/** A pasture and what its plan looks at; batches whose birds follow a herd beside it. */
export type PastureCase = PastureRequest & Partial<Pick<FarmPicture, 'batches'>>;

/** The picture of a pasture case. */
export const pictureOfPasture = ({
  tables: _tables,
  choices,
  followers: _followers,
  ...given
}: PastureCase): FarmPicture => newPicture({ ...given, pastureChoices: choices });

/** Plans the pasture of a case. */
export const plannedPasture = (given: PastureCase): PasturePlan =>
  planPasture(pictureOfPasture(given), given.tables);
