import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { quantitiesIn } from '../../../shared/explain/quantities-in.js';
import { round6, type Quantity } from '../../../shared/explain/quantity.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { Facility } from '../../../shared/farm/facility.js';
import type { Person } from '../../../shared/farm/farm.js';
import { planBatch, type BatchPlan } from '../../../shared/plan/batch-plan.js';
import { planPasture, type PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { planWork } from '../../../shared/plan/farm/work-of-farm.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { WorkPlan } from '../../../shared/plan/work/planned-work.js';
import { keyDatesOf } from '../../../shared/plan/tasks/event.js';
import { taskHours } from '../../../shared/plan/tasks/task-hours.js';
import { climateFromMonthlyMeans } from '../../../shared/weather/climate.js';
import { checkDto } from '../../../src/common/check-dto.js';
import { FarmDocumentDto } from '../../../src/documents/farm-document.dto.js';
import { pictureOfDocument } from '../../../src/picture/farm-document.js';
import { readExample } from '../../support/examples.js';
import { climateOf, WISCONSIN } from '../../support/five-farms.js';
import { newBrooder, newFarm, newRequest, tables } from '../../support/factories.js';
import {
  newGroup,
  newHerd,
  newPaddock,
  newPaddocks,
  newPastureRequest,
  newReading,
} from '../../support/pasture-factories.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';
import { plannedBatch, foundArrivals, plannedPasture } from '../../support/pictures.js';

/** Figures of a plan by stable names, so that fields of a plan may be renamed. */
type Figures = Readonly<Record<string, unknown>>;

const SEED = 20261126;
const NOW_MS = Date.UTC(2027, 3, 5, 12);

const sorted = (values: readonly (string | number)[]): (string | number)[] =>
  [...values].sort((a, b) => (String(a) < String(b) ? -1 : String(a) > String(b) ? 1 : 0));
const sum = (values: readonly number[]): number => round6(values.reduce((a, b) => a + b, 0));
const valuesIn = (plan: object, more: readonly Quantity[] = []): (string | number)[] =>
  sorted([...quantitiesIn(plan), ...more].map(({ value }) => value));

const ofBatch = (plan: BatchPlan): Figures => ({
  dates: [plan.hatchDate, plan.arrivalDate, plan.lastDate],
  values: valuesIn(plan),
  daily: Object.fromEntries(plan.daily.map(({ id, values }) => [id, sum([...values])])),
  tasks: plan.tasks.tasks.map((t) => `${t.id} ${t.start} ${t.end} ${t.latestStart} ${t.hours}`),
  occupies: plan.occupies.map(({ facilityId, from, to }) => `${facilityId} ${from} ${to}`),
  warned: sorted(plan.issues.map(({ level, code }) => `${level} ${code}`)),
  cautions: sorted(plan.cautions),
});

const ofPasture = (plan: PasturePlan): Figures => ({
  span: [plan.from, plan.to],
  values: valuesIn(
    plan,
    plan.tasks.map((task) => taskHours(task, tables)),
  ),
  standing: plan.paddocks.map(({ massByDay }) => sum(massByDay)),
  need: plan.herds.map(({ needByDay }) => sum(needByDay)),
  hay: plan.herds.map(({ hayByDay }) => sum(hayByDay)),
  water: plan.herds.map(({ waterByDay }) => sum(waterByDay)),
  book: Object.values(plan.forageBalance).map(round6),
  tasks: plan.tasks.map((t) => `${t.id} ${t.start} ${t.end} ${t.latestStart} ${t.hours}`),
  warned: sorted(plan.issues.map(({ level, code }) => `${level} ${code}`)),
  cautions: sorted(plan.cautions),
});

const ofWork = (plan: WorkPlan): Figures => ({
  to: plan.to,
  jobs: plan.jobs.map(
    (job) =>
      `${job.key} ${round6(job.hours)} ${job.earliest} ${job.latest} late ${job.lateDays} short ${round6(job.shortHours)}: ${job.pieces
        .map(({ date, hours, personIds }) => `${date} ${round6(hours)} ${personIds.join('+')}`)
        .join(', ')}`,
  ),
  chores: plan.chores.map((day) => sum(day.map(({ hours }) => hours))),
  cost: round6(plan.cost),
  costAtLeast: round6(plan.costAtLeast),
  keyDates: plan.events.map(({ id, date }) => `${id} ${date}`),
});

/** Plans of the examples, of invented farms and of farms drawn with a fixed seed. */
export function keptPlans(): Record<string, Figures> {
  return {
    ...ofExamples(),
    ...ofDrawnBatches(),
    ...ofFinder(),
    ...ofPastures(),
    'pasture without hay making': ofPasture(plannedPasture(withoutHay())),
    ...ofHouseholds(),
  };
}

function ofExamples(): Record<string, Figures> {
  const pictureOf = (document: unknown) =>
    pictureOfDocument(checkDto(FarmDocumentDto, document), tables, NOW_MS);
  const { batch, ...around } = readExample('order') as { batch: Batch };
  const order = pictureOf({ ...around, batches: [{ ...batch, id: 'batch' }] });
  const pasture = pictureOf(readExample('pasture'));
  const household = pictureOf(readExample('household'));
  return {
    'example order': ofBatch(planBatch(order, tables, 'batch')),
    'example pasture': ofPasture(planPasture(pasture, tables)),
    'example household': ofWork(planWork(household, tables, planAnimals(household, tables))),
  };
}

const strains = tables.strains.flatMap((s) => s.purposes.map((purpose) => ({ s, purpose })));
const drawnBatch = fc.record({
  which: fc.nat({ max: strains.length - 1 }),
  sex: fc.constantFrom('straight-run' as const, 'pullets' as const),
  wantedBirds: fc.integer({ min: 1, max: 400 }),
  arrival: fc.integer({ min: -20, max: 500 }),
  hatchToArrivalDays: fc.integer({ min: 0, max: 3 }),
  wastePercent: fc.option(fc.integer({ min: 0, max: 20 }), { nil: undefined }),
  loss: fc.option(fc.integer({ min: 0, max: 20 }), { nil: undefined }),
  bagKg: fc.constantFrom(undefined, 20, 25),
  processing: fc.constantFrom('home' as const, 'hired' as const),
  medicated: fc.constantFrom(undefined, 5),
  warmerK: fc.integer({ min: -9, max: 12 }),
  latitudeDeg: fc.integer({ min: -60, max: 65 }),
  heat: fc.constantFrom('lamp' as const, 'plate' as const, 'gas' as const),
  count: fc.integer({ min: 1, max: 8 }),
  standsIn: fc.constantFrom('outdoors' as const, 'unheated-building' as const),
});

function ofDrawnBatches(): Record<string, Figures> {
  const drawn = fc.sample(drawnBatch, { numRuns: 24, seed: SEED });
  return Object.fromEntries(
    drawn.map((d, k) => {
      const { s, purpose } = strains[d.which]!;
      const usual = newFarm();
      const farm = {
        latitudeDeg: d.latitudeDeg,
        monthlyMinC: usual.monthlyMinC.map((c) => c + d.warmerK),
        monthlyMaxC: usual.monthlyMaxC.map((c) => c + d.warmerK),
      };
      const batch: Partial<Batch> = {
        purpose,
        strainId: s.id,
        sex: d.sex,
        wantedBirds: d.wantedBirds,
        arrivalDate: addDays('2026-11-25', d.arrival),
        hatchToArrivalDays: d.hatchToArrivalDays,
        processing: d.processing,
        ...(d.wastePercent === undefined ? {} : { wastePercent: d.wastePercent }),
        ...(d.loss === undefined ? {} : { firstWeekLossPercent: d.loss, laterLossPercent: d.loss }),
        ...(d.bagKg === undefined ? {} : { bagKg: d.bagKg }),
        ...(d.medicated === undefined ? {} : { medicatedWithdrawalDays: d.medicated }),
        brooderId: 'brooder',
        penId: 'pen',
        coopId: 'coop',
        freezerId: 'freezer',
        feedStoreId: 'store',
        prices: { perBird: '3.10', processingPerBird: '5.00', beddingPerBag: '8' },
      };
      const facilities: Facility[] = [
        newBrooder({
          standsIn: d.standsIn,
          heat: { kind: d.heat, wattsEach: 250, count: d.count, thermostat: false },
          circuitId: 'circuit',
          feederCm: 300,
          drinkerCm: 150,
        }),
        { kind: 'circuit', id: 'circuit', name: 'Circuit', volts: 120, amps: 15, otherLoadW: 60 },
        { kind: 'field-pen', id: 'pen', name: 'Pen', floorM2: 11, count: 2 },
        {
          ...{ kind: 'coop', id: 'coop', name: 'Coop', floorM2: 8 },
          ...{ roostM: 6, nestBoxes: 6, runM2: 40 },
        } as Facility,
        { kind: 'freezer', id: 'freezer', name: 'Freezer', liters: 400, usedL: 60 },
        { kind: 'feed-store', id: 'store', name: 'Store', capacityKg: 500 },
      ];
      const { monthlyMinC, monthlyMaxC } = farm;
      const request = newRequest({
        batch,
        facilities,
        farm,
        climate: climateFromMonthlyMeans(monthlyMinC, monthlyMaxC, 6),
      });
      return [`batch ${k + 1}: ${s.id} for ${purpose}`, ofBatch(plannedBatch(request))];
    }),
  );
}

function ofFinder(): Record<string, Figures> {
  const weeks = foundArrivals(newRequest(), { from: '2027-02-01', to: '2027-10-31' });
  return {
    finder: {
      weeks: weeks.map(
        (w) => `${w.arrivalDate} ${w.score} ${w.rank} ${w.moveOutDate} ${w.leavingDate}`,
      ),
    },
  };
}

function ofPastures(): Record<string, Figures> {
  const forages = tables.forages.map((f) => f.id);
  const classes = tables.cattle.classes.map((c) => c.id);
  const drawn = fc.sample(
    fc.record({
      paddocks: fc.integer({ min: 1, max: 9 }),
      areaM2: fc.integer({ min: 1500, max: 12000 }),
      forage: fc.nat({ max: forages.length - 1 }),
      cattle: fc.array(fc.nat({ max: classes.length - 1 }), { minLength: 1, maxLength: 2 }),
      head: fc.integer({ min: 1, max: 8 }),
      day: fc.integer({ min: -40, max: 200 }),
      heightCm: fc.integer({ min: 4, max: 30 }),
      south: fc.boolean(),
    }),
    { numRuns: 8, seed: SEED },
  );
  return Object.fromEntries(
    drawn.map((d, k) => {
      const today = addDays('2027-04-21', d.day);
      const usual = newFarm();
      const turned = (months: readonly number[]): number[] =>
        d.south ? [...months.slice(6), ...months.slice(0, 6)] : [...months];
      const request = newPastureRequest({
        today,
        farm: {
          latitudeDeg: d.south ? -40 : 42.9,
          monthlyMinC: turned(usual.monthlyMinC),
          monthlyMaxC: turned(usual.monthlyMaxC),
        },
        paddocks: Array.from({ length: d.paddocks }, (_, p) =>
          newPaddock({
            id: `p${p + 1}`,
            areaM2: d.areaM2 + 300 * p,
            forageId: forages[(d.forage + p) % forages.length]!,
          }),
        ),
        herds: [
          newHerd({
            groups: d.cattle.map((c) => newGroup({ classId: classes[c]!, head: d.head })),
            inPaddockId: 'p1',
          }),
        ],
        readings: [
          newReading({ date: addDays(today, -9), heightCm: d.heightCm }),
          newReading({ id: 'r2', date: addDays(today, -2), heightCm: d.heightCm + 3 }),
        ],
      });
      return [`pasture ${k + 1}`, ofPasture(plannedPasture(request))];
    }),
  );
}

const withoutHay = () =>
  newPastureRequest({
    today: '2027-03-01',
    farm: { latitudeDeg: WISCONSIN.latitudeDeg },
    climate: climateOf(WISCONSIN),
    paddocks: newPaddocks(8, { areaM2: 6070 }),
    herds: [newHerd({ groups: [newGroup({ head: 5 })] })],
    choices: { version: 1, makesHay: false },
  });

function ofHouseholds(): Record<string, Figures> {
  const people: Person[] = [
    { id: 'a', name: 'A', away: [{ from: '2027-05-11', to: '2027-05-14' }] },
    { id: 'b', name: 'B', away: [], hoursByWeekday: [3, 3, 3, 3, 3, 6, 4] },
  ];
  const pasture = plannedPasture(newPastureRequest({ today: '2027-04-05' }));
  const drawn = fc.sample(
    fc.array(
      fc.record({
        hours: fc.integer({ min: 1, max: 12 }),
        due: fc.integer({ min: 2, max: 70 }),
        window: fc.integer({ min: 1, max: 20 }),
        last: fc.option(fc.integer({ min: 0, max: 14 }), { nil: undefined }),
        priority: fc.constantFrom('must' as const, 'should' as const, 'could' as const),
        canBeSpread: fc.boolean(),
        dry: fc.boolean(),
        people: fc.constantFrom(undefined, 2),
      }),
      { minLength: 2, maxLength: 8 },
    ),
    { numRuns: 5, seed: SEED },
  );
  return Object.fromEntries(
    drawn.map((jobs, k) => {
      const today = '2027-04-05';
      const ownJobs = jobs.map((job, j) =>
        newOwnJob({
          id: `job-${j}`,
          name: `Job ${j}`,
          hours: job.hours,
          notBefore: addDays(today, Math.max(0, job.due - job.window)),
          dueOn: addDays(today, job.due),
          ...(job.last === undefined ? {} : { noUseAfter: addDays(today, job.due + job.last) }),
          priority: job.priority,
          canBeSpread: job.canBeSpread,
          conditions: {
            ...(job.dry ? { dryGround: true } : {}),
            ...(job.people === undefined ? {} : { peopleNeeded: job.people }),
          },
        }),
      );
      const request = newWork({
        people,
        work: [
          newBatchWork('2027-05-05', today),
          {
            ...{ id: 'h1', name: 'Cows', kind: 'herd' as const },
            tasks: pasture.tasks,
            events: keyDatesOf({ id: 'h1', name: 'Cows' }, pasture.herds[0]!.events),
          },
        ],
        ownJobs,
      });
      return [`household ${k + 1}`, ofWork(workPlanOf(request, 300))];
    }),
  );
}
