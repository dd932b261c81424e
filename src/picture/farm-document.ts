import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { Farm, Person } from '../../shared/farm/farm.js';
import type { Herd } from '../../shared/farm/herd.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { Product } from '../../shared/farm/product.js';
import { checkCircuit, checkMaterials } from '../../shared/plan/check-facilities.js';
import { freePriceProblems } from '../../shared/farm/feed-product.js';
import { checkProduct } from '../../shared/plan/check-products.js';
import { toldProblems, type ToldOn } from '../../shared/farm/told-kinds.js';
import type { Treatment } from '../../shared/farm/treated.js';
import { handoverProblems } from '../../shared/plan/handover/check-handover.js';
import { ownJobProblems } from '../../shared/plan/work/check-jobs.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { climateFromMonthlyMeans, type Climate } from '../../shared/weather/climate.js';
import { checkSoil } from '../farms/check-soil.js';
import { checkCountry, publicHolidays } from '../holidays/holidays.js';
import { checkedCorners, outlineAreaM2 } from '../outlines/outline.js';
import type { FarmDocumentDto } from '../documents/farm-document.dto.js';

/**
 * The picture of a farm that is sent whole: used by every preview and by the terminal.
 *
 * @throws FieldError naming what contradicts itself or names what is not there
 */
export function pictureOfDocument(
  document: FarmDocumentDto,
  tables: Tables,
  nowMs: number,
): FarmPicture {
  const { farm, forecast } = document;
  const around = aroundAnimals(document, tables);
  const people = around.people;
  const jobs = (document.jobs ?? []).map((job, i) => ({ ...job, id: job.id ?? `${i + 1}` }));
  const handovers = (document.handovers ?? []).map((each, i) => ({
    ...each,
    id: each.id ?? `${i + 1}`,
  }));
  const today = document.today ?? plainDateAt(nowMs, farm.timeZone);
  const reader = { units: farm.units, today };
  const batches = (document.batches ?? []).map((batch, i) => ({
    ...batch,
    id: batch.id ?? `batch-${i + 1}`,
  }));
  const herds = (document.herds ?? []).map((herd, i): Herd => ({
    ...herd,
    id: idOf(herd, `herds.${i}.`),
  }));
  const treatments = document.treatments ?? [];
  const told = { today, batchIds: idsOf(batches), herdIds: idsOf(herds), paddockIds: [] };
  refuse([
    ...at('jobs', jobs, (job) => ownJobProblems(job, { people, ownJobs: jobs })),
    ...at('handovers', handovers, (each) =>
      handoverProblems(each, { people, others: handovers, reader }),
    ),
    ...at('treatments', treatments, (each) => treatmentProblems(each, told)),
  ]);
  return {
    ...around,
    products: productsOf(document, tables),
    suppliers: (document.suppliers ?? []).map((each, i) => ({
      ...each,
      id: each.id ?? `supplier-${i + 1}`,
    })),
    today,
    publicHolidays: publicHolidays(farm, today),
    climate: forecast === undefined ? around.climate : { ...around.climate, forecast },
    batches,
    headChanges: document.headChanges ?? [],
    brooderLooks: document.brooderLooks ?? [],
    heatOuts: document.heatOuts ?? [],
    weighings: document.weighings ?? [],
    eggCounts: document.eggCounts ?? [],
    feedOpenings: document.feedOpenings ?? [],
    feedBought: document.feedBought ?? [],
    treatments,
    calvings: document.calvings ?? [],
    paddocks: (document.paddocks ?? []).map((paddock, i) => paddockOf(paddock, `paddocks.${i}.`)),
    herds,
    cows: (document.cows ?? []).map((cow, i) => ({ ...cow, id: cow.id ?? `cow-${i + 1}` })),
    readings: (document.readings ?? []).map((r, i) => ({ ...r, id: `reading-${i + 1}` })),
    pastureChoices: document.pastureChoices ?? {},
    jobs,
    handovers,
    progress: document.progress ?? [],
    groundChecks: document.groundChecks ?? [],
    keptPlans: [],
  };
}

const idsOf = (rows: readonly { readonly id: string }[]): string[] => rows.map(({ id }) => id);

/** What is wrong with a medicine, as if it were told. */
const treatmentProblems = (
  { id: _id, about, date: on, ...details }: Treatment,
  farm: ToldOn,
): FieldProblem[] =>
  toldProblems({ kind: 'treated', about, on, details }, farm).map((problem) => ({
    ...problem,
    field: problem.field === 'on' ? 'date' : problem.field.replace(/^details\./, ''),
  }));

interface Around {
  readonly farm: Farm;
  readonly climate: Climate;
  readonly facilities: readonly Facility[];
  readonly people: readonly Person[];
}

// A household that slides a date sends the same farm again and again, and its checked object with it.
const known = new WeakMap<FarmDocumentDto['farm'], Around>();

function aroundAnimals(document: FarmDocumentDto, tables: Tables): Around {
  let around = known.get(document.farm);
  if (!around) known.set(document.farm, (around = workOutAround(document, tables)));
  return around;
}

function workOutAround(document: FarmDocumentDto, tables: Tables): Around {
  const { farm } = document;
  checkSoil(farm.gardenSoilId, tables, 'farm.');
  checkCountry(farm, 'farm.');
  return {
    farm,
    climate: climateFromMonthlyMeans(
      farm.monthlyMinC,
      farm.monthlyMaxC,
      tables.heat.coldNightMarginK.value,
      farm.monthlyRainMm,
    ),
    facilities: facilitiesOf(document, tables),
    people: (document.people ?? []).map((person, i): Person => ({
      ...person,
      id: person.id ?? `person-${i + 1}`,
    })),
  };
}

function facilitiesOf(document: FarmDocumentDto, tables: Tables): Facility[] {
  const facilities = (document.facilities ?? []).map((facility, i): Facility => {
    const path = `facilities.${i}.`;
    const named = { ...facility, id: idOf(facility, path) };
    checkMaterials(named, tables, path);
    return named;
  });
  checkUnique(facilities);
  facilities.forEach((facility, i) => checkCircuit(facility, facilities, `facilities.${i}.`));
  return facilities;
}

function productsOf({ products = [] }: FarmDocumentDto, tables: Tables): Product[] {
  return products.map((product, i) => {
    const named: Product = { ...product, id: product.id ?? `product-${i + 1}` };
    checkProduct(named, tables, `products.${i}.`);
    const free = freePriceProblems(named);
    if (0 < free.length)
      throw new FieldError(free.map((each) => ({ ...each, field: `products.${i}.${each.field}` })));
    return named;
  });
}

function checkUnique(facilities: readonly Facility[]): void {
  const seen = new Set<string>();
  const twice = facilities.findIndex(({ id }) => seen.size === seen.add(id).size);
  if (twice < 0) return;
  throw new FieldError([
    {
      field: `facilities.${twice}.id`,
      code: 'conflict',
      given: facilities[twice]!.id,
      fix: 'Two facilities have this id: give each its own.',
    },
  ]);
}

type SentPaddock = NonNullable<FarmDocumentDto['paddocks']>[number];

function paddockOf(paddock: SentPaddock, path: string): Paddock {
  const { outline, areaM2, ...rest } = paddock;
  if (areaM2 === undefined && outline === undefined) throw missing(`${path}areaM2`, GIVE_AREA);
  return {
    ...rest,
    id: idOf(paddock, path),
    areaM2: areaM2 ?? outlineAreaM2(outline, `${path}outline`),
    ...(outline === undefined ? {} : { outline: checkedCorners(outline, `${path}outline`) }),
  };
}

const GIVE_AREA = 'Give the area, or the outline it is worked out from.';

function idOf({ id }: { readonly id?: string }, path: string): string {
  if (id !== undefined) return id;
  throw missing(`${path}id`, 'Give each an id of your own, so that the rest can name it.');
}

const missing = (field: string, fix: string): FieldError =>
  new FieldError([{ field, code: 'missing', given: undefined, fix }]);

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
