import type { Mark, Sourced } from '../explain/formula.js';
import type { Purpose } from '../farm/batch.js';
import type {
  BroodingSchedule,
  FeedProgram,
  GrowthTable,
  LitterTable,
  LossTable,
  MoveOutTable,
  OfSpecies,
  Ranged,
  SpaceStandards,
  Strain,
  WaterHeatRise,
  ManureOfBirds,
  MeatWater,
  WaterTable,
} from './bird-tables.js';
import type { HeatTable, Material } from './heat-tables.js';
import type { ProcessingTable } from './processing-tables.js';
import type { TaskTemplate } from './task-template.js';
import type { JobSet } from './job-sets.js';
import type { Judgements } from './judgements.js';
import type { WorkTable } from './work-table.js';
import type {
  CattleHeatTable,
  CattleTable,
  CattleWaterTable,
  FenceTable,
  Forage,
  GrassGroup,
  GestationTable,
  PastureTable,
  Soil,
} from './pasture-tables.js';
import type { GrowingTable } from './growing-table.js';
import type { LayCurve, LayingTable, LightTable } from './lay-tables.js';
import type { NightTable } from './night-table.js';
import type { HatchingTable } from './hatching-table.js';
import type { OrderTable } from './order-table.js';
import type { BirdsToFeed, Ingredient } from './ration-tables.js';
import type { Source } from './source.js';

export interface Caution {
  readonly title: string;
  /** What nobody may miss where the hand is about to do it; left out, the title stands there. */
  readonly line?: string;
  readonly text: string;
  readonly sources?: readonly string[];
  readonly mark?: Mark;
}

/** Every published table the core works from. Read by whoever calls the core, and handed in. */
export interface Tables {
  readonly sources: Readonly<Record<string, Source>>;
  readonly strains: readonly Strain[];
  readonly growthTables: readonly GrowthTable[];
  readonly feedPrograms: readonly FeedProgram[];
  readonly broodingSchedules: readonly BroodingSchedule[];
  readonly space: SpaceStandards;
  readonly water: {
    readonly meat: MeatWater;
    readonly layers: WaterTable;
    /** The same by age for birds that are no chickens. */
    readonly others: readonly (WaterTable & { readonly species: string })[];
    readonly heat: WaterHeatRise;
    /** The same for birds that are no chickens, where it is printed. */
    readonly otherHeat: readonly (WaterHeatRise & { readonly species: string })[];
  };
  readonly growing: GrowingTable;
  readonly losses: readonly LossTable[];
  readonly orders: OrderTable;
  readonly hatching: HatchingTable;
  readonly processing: ProcessingTable;
  readonly layCurves: readonly LayCurve[];
  readonly materials: readonly Material[];
  readonly heat: HeatTable;
  readonly litter: LitterTable;
  readonly light: LightTable;
  readonly laying: LayingTable;
  readonly moveOut: readonly MoveOutTable[];
  readonly nights: NightTable;
  readonly manure: Readonly<Record<Purpose, ManureOfBirds>> & {
    /** The same of meat birds that are no chickens. */
    readonly others: readonly (ManureOfBirds & { readonly species: string })[];
  };
  readonly heatStress: Sourced & { readonly beginsC: number; readonly seriousC: number };
  readonly feedKeeping: Sourced &
    Ranged & {
      readonly maxDays: number;
      readonly bagLeadDays: number;
      /** Taken where no weight of a bag is given: 50 lb, and what is sold where people weigh in kilograms. */
      readonly usualBag: Sourced & { readonly kg: number; readonly metricKg: number };
    };
  /** What a household may mix feed of. */
  readonly ingredients: readonly Ingredient[];
  readonly rationNeeds: readonly BirdsToFeed[];
  readonly taskTemplates: readonly TaskTemplate[];
  readonly forages: readonly Forage[];
  readonly grassGroups: readonly GrassGroup[];
  readonly soils: readonly Soil[];
  readonly pasture: PastureTable;
  readonly cattle: CattleTable;
  readonly cattleWater: CattleWaterTable;
  readonly cattleHeat: CattleHeatTable;
  readonly gestation: GestationTable;
  readonly fence: FenceTable;
  readonly herdTaskTemplates: readonly TaskTemplate[];
  readonly work: WorkTable;
  readonly jobSets: readonly JobSet[];
  readonly cautions: Readonly<Record<string, Caution>>;
  readonly judgements: Judgements;
}

/** File in `seeds/` that holds each table. One list for the service, the terminal and the tests. */
export const TABLE_FILES: Readonly<Record<keyof Tables, string>> = {
  sources: 'sources.json',
  strains: 'strains.json',
  growthTables: 'growth-tables.json',
  feedPrograms: 'feed-programs.json',
  broodingSchedules: 'brooding-schedules.json',
  space: 'space-standards.json',
  water: 'water.json',
  growing: 'growing.json',
  losses: 'losses.json',
  orders: 'orders.json',
  hatching: 'hatching.json',
  processing: 'processing.json',
  layCurves: 'lay-curves.json',
  materials: 'materials.json',
  heat: 'heat.json',
  litter: 'litter.json',
  light: 'light.json',
  laying: 'laying.json',
  moveOut: 'move-out.json',
  nights: 'nights.json',
  manure: 'manure.json',
  heatStress: 'heat-stress.json',
  feedKeeping: 'feed-keeping.json',
  ingredients: 'ingredients.json',
  rationNeeds: 'ration-needs.json',
  taskTemplates: 'task-templates.json',
  forages: 'forages.json',
  grassGroups: 'grass-groups.json',
  soils: 'soils.json',
  pasture: 'pasture.json',
  cattle: 'cattle.json',
  cattleWater: 'cattle-water.json',
  cattleHeat: 'cattle-heat.json',
  gestation: 'gestation.json',
  fence: 'fence.json',
  herdTaskTemplates: 'herd-task-templates.json',
  work: 'work.json',
  jobSets: 'job-sets.json',
  cautions: 'cautions.json',
  judgements: 'judgements.json',
};

/** The row with an id. Table references are checked once, when tables are loaded. */
export function rowById<T extends { readonly id: string }>(rows: readonly T[], id: string): T {
  const row = rows.find((each) => each.id === id);
  if (!row) throw new Error(`No table row "${id}". Known: ${rows.map((r) => r.id).join(', ')}.`);
  return row;
}

/** The kind of poultry of rows that do not say. */
export const CHICKEN = 'chicken';

/** The rows for one kind of poultry; those for chickens where it has none of its own. */
export function ofSpecies<T extends OfSpecies>(rows: readonly T[], species: string): readonly T[] {
  const isFor = (kind: string) => rows.filter((row) => (row.species ?? CHICKEN) === kind);
  const own = isFor(species);
  return own.length === 0 ? isFor(CHICKEN) : own;
}

/** The row marked as default, else the first. */
export function defaultRow<T extends { readonly default?: boolean }>(rows: readonly T[]): T {
  const row = rows.find((each) => each.default) ?? rows[0];
  if (!row) throw new Error('A table without rows has no default.');
  return row;
}

/** A row, and those that may be chosen in its place. */
export const choicesFor = <T extends { readonly id: string; readonly insteadOf?: string }>(
  rows: readonly T[],
  id: string,
): T[] => rows.filter((each) => each.id === id || each.insteadOf === id);
