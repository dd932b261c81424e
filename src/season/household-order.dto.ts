import { batchFields } from '../../shared/farm/batch.js';
import { anyFacility } from '../../shared/farm/facility.js';
import { farmFields, personFields } from '../../shared/farm/farm.js';
import { list, nested, optional, row, rows } from '../../shared/farm/field.js';
import { forecastDayFields } from '../../shared/farm/forecast.js';
import { groundLookFields } from '../../shared/farm/ground-look.js';
import { handoverFields } from '../../shared/farm/handover.js';
import { herdFields } from '../../shared/farm/herd.js';
import { jobFields } from '../../shared/farm/job.js';
import { paddockFields } from '../../shared/farm/paddock.js';
import { date } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

const householdFields = row('HouseholdOrder', {
  today: optional(date('Today')),
  farm: nested('Farm', farmFields),
  facilities: optional(list('Buildings and gear', anyFacility, 200, 'objects')),
  people: rows('People', personFields, 50, 'person'),
  batches: rows('Batches', batchFields, 50, 'batch'),
  paddocks: optional(rows('Paddocks', paddockFields, 200, 'paddock')),
  herds: optional(rows('Herds', herdFields, 20, 'herd')),
  jobs: optional(rows('Other jobs', jobFields, 200, 'job')),
  handovers: optional(rows('Days away', handoverFields, 50, 'hand-over')),
  forecast: optional(rows('Forecast', forecastDayFields, 40, 'day')),
  groundLooks: optional(rows('How is the ground?', groundLookFields, 366, 'look')),
});

/** A household by itself: all that a plan of its work needs, nothing saved. */
export class HouseholdOrderDto extends dtoOf(householdFields) {}
