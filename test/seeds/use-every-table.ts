import { cautionsSaid } from '../../shared/plan/mishap/cautions-said.js';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import { quantityOfDay } from '../../shared/explain/daily-series.js';
import { explain } from '../../shared/formulas/explanation.js';
import { shownJudgements } from '../../shared/formulas/judgements.js';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import type { Quantity } from '../../shared/explain/quantity.js';
import type { Batch, Purpose } from '../../shared/farm/batch.js';
import type { IngredientProduct } from '../../shared/farm/mix-ingredient.js';
import type { Brooder, Facility, HeatSourceKind } from '../../shared/farm/facility.js';
import type { CattleGroup } from '../../shared/farm/herd.js';
import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import { scoreOf } from '../../shared/plan/arrival-finder.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { batchQuantities } from '../../shared/plan/farm/explain-plans.js';
import { heaterOut } from '../../shared/plan/mishap/heater-out.js';
import { sitterSheet } from '../../shared/plan/handover/sitter-sheet.js';
import { stopsOn } from '../../shared/plan/handover/sheet-stops.js';
import type { Ration } from '../../shared/ration/ration.js';
import { weightOfGirth } from '../../shared/pasture/weight-of-girth.js';
import { moveQuantities } from '../../shared/plan/pasture/move-quantities.js';
import type { PastureRequest } from '../../shared/plan/pasture/pasture-request.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import { hayAheadOf, hayMadeOn } from '../../shared/plan/pasture/hay-beside-grass.js';
import { seasonRows } from '../../shared/plan/pasture/season-rows.js';
import {
  allStandingOn,
  averageOn,
  heightOn,
  needAheadOf,
  needOn,
  standingOn,
  usableOn,
} from '../../shared/plan/pasture/standing.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import { datedWork } from '../../shared/plan/work/dated-work.js';
import { groundOn } from '../../shared/plan/work/ground-quantities.js';
import { gardenDates } from '../../shared/plan/year/garden-dates.js';
import { yearSpan } from '../../shared/plan/year/year-span.js';
import { hoursOfSet, jobsOfSet, suggestedAnchor } from '../../shared/plan/work/job-sets.js';
import { paddockYears } from '../../shared/plan/record/paddock-year.js';
import { workOutlookOf } from '../../shared/plan/work/work-outlook.js';
import { workPlanOf } from '../../shared/plan/work/work-plan.js';
import {
  frostFree,
  frostLow,
  jobQuantities,
  outlookQuantities,
  weekQuantities,
} from '../../shared/plan/work/work-quantities.js';
import type { WorkRequest } from '../../shared/plan/work/work-request.js';
import { taskHours } from '../../shared/plan/tasks/task-hours.js';
import type { PlanIssue } from '../../shared/problems/plan-issue.js';
import { choicesFor, type Tables } from '../../shared/tables/tables.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { newBatch, newBrooder, newFarm, newRequest } from '../support/factories.js';
import {
  newHerd,
  newPaddock,
  newPastureRequest,
  newReading,
  RAIN_MM,
  toldMove,
} from '../support/pasture-factories.js';
import {
  costedBatch,
  foundArrivals,
  foundReady,
  movesOfBatch,
  newPicture,
  plannedBatch,
  plannedPasture,
} from '../support/pictures.js';
import { newIngredient, newRation } from '../support/ration-factories.js';
import { newWork } from '../support/season-factories.js';

const READER = { units: 'metric', currency: 'USD' } as const;

/** Everything that service, page and terminal make of the tables, and what a person can open. */
export interface Used {
  readonly batches: readonly { readonly request: PlanRequest; readonly plan: BatchPlan }[];
  readonly pastures: readonly PasturePlan[];
  readonly quantities: readonly Quantity[];
}

/**
 * Plans with every row of every table: strains by purpose with each of their tables, schedules,
 * standards and rules; every forage, class, breed, way of feeding and storing; a year of work with
 * every set. Opens every number, and reads what the page shows of rows by itself.
 */
export function useEveryTable(tables: Tables): Used {
  const batches = [...batchesOf(tables), ...eggBatchesOf(tables)];
  const pastures = pasturesOf(tables);
  const season = seasonOf(tables);
  const rations = rationsOf(tables);
  const quantities = [
    ...costsOf(tables),
    ...heatOutOf(tables),
    ...batches.flatMap(({ plan }) => [
      ...batchQuantities(plan, tables),
      ...plan.daily.flatMap(({ id, values }) =>
        [0, values.length - 1].flatMap((day) => quantityOfDay(plan.daily, id, day) ?? []),
      ),
    ]),
    ...pastures.flatMap((plan) => [
      ...quantitiesIn(plan),
      ...plan.tasks.map((task) => taskHours(task, tables)),
      ...plan.moves.slice(0, 12).flatMap((move) => moveQuantities(plan, move)),
      ...quantitiesIn(seasonRows(plan)),
      ...standingQuantities(plan, 40, tables),
    ]),
    ...batches.filter((_, k) => k % 29 === 0).flatMap(({ request }) => pointsOf(request)),
    ...batches.filter((_, k) => k % 29 === 0).flatMap(({ request }) => readyOf(request)),
    ...season,
    ...rations.flatMap((ration) => quantitiesIn(ration)),
    weightOfGirth({ girthCm: 180, lengthCm: 150 }, tables.cattle.girth),
  ];
  for (const each of quantities) explain(each, tables, READER);
  showCautions(tables, [...batches.map(({ plan }) => plan), ...pastures, ...rations]);
  cautionsSaid(tables, READER, ['freezer-power', 'cattle-ice', 'after-predator', 'cold-calf']);
  for (const { issues } of rations) showIssues(tables, issues);
  for (const { plan } of batches) showIssues(tables, plan.issues);
  for (const plan of pastures) showIssues(tables, plan.issues);
  showRows(tables);
  return { batches, pastures, quantities };
}

/** What chicks of a day make of a warm room when the power is out. */
function heatOutOf(tables: Tables): Quantity[] {
  const { farm, climate } = newRequest({});
  const batch = newBatch({ brooderId: 'brooder', arrivalDate: '2027-05-05' });
  const facilities = [newBrooder()];
  const picture = newPicture({ farm, climate, facilities, today: batch.arrivalDate });
  const out = heaterOut({ ...picture, batches: [{ ...batch, id: 'c' }] }, tables, {
    ...{ batchId: 'c', working: 0, isPowerOut: true },
  });
  return quantitiesIn(out!);
}

/**
 * Mixes for birds of every age: of all there is, of all with one of it next to free, so that only its
 * limit keeps it small, and of corn alone, which feeds nobody.
 */
function rationsOf(tables: Tables): Ration[] {
  const all = tables.ingredients.map(({ id }) => newIngredient(id));
  // A limit says the same of all birds that it is of.
  const shown = new Set<object>();
  return tables.rationNeeds.flatMap((birds) =>
    birds.stages.flatMap((stage) => {
      const ration = (ingredients: readonly IngredientProduct[]): Ration =>
        newRation({ birdsId: birds.id, stageId: stage.id, ingredients }, tables);
      const limited = all.filter((_, k) => {
        const limit = tables.ingredients[k]!.limits.find(({ stages }) => stages.includes(stage.is));
        return limit !== undefined && !shown.has(limit) && shown.add(limit);
      });
      return [
        ration(all),
        ration(all.filter(({ ingredientId }) => ingredientId === 'corn')),
        ...limited.map((free) =>
          ration(all.map((each) => (each === free ? { ...each, price: '0.01' } : each))),
        ),
      ];
    }),
  );
}

/** Cautions of plans as the page shows them: title, text, sources. */
function showCautions(
  tables: Tables,
  plans: readonly { readonly cautions: readonly string[] }[],
): void {
  for (const key of new Set(plans.flatMap(({ cautions }) => cautions))) {
    const { title, text, sources, mark } = tables.cautions[key]!;
    void [title, text, mark];
    for (const id of sources ?? []) void tables.sources[id]?.title;
  }
}

/** Warnings as the page shows them: with the titles of their sources. */
function showIssues(tables: Tables, issues: readonly PlanIssue[]): void {
  for (const { sources = [] } of issues) for (const id of sources) void tables.sources[id]?.title;
}

/**
 * What forms and lists of the page read of rows by themselves, beyond what plans do: names to
 * choose from, and what a placeholder says is usual.
 */
function showRows(tables: Tables): void {
  const named: readonly { readonly id: string; readonly name: string }[][] = [
    [...tables.strains],
    [...tables.ingredients],
    [...tables.rationNeeds],
    [...tables.growthTables],
    [...tables.broodingSchedules],
    [...tables.space.brooder],
    [...tables.hatching.species],
    [...tables.hatching.incubators],
    [...tables.materials],
    [...tables.soils],
    [...tables.forages],
    [...tables.cattle.classes],
    [...tables.gestation.breeds],
    [...tables.jobSets],
    ...tables.moveOut.map(({ rules }) => [...rules]),
    ...tables.feedPrograms.map(({ phases }) => [...phases]),
    [...tables.feedPrograms],
    [...tables.layCurves],
  ];
  for (const list of named) for (const { id, name } of list) void [id, name];
  for (const { counted, anchorName } of tables.jobSets) void [JSON.stringify(counted), anchorName];
  for (const { description } of tables.strains) void description;
  const land = { paddocks: [newPaddock()], herds: [newHerd()], pastureChoices: {} };
  paddockYears({ ...land, today: '2027-12-31' }, tables, {
    year: 2027,
    facts: [toldMove('h1', 'p1', '2027-05-01'), toldMove('h1', undefined, '2027-05-04')],
  });
  for (const list of Object.values(shownJudgements(tables.judgements)))
    for (const { value } of list) explain(value, tables, READER);
}

const STANDS_IN = ['outdoors', 'unheated-building', 'heated-room'] as const;
const KINDS: readonly HeatSourceKind[] = ['lamp', 'plate', 'gas'];

/** Cones, scalder and plucker that are too few for so many hands, each in turn. */
const EQUIPMENT: readonly Partial<Batch>[] = [
  { killingCones: 1, processingHelpers: 6 },
  {},
  { scalderBirds: 1, processingHelpers: 6, processingIsFirst: false },
  {},
  { pluckerBirds: 1, processingHelpers: 14 },
  {},
  { plucking: 'hand', processingIsFirst: true },
  {},
];

function batchesOf(tables: Tables): { request: PlanRequest; plan: BatchPlan }[] {
  const bodies = tables.strains.flatMap((strain) =>
    strain.purposes.flatMap((purpose) =>
      strain.growthTables.flatMap((growthTableId) =>
        (['straight-run', 'pullets'] as const).flatMap((sex): Partial<Batch>[] => {
          const rules = tables.moveOut.find(({ id }) => id === strain.moveOut)!.rules;
          return rules.map(({ id }) => ({
            purpose,
            sex,
            growthTableId,
            strainId: strain.id,
            moveOutRuleId: id,
          }));
        }),
      ),
    ),
  );
  const count = Math.max(
    3 * bodies.length,
    tables.materials.length,
    tables.broodingSchedules.length,
    tables.space.brooder.length,
  );
  const farm = newFarm();
  const usual = [0, -45, 14, -22].map((warmerK) =>
    climateFromMonthlyMeans(
      farm.monthlyMinC.map((c) => c + warmerK),
      farm.monthlyMaxC.map((c) => c + warmerK),
      tables.heat.coldNightMarginK.value,
    ),
  );
  const forecast = usual.map((climate) => ({
    ...climate,
    forecast: [{ date: '2027-06-20', minC: 9, maxC: 20 }],
  }));
  const plans = Array.from({ length: count }, (_, k) => {
    const heat = {
      kind: KINDS[Math.floor(k / 3) % 3]!,
      wattsEach: 250,
      count: 4,
      thermostat: k % 2 === 0,
    };
    const layers = [
      { materialId: tables.materials[k % tables.materials.length]!.id, thicknessMm: 20 },
    ];
    const request = newRequest({
      tables,
      climate: (k % 5 === 0 ? forecast : usual)[k % 4]!,
      people:
        k % 3 === 0
          ? []
          : [{ id: 'a', name: 'A', away: [{ from: '2027-05-01', to: '2027-07-01' }] }],
      publicHolidays: k % 7 === 0 ? [{ date: '2027-05-05', name: 'A holiday' }] : [],
      ...(k % 3 === 1 ? { weighings: weighedOn(['2027-07-23', '2027-08-20']) } : {}),
      batch: {
        ...bodies[k % bodies.length],
        ...PLACES,
        arrivalDate: ['2027-05-05', '2027-07-20', '2027-12-10'][k % 3]!,
        hatchToArrivalDays: k % 4,
        wantedBirds: [60, 400][k % 2]!,
        ...(k % 6 === 4 && bodies[k % bodies.length]!.purpose === 'meat'
          ? { targetLiveKg: 5, weightFactor: 1.3 }
          : {}),
        broodingScheduleId:
          tables.broodingSchedules[Math.floor(k / 2) % tables.broodingSchedules.length]!.id,
        spaceStandardId: tables.space.brooder[k % tables.space.brooder.length]!.id,
        processing: k % 2 === 0 ? 'home' : 'hired',
        ...EQUIPMENT[k % EQUIPMENT.length],
        joinsOlderFlock: true,
        ...(k % 3 === 0 ? { medicatedWithdrawalDays: 5 } : {}),
        ...(k % 4 === 3 ? { leaveAgeDays: 110 } : {}),
        ...(k % 6 === 1 ? { moveOutDate: '2027-07-23' } : {}),
      },
      facilities: facilitiesWith({
        heat,
        walls: { layers },
        roof: { layers },
        standsIn: STANDS_IN[k % 3]!,
      }),
    });
    return { request, plan: plannedBatch(request) };
  });
  return [...plans, ...hensOf(tables), ...fedOtherwise(tables)];
}

/** Every list of feeds that meat birds may be given in the place of their own. */
const fedOtherwise = (tables: Tables): { request: PlanRequest; plan: BatchPlan }[] =>
  tables.strains.flatMap(({ id: strainId, feedProgram }) =>
    choicesFor(tables.feedPrograms, feedProgram.meat ?? '')
      .filter(({ id }) => id !== feedProgram.meat)
      .map(({ id: feedProgramId }) => {
        const batch = { strainId, feedProgramId, wantedBirds: 12 };
        const request = newRequest({ tables, batch });
        return { request, plan: plannedBatch(request) };
      }),
  );

/** Every way of laying and feeding that may be chosen in the place of a strain's own. */
function hensOf(tables: Tables): { request: PlanRequest; plan: BatchPlan }[] {
  const strains = tables.strains.filter(({ layCurve }) => layCurve !== undefined);
  const orders = strains.flatMap((strain): Partial<Batch>[] => [
    ...choicesFor(tables.layCurves, strain.layCurve!).map(({ id }) => ({
      strainId: strain.id,
      layCurveId: id,
    })),
    ...choicesFor(tables.feedPrograms, strain.feedProgram.layers!).map(({ id }) => ({
      strainId: strain.id,
      feedProgramId: id,
      eggsWantedPerWeek: 30,
    })),
  ]);
  return orders.map((order) => {
    const request = newRequest({
      tables,
      batch: { purpose: 'layers', sex: 'pullets', wantedBirds: 12, ...order },
      ...(order.feedProgramId === undefined ? {} : { eggCounts: COUNTED }),
    });
    return { request, plan: plannedBatch(request) };
  });
}

/** What moves the bill of a batch of every strain, and when it has had enough feed. */
const costsOf = (tables: Tables): readonly Quantity[] =>
  tables.strains.flatMap(({ id: strainId, purposes, growthTables }) =>
    purposes.flatMap((purpose) =>
      growthTables.flatMap((growthTableId) => {
        const request = newRequest({
          tables,
          facilities: [newBrooder()],
          batch: newBatch({ strainId, purpose, growthTableId, brooderId: 'brooder' }),
        });
        return quantitiesIn([movesOfBatch(request), costedBatch(request)]);
      }),
    ),
  );

const COUNTED = [{ batchId: 'any', date: '2028-05-07', days: 7, eggs: 60 }];

/** Birds on the scale on each of these days, as heavy as any. */
const weighedOn = (dates: readonly string[]) =>
  dates.map((date) => ({ batchId: 'any', date, birds: 10, averageKg: 0.7 }));

/** Own eggs of every breed, in every incubator and under a hen; fresh, kept for long, and too long. */
function eggBatchesOf(tables: Tables): { request: PlanRequest; plan: BatchPlan }[] {
  const bodies = tables.strains.flatMap((strain) => {
    const { hen } = tables.hatching.species.find(({ id }) => id === strain.species)!;
    const ways: readonly Partial<Batch>[] = [
      { origin: 'incubator' },
      ...tables.hatching.incubators.map(({ id }): Partial<Batch> => ({
        origin: 'incubator',
        incubatorKindId: id,
      })),
      ...(hen ? [{ origin: 'hen' } as const] : []),
    ];
    return strain.purposes.flatMap((purpose) =>
      ways.map((way): Partial<Batch> => ({ ...way, purpose, strainId: strain.id })),
    );
  });
  return bodies.map((body, k) => {
    const request = newRequest({
      tables,
      batch: {
        ...body,
        sex: 'straight-run',
        hatchToArrivalDays: 0,
        ...[
          {},
          { oldestEggDays: 10 },
          // Old enough at the move for the nights of grown birds.
          { oldestEggDays: 14, leaveAgeDays: 100, moveOutDate: '2027-07-20' },
        ][k % 3],
      },
    });
    return { request, plan: plannedBatch(request) };
  });
}

const PLACES = {
  brooderId: 'brooder',
  penId: 'pen',
  coopId: 'coop',
  freezerId: 'freezer',
  feedStoreId: 'store',
} as const;

const facilitiesWith = (more: Partial<Brooder>): Facility[] => [
  newBrooder({ feederCm: 300, drinkerCm: 150, circuitId: 'circuit', ...more }),
  { kind: 'circuit', id: 'circuit', name: 'Circuit', volts: 120, amps: 15, otherLoadW: 60 },
  { kind: 'field-pen', id: 'pen', name: 'Pen', floorM2: 11, count: 2 },
  { kind: 'coop', id: 'coop', name: 'Coop', floorM2: 8, roostM: 6, nestBoxes: 6, runM2: 40 },
  { kind: 'freezer', id: 'freezer', name: 'Freezer', liters: 400, usedL: 60 },
  { kind: 'feed-store', id: 'store', name: 'Store', capacityKg: 500 },
];

function pasturesOf(tables: Tables): PasturePlan[] {
  const { feeding, storing, bales } = tables.pasture.hay;
  const forages = tables.forages;
  const { classes } = tables.cattle;
  const breeds = tables.gestation.breeds;
  const stands = ['fair', 'good', 'excellent'] as const;
  const growths = ['low', 'medium', 'high'] as const;
  const batches = [
    ...(['meat', 'layers'] as const).map((purpose) => ({
      ...newBatch({ purpose, strainId: strainFor(tables, purpose) }),
      id: String(purpose),
    })),
    ...tables.manure.others.map(({ species }) => ({
      ...newBatch({ strainId: tables.strains.find((each) => each.species === species)!.id }),
      id: species,
    })),
  ];
  const count = Math.max(forages.length * 3, breeds.length, classes.length * 2);
  return Array.from({ length: count }, (_, k) => {
    const choices: PastureChoices = {
      feedingId: feeding[k % feeding.length]!.id,
      storingId: storing[k % storing.length]!.id,
      baleId: bales[k % bales.length]!.id,
      refillH: [1, 4, 12, 24][k % 4]!,
    };
    const groups: CattleGroup[] = [
      { classId: classes[k % classes.length]!.id, head: 3 },
      {
        classId: 'dry-cow',
        head: 2,
        bredOn: '2026-08-10',
        breedId: breeds[k % breeds.length]!.id,
      },
      {
        classId: classes[(k + 3) % classes.length]!.id,
        head: 1,
        arrivesOn: '2027-06-01',
        ...(k % 2 === 0 ? { calvesOn: '2027-06-20' } : {}),
      },
    ];
    const { id: followedByBatchId } = batches[k % batches.length]!;
    const forageOf = (p: number) => forages[(k + p) % forages.length]!;
    return plannedPasture({
      ...newPastureRequest({
        tables,
        choices,
        paddocks: Array.from({ length: 3 }, (_each, p) =>
          newPaddock({
            id: `p${p + 1}`,
            name: `Paddock ${p + 1}`,
            forageId: forageOf(p).id,
            stand: stands[Math.floor(k / forages.length) % 3]!,
            productivity: growths[Math.floor(k / forages.length) % 3]!,
            soilId: tables.soils[(k + p) % tables.soils.length]!.id,
            hasWater: p !== 1,
            ...(p === 2 ? { harvestOn: '2027-10-20' } : {}),
          }),
        ),
        herds: [newHerd({ groups, followedByBatchId })],
        readings:
          k % 2 === 0
            ? [newReading(), newReading({ id: 'r2', date: '2027-04-10', heightCm: 8 })]
            : [],
        ...weatherOf(k),
      }),
      // Those of another batch stand in a paddock, and follow nobody.
      batches: batches.map((batch, b) =>
        b === (k + 1) % batches.length ? { ...batch, grassPaddockId: 'p1' } : batch,
      ),
    });
  });
}

const pointsOf = (request: PlanRequest): Quantity[] =>
  foundArrivals(request, { from: '2027-02-01', to: '2028-01-31' }).map((week) =>
    scoreOf(week, request.tables),
  );

const readyOf = (request: PlanRequest): Quantity[] =>
  quantitiesIn(
    foundReady(request, {
      goal: request.batch.purpose === 'layers' ? 'eggs' : 'ready',
      on: '2027-11-25',
    }),
  );

const standingQuantities = (plan: PasturePlan, day: number, tables: Tables): Quantity[] => [
  ...plan.paddocks.flatMap((paddock) => [
    standingOn(plan, paddock, day),
    heightOn(plan, paddock, day),
  ]),
  ...plan.herds.map((herd) => needOn(plan, herd, day)),
  ...[allStandingOn, averageOn, usableOn, needAheadOf, hayAheadOf].map((of) => of(plan, day)),
  ...plan.surplus
    .slice(0, 2)
    .flatMap(({ cutOn }) => hayMadeOn(plan, daysBetween(plan.from, cutOn), tables) ?? []),
];

const strainFor = (tables: Tables, purpose: Purpose): string =>
  tables.strains.find(({ defaultFor }) => defaultFor?.includes(purpose))!.id;

/** Usual weather, a hot place, or a forecast that is not the usual weather. */
function weatherOf(k: number): Pick<PastureRequest, 'climate'> {
  const warmerK = [0, 12, 0][k % 3]!;
  const farm = newFarm();
  const climate = climateFromMonthlyMeans(
    farm.monthlyMinC.map((c) => c + warmerK),
    farm.monthlyMaxC.map((c) => c + warmerK),
    6,
    RAIN_MM,
  );
  const forecast = Array.from({ length: 16 }, (_, day) => ({
    date: addDays('2027-04-21', day),
    ...{ minC: 18, maxC: 38, rainMm: day % 2 === 0 ? 30 : 0 },
  }));
  return { climate: k % 3 === 2 ? { ...climate, forecast } : climate };
}

/** Numbers of a year of work, its chances and its sheet. */
function seasonOf(tables: Tables): Quantity[] {
  const today = '2027-04-05';
  const { request: birds } = {
    request: newRequest({ tables, today, facilities: facilitiesWith({}) }),
  };
  const farm = newFarm();
  const { groups, ...rest } = newHerd();
  const milkCow = { classId: 'milk-cow', head: 1, calvesOn: '2027-08-01' };
  const herd = { ...rest, groups: [...groups, milkCow] };
  const pasture = plannedPasture(newPastureRequest({ tables, today, herds: [herd] }));
  const rows = (['meat', 'layers'] as const).map((purpose) => ({
    ...birds.batch,
    ...PLACES,
    ...{ id: purpose, name: purpose, purpose, strainId: strainFor(tables, purpose) },
    arrivalDate: '2027-04-21',
    ...(purpose === 'meat' ? { moveOutDate: '2027-05-15' } : {}),
  }));
  const batches = rows.map((batch) => ({
    ...{ id: batch.id, name: batch.name, plan: plannedBatch({ ...birds, batch }) },
  }));
  const climate = climateFromMonthlyMeans(farm.monthlyMinC, farm.monthlyMaxC, 6);
  const ownJobs = tables.jobSets.flatMap((set) =>
    jobsOfSet(set, {
      anchorOn: suggestedAnchor(set, { farm, climate, tables, today }),
      count: 2,
      today,
    }),
  );
  const handover = {
    ...{ id: 'h', sitter: 'C', from: '2027-05-20', to: '2027-05-21', hoursPerDay: 3 },
    ...{ roundOrder: [], phones: [], whereabouts: [] },
  };
  const request: WorkRequest = newWork({
    tables,
    today,
    ownJobs: ownJobs.map((job, k) => {
      const { waitsForId: _waits, ...rest } = job;
      return { ...rest, id: `${job.setId}/${job.id}/${k}` };
    }),
    work: datedWork(batches, { herds: [herd], cows: [] }, pasture),
    handovers: [handover],
  });
  const { keep, ...plan } = workPlanOf(request, 20);
  workPlanOf({ ...request, kept: keep }, 20);
  const outlook = workOutlookOf({ ...request, history: [] }, 5);
  const picture = newPicture({
    ...{ farm, climate, today, facilities: birds.facilities },
    ...{ herds: [herd], batches: rows },
  });
  const sheet = sitterSheet(
    handover,
    plan,
    stopsOn(picture, tables, { batches, pasture }, handover),
    { people: picture.people, tables },
  );
  return [
    ...tables.jobSets.map((set) => {
      const on = { anchorOn: '2027-05-01', count: 2, today };
      return hoursOfSet(set, jobsOfSet(set, on), { count: on.count, unit: set.name });
    }),
    ...plan.jobs.flatMap((job) => Object.values<Quantity>(jobQuantities(job, plan.basis))),
    groundOn(plan, 0),
    ...plan.weeks.flatMap((week) => Object.values<Quantity>(weekQuantities(week, plan.basis))),
    ...outlook.frost.map((frost) => frostLow(outlook, frost)),
    ...outlook.frost.flatMap((frost) => frostFree(outlook, frost, farm) ?? []),
    ...gardenDates({ farm, climate, today }, tables, yearSpan(today)),
    ...outlook.jobs.flatMap((job) => quantitiesIn(outlookQuantities(outlook, job))),
    ...quantitiesIn(sheet),
  ];
}
