import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { Person } from '../../shared/farm/farm.js';
import type { Handover } from '../../shared/farm/handover.js';
import type { Herd } from '../../shared/farm/herd.js';
import type { OwnJob } from '../../shared/farm/job.js';
import { planBatch } from '../../shared/plan/batch-plan.js';
import { handoverProblems } from '../../shared/plan/handover/check-handover.js';
import { planPasture, type PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import { ownJobProblems } from '../../shared/plan/season/check-jobs.js';
import type { SeasonRequest } from '../../shared/plan/season/season-request.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { checkSoil } from '../farms/check-soil.js';
import { requestOfPasture } from '../pasture/pasture-order.js';
import { requestOfOrder } from '../plans/order-request.js';
import { datedWork, type PlannedBatch } from './dated-work.js';
import type { HouseholdOrderDto } from './household-order.dto.js';

/** A household's season by itself, and the plans that its work comes from. */
export interface HouseholdSeason {
  readonly request: SeasonRequest;
  readonly batches: readonly PlannedBatch[];
  readonly facilities: readonly Facility[];
  readonly pasture?: PasturePlan;
}

/**
 * A self-contained household as a season: used by the preview and by the terminal alike.
 *
 * @throws FieldError naming every field that makes a plan impossible
 */
export function seasonOfHousehold(
  order: HouseholdOrderDto,
  tables: Tables,
  nowMs: number,
): HouseholdSeason {
  const { farm } = order;
  checkSoil(farm.gardenSoilId, tables, 'farm.');
  const today = order.today ?? plainDateAt(nowMs, farm.timeZone);
  const people = order.people.map((person, i): Person => ({
    ...person,
    id: person.id ?? `person-${i + 1}`,
  }));
  const ownJobs = (order.jobs ?? []).map((job, i): OwnJob => ({
    ...job,
    id: job.id ?? `${i + 1}`,
  }));
  const handovers = (order.handovers ?? []).map((each, i): Handover => ({
    ...each,
    id: each.id ?? `${i + 1}`,
  }));
  refuse([
    ...at('jobs', ownJobs, (job) => ownJobProblems(job, { people, ownJobs })),
    ...at('handovers', handovers, (each) => handoverProblems(each, { people, others: handovers })),
  ]);
  let facilities: readonly Facility[] = [];
  const batches = order.batches.map((batch, i): PlannedBatch => {
    const { batches: _all, jobs: _jobs, handovers: _days, ...around } = order;
    const request = requestOfOrder({ ...around, batch, today }, tables, nowMs);
    facilities = request.facilities;
    const id = batch.id ?? `batch-${i + 1}`;
    return { id, name: batch.name, plan: within(`batches.${i}`, () => planBatch(request)) };
  });
  const { paddocks = [], herds = [] } = order;
  const hasGrass = 0 < paddocks.length && 0 < herds.length;
  const pasture = hasGrass
    ? planPasture(requestOfPasture({ farm, paddocks, herds, today }, tables, nowMs))
    : undefined;
  const climate = climateFromMonthlyMeans(
    farm.monthlyMinC,
    farm.monthlyMaxC,
    tables.heat.coldNightMarginK.value,
    farm.monthlyRainMm,
  );
  return {
    batches,
    facilities,
    ...(pasture ? { pasture } : {}),
    request: {
      farm,
      climate: order.forecast ? { ...climate, forecast: order.forecast } : climate,
      tables,
      today,
      people,
      work: datedWork(batches, herds as Herd[], pasture),
      unplanned: [],
      ownJobs,
      marks: [],
      groundLooks: order.groundLooks ?? [],
      handovers,
      seed: 1,
    },
  };
}

const at = <T>(
  name: string,
  list: readonly T[],
  problemsOf: (each: T) => FieldProblem[],
): FieldProblem[] =>
  list.flatMap((each, i) =>
    problemsOf(each).map((problem) => ({ ...problem, field: `${name}.${i}.${problem.field}` })),
  );

function refuse(problems: readonly FieldProblem[]): void {
  if (0 < problems.length) throw new FieldError(problems);
}

/** A batch that cannot be planned is named by its place in the list. */
function within<T>(path: string, plan: () => T): T {
  try {
    return plan();
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    throw new FieldError(
      error.problems.map((problem) => ({
        ...problem,
        field: problem.field.replace(/^batch/, path),
      })),
    );
  }
}
