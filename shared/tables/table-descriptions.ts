import type { Field, Holds } from '../farm/field.js';
import * as birds from './bird-descriptions.js';
import * as eggs from './hatching-descriptions.js';
import * as warmth from './heat-descriptions.js';
import * as hens from './lay-descriptions.js';
import * as grass from './pasture-descriptions.js';
import * as mixes from './ration-descriptions.js';
import * as origins from './source-descriptions.js';
import * as judged from './judgement-descriptions.js';
import type { Tables } from './tables.js';
import * as work from './work-descriptions.js';

/**
 * What is described of each table. The compiler holds every description to the type of its table;
 * a field that only the type has is refused when the table is loaded.
 */
export const TABLE_FIELDS: { readonly [K in keyof Tables]: Field & Holds<Tables[K]> } = {
  sources: origins.sources,
  strains: birds.strains,
  growthTables: birds.growthTables,
  feedPrograms: birds.feedPrograms,
  broodingSchedules: birds.broodingSchedules,
  space: birds.space,
  water: birds.water,
  growing: birds.growing,
  losses: birds.losses,
  orders: birds.orders,
  hatching: eggs.hatching,
  processing: birds.processing,
  layCurves: hens.layCurves,
  materials: warmth.materials,
  heat: warmth.heat,
  litter: birds.litter,
  light: hens.light,
  laying: hens.laying,
  moveOut: birds.moveOut,
  nights: birds.nights,
  manure: birds.manure,
  heatStress: warmth.heatStress,
  feedKeeping: birds.feedKeeping,
  ingredients: mixes.ingredients,
  rationNeeds: mixes.rationNeeds,
  taskTemplates: work.taskTemplates,
  forages: grass.forages,
  grassGroups: grass.grassGroups,
  soils: grass.soils,
  pasture: grass.pasture,
  cattle: grass.cattle,
  cattleWater: grass.cattleWater,
  cattleHeat: grass.cattleHeat,
  gestation: grass.gestation,
  fence: grass.fence,
  herdTaskTemplates: work.herdTaskTemplates,
  work: work.work,
  jobSets: work.jobSets,
  cautions: origins.cautions,
  judgements: judged.judgements,
};
