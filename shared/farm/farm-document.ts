import { batchFields } from './batch.js';
import { MAX_LIST } from './bounds.js';
import { brooderLookFields } from './brooder-look.js';
import { heatOutFields } from './heat-out.js';
import { calvingToldFields } from './calving-told.js';
import { cowFields } from './cow.js';
import { eggCountFields } from './egg-count.js';
import { anyFacility } from './facility.js';
import { farmFields, personFields } from './farm.js';
import { list, nested, optional, row, rows } from './field.js';
import { feedBoughtFields } from './feed-bought.js';
import { feedOpeningFields } from './feed-opening.js';
import { forecastDayFields } from './forecast.js';
import { groundCheckFields } from './ground-check.js';
import { headChangeFields } from './head-count.js';
import { handoverFields } from './handover.js';
import { herdFields } from './herd.js';
import { jobFields, toldProgressFields } from './job.js';
import { grassReadingFields, paddockFields } from './paddock.js';
import { pastureChoiceFields } from './pasture-choices.js';
import { anyProduct } from './product.js';
import { supplierFields } from './supplier.js';
import { treatmentFields } from './treated.js';
import { weighingFields } from './weighing.js';
import { date } from './words.js';

/** What there may be on a farm beside its place. */
export const farmParts = {
  /** The day to plan from; left out, it is today on the farm. */
  today: optional(date('Today')),
  facilities: optional(list('Buildings and gear', anyFacility, MAX_LIST, 'objects')),
  products: optional(list('Prices', anyProduct, MAX_LIST, 'objects')),
  suppliers: optional(rows('Where you buy', supplierFields, 50, 'supplier')),
  people: optional(rows('People', personFields, 50, 'person')),
  batches: optional(rows('Batches', batchFields, 50, 'batch')),
  headChanges: optional(rows('Birds counted', headChangeFields, 4000, 'count')),
  brooderLooks: optional(rows('Thermometers read', brooderLookFields, 400, 'reading')),
  heatOuts: optional(rows('Heat out or mended', heatOutFields, 400, 'report')),
  weighings: optional(rows('Weighings', weighingFields, 2000, 'weighing')),
  eggCounts: optional(rows('Eggs counted', eggCountFields, 4000, 'count')),
  feedOpenings: optional(rows('Feed opened', feedOpeningFields, 4000, 'opening')),
  feedBought: optional(rows('Feed bought', feedBoughtFields, 1000, 'purchase')),
  treatments: optional(rows('Medicines given', treatmentFields, 1000, 'medicine')),
  calvings: optional(rows('Calvings', calvingToldFields, 1000, 'calving')),
  paddocks: optional(rows('Paddocks', paddockFields, MAX_LIST, 'paddock')),
  herds: optional(rows('Herds', herdFields, 20, 'herd')),
  cows: optional(rows('Named cows', cowFields, MAX_LIST, 'cow')),
  readings: optional(rows('Heights of grass', grassReadingFields, 12_000, 'reading')),
  pastureChoices: optional(nested('Pasture choices', pastureChoiceFields)),
  jobs: optional(rows('Other jobs', jobFields, 500, 'job')),
  handovers: optional(rows('While you are away', handoverFields, 50, 'time away')),
  progress: optional(rows('What was done', toldProgressFields, 5000, 'mark')),
  groundChecks: optional(rows('How the ground was', groundCheckFields, 400, 'look')),
  /** The next days, where a forecast is at hand. */
  forecast: optional(rows('Forecast', forecastDayFields, 40, 'day')),
} as const;

/** A whole farm in one document. */
export const farmDocumentFields = row('FarmDocument', {
  ...farmParts,
  farm: nested('Farm', farmFields),
});
