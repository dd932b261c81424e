import { batchFields } from '../../../shared/farm/batch.js';
import { rowOfKind } from '../../../shared/farm/check-row.js';
import { cowFields } from '../../../shared/farm/cow.js';
import { anyFacility, type Facility } from '../../../shared/farm/facility.js';
import { farmFields, personFields } from '../../../shared/farm/farm.js';
import type { RowDescription } from '../../../shared/farm/field.js';
import { handoverFields } from '../../../shared/farm/handover.js';
import { herdFields } from '../../../shared/farm/herd.js';
import { jobFields } from '../../../shared/farm/job.js';
import { grassReadingFields, paddockFields } from '../../../shared/farm/paddock.js';
import { anyProduct, type Product } from '../../../shared/farm/product.js';
import { supplierFields } from '../../../shared/farm/supplier.js';

/** What describes the rows of a collection; a facility is described by its kind. */
export const DESCRIBED = {
  farms: () => farmFields,
  facilities: (row) => rowOfKind(anyFacility, (row as Facility).kind)!,
  products: (row) => rowOfKind(anyProduct, (row as Product).kind)!,
  suppliers: () => supplierFields,
  people: () => personFields,
  batches: () => batchFields,
  paddocks: () => paddockFields,
  herds: () => herdFields,
  cows: () => cowFields,
  'grass-readings': () => grassReadingFields,
  jobs: () => jobFields,
  handovers: () => handoverFields,
} satisfies Record<string, (row: object) => RowDescription>;
