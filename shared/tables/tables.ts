import type { Purpose } from '../farm/batch.js';
import type { WorkConditions } from '../farm/job.js';
import type { JobSet } from './job-sets.js';
import type { Judgements } from './judgements.js';
import type { WorkTable } from './work-table.js';
import type { Mark, Sourced } from '../explain/formula.js';
import type {
  CattleHeatTable,
  CattleTable,
  CattleWaterTable,
  FenceTable,
  Forage,
  GestationTable,
  PastureTable,
  Soil,
} from './pasture-tables.js';
import type { Source } from './source.js';

export type BirdSex = 'male' | 'female';

export interface GrowthPoint {
  readonly ageDays: number;
  readonly weightKg: number;
  readonly cumulativeFeedKg?: number;
}

/**
 * One kind of bird of one era. Meat tables of different eras are never joined; a pullet table may go
 * on with weights of grown hens, and its name then says so.
 */
export interface GrowthTable extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly asHatched?: readonly GrowthPoint[];
  readonly male?: readonly GrowthPoint[];
  readonly female?: readonly GrowthPoint[];
  readonly sexRatio?: Sourced & {
    readonly points: readonly { readonly ageDays: number; readonly femaleToMale: number }[];
    readonly note: string;
  };
  readonly maleGompertz?: Sourced & {
    readonly asymptoteKg: number;
    readonly ratePerDay: number;
    readonly hatchKg: number;
  };
  readonly feedModel?: Sourced & {
    readonly gainKgPerKg: number;
    readonly maintenanceKgPerKg075Day: number;
    readonly note: string;
  };
}

export interface Strain {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly purposes: readonly Purpose[];
  /** Purposes for which a new batch starts with this strain. */
  readonly defaultFor?: readonly Purpose[];
  /** The first is the default. */
  readonly growthTables: readonly string[];
  readonly weightFactor: number;
  readonly feedFactor: number;
  readonly factorSources: readonly string[];
  readonly factorMark: Mark;
  readonly waste: Sourced & { readonly percent: number };
  readonly feedProgram: Partial<Record<Purpose, string>>;
  readonly losses: string;
  readonly layLosses?: string;
  /** Age at which meat birds are usually processed, and cockerels beside pullets. */
  readonly leave: Sourced & { readonly ageDays: number };
  /** Of those that are raised for meat. */
  readonly dressing?: string;
  readonly moveOut: string;
  readonly layCurve?: string;
}

export interface FeedPhase {
  readonly id: string;
  readonly name: string;
  /** A phase lasts until the next one begins. */
  readonly fromDay: number | 'first-egg';
  readonly proteinPercentLow: number;
  readonly proteinPercentHigh: number;
  readonly energyKcalPerKg: number;
  readonly calciumPercent?: number;
}

export interface FeedProgram extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly phases: readonly FeedPhase[];
}

export interface BroodingSchedule extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly default?: boolean;
  readonly where: string;
  readonly interpolate: boolean;
  readonly steps: readonly {
    readonly fromDay: number;
    readonly toDay: number;
    readonly lowC: number;
    readonly highC: number;
  }[];
}

/** A row holds until the next one begins. */
export interface SpaceRow {
  readonly fromDay: number;
  readonly floorM2: number;
  readonly feederCm?: number;
  readonly drinkerCm?: number;
}

export interface BrooderSpaceStandard extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly default?: boolean;
  readonly rows: readonly SpaceRow[];
}

export interface SpaceStandards {
  readonly brooder: readonly BrooderSpaceStandard[];
  readonly pen: Sourced & Ranged & { readonly floorM2: number };
  readonly penMoves: Sourced & Ranged & { readonly perDay: number; readonly because: string };
  readonly coop: Sourced & {
    readonly floorM2: number;
    readonly floorMinM2: number;
    readonly floorMaxM2: number;
    readonly hensPerNest: number;
    readonly hensPerNestLow: number;
    readonly hensPerNestHigh: number;
    readonly roostCm: number;
  };
  readonly liveWeightCapKgPerM2: Sourced & { readonly value: number; readonly high: number };
}

interface Ranged {
  readonly low: number;
  readonly high: number;
  readonly because?: string;
}

export interface WaterTable extends Sourced {
  readonly referenceC: number;
  readonly points: readonly { readonly ageDays: number; readonly mLPerDay: number }[];
}

export interface WaterHeatRise extends Sourced {
  readonly fromC: number;
  readonly atC: number;
  readonly riseLow: number;
  readonly rise: number;
  readonly riseHigh: number;
  readonly because: string;
}

export interface LossTable extends Sourced {
  readonly id: string;
  readonly firstWeekPercent: number;
  readonly laterPercent: number;
  readonly laterToDay: number;
  readonly layYearPercent?: number;
  readonly cautiousPercent: number;
}

export interface Dressing extends Sourced, Ranged {
  readonly id: string;
  readonly share: number;
  readonly definition: string;
}

export interface ProcessingTable {
  readonly dressing: readonly Dressing[];
  readonly waterUptake: Sourced & Ranged & { readonly share: number };
  readonly packing: Sourced & Ranged & { readonly kgPerL: number };
  readonly withdrawalH: Sourced & Ranged & { readonly value: number };
  readonly ice: Sourced & Ranged & { readonly share: number };
  readonly chilling: Sourced & {
    readonly targetC: number;
    readonly rows: readonly { readonly belowKg?: number; readonly hours: number }[];
  };
}

export interface LayCurve extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly firstEggWeek: number;
  /** Range of published ages at the first egg. */
  readonly firstEggWeekLow: number;
  readonly firstEggWeekHigh: number;
  readonly scalePercent: number;
  readonly risePerWeek: number;
  readonly declinePerWeek: number;
  readonly eggWeight: readonly { readonly ageWeeks: number; readonly eggG: number }[];
  readonly eggWeightMark: Mark;
  readonly note?: string;
}

export interface Material extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly rM2KPerWPerM: number;
}

export interface HeatTable {
  readonly films: Sourced & { readonly insideM2KPerW: number; readonly outsideM2KPerW: number };
  readonly birds: Sourced & {
    readonly totalW: number;
    readonly exponent: number;
    readonly perK: number;
    readonly sensibleShare: number;
    readonly sensibleDropPerK2: number;
    readonly litterLoss: number;
    readonly creditFromDay: number;
  };
  readonly ventilation: Sourced & {
    readonly m3PerHPerKg075: number;
    readonly m3PerHPerKg: number;
    readonly m3PerHPerChick: number;
    readonly unventedGasFactor: number;
  };
  readonly zone: Sourced & {
    readonly coolEndBelowHeaterK: number;
    readonly coolEndMinC: number;
    readonly warmShare: number;
    readonly roomBelowHeaterK: number;
  };
  readonly building: Sourced & { readonly warmerThanOutsideK: number };
  readonly heatedRoom: Sourced & { readonly airC: number };
  readonly coldNightMarginK: Sourced & { readonly value: number };
  readonly plate: Sourced & { readonly wattsPerChick: number; readonly warmestRoomFromC: number };
  readonly lampRule: Sourced & {
    readonly chicks: number;
    readonly atF: number;
    readonly lampW: number;
  };
  readonly circuit: Sourced & { readonly share: number };
  readonly propane: Sourced & Ranged & { readonly MJPerL: number };
}

export interface LitterTable extends Sourced, Ranged {
  readonly depthM: number;
  readonly topUpShare: number;
  readonly topUpEveryDays: number;
  readonly topUpMark: Mark;
  readonly bagLooseM3: number;
  readonly bagNote: string;
}

export interface LightTable extends Sourced, Ranged {
  readonly targetH: number;
  readonly startAgeDays: number;
  readonly risePerWeekH: number;
}

export interface MoveOutTable extends Sourced {
  readonly id: string;
  readonly laterSources: readonly string[];
  readonly laterMark: Mark;
  readonly rules: readonly MoveOutRule[];
}

export interface MoveOutRule {
  readonly id: string;
  readonly name: string;
  readonly fromDay: number;
  readonly nightLowC: number;
  /** Older birds stand colder nights in a dry shelter; a planning guess. */
  readonly later: readonly { readonly fromDay: number; readonly nightLowC: number }[];
  readonly default?: boolean;
}

/** What tasks hang on: a day in the life of a batch (up to `delivery`) or of a herd. */
export type EventKind =
  | 'arrival'
  | 'move-out'
  | 'processing'
  | 'first-egg'
  | 'delivery'
  | 'turn-out'
  | 'cattle-arrival'
  | 'calving';

/** What the hours of a task grow with. */
export type WorkUnit = 'hundred-birds' | 'ten-head' | 'acre';

/** A task before it has dates: hung on an event, in hours by a base and an amount for each unit. */
export interface TaskTemplate extends Sourced {
  readonly id: string;
  readonly name: string;
  /** What the birds are for, or how they are processed, where the task is not for all. */
  readonly purpose?: Purpose;
  readonly processing?: 'home' | 'hired';
  /** Left out of plans without medicated feed. */
  readonly onlyMedicated?: boolean;
  /** Left out of herds without milk cows. */
  readonly onlyMilk?: boolean;
  readonly event: EventKind;
  /** Daily work that goes on until another event. */
  readonly until?: EventKind;
  readonly offsetDays: number;
  /** First day it is of use, from the event, where it may be done sooner than its start. */
  readonly earliestOffsetDays?: number;
  /** Last day it can be started, from the event, where it would be too late after it. */
  readonly latestOffsetDays?: number;
  readonly leadNote?: string;
  /** Left out of work that goes on until another event, where that always comes. */
  readonly lengthDays?: number;
  /** Work that comes with each animal, over days around the event: how many, and the first. */
  readonly spreadOver?: { readonly fromOffsetDays: number; readonly days: number };
  readonly hoursBase: number;
  readonly hoursPerUnit: number;
  readonly unit: WorkUnit;
  /** Done every day of its length, in those hours each day. */
  readonly isDaily: boolean;
  readonly needs?: string;
  readonly conditions?: WorkConditions;
  /** Work that is only done when weather or grass asks for it: listed, not planned. */
  readonly onDemand?: boolean;
  /** Days it may be done after its day without loss. */
  readonly mayFollowDays?: number;
  /** Not spread over days, such as a trip to the store. */
  readonly notSplit?: boolean;
  readonly waitsFor: readonly string[];
  /** Days to wait after some of them, such as for a floor to dry. */
  readonly waitDays?: Readonly<Record<string, number>>;
  readonly waitsForOutside?: readonly string[];
  readonly ifLate: string;
}

export interface Caution {
  readonly title: string;
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
  readonly water: Readonly<Record<Purpose, WaterTable>> & { readonly heat: WaterHeatRise };
  readonly losses: readonly LossTable[];
  readonly processing: ProcessingTable;
  readonly layCurves: readonly LayCurve[];
  readonly materials: readonly Material[];
  readonly heat: HeatTable;
  readonly litter: LitterTable;
  readonly light: LightTable;
  readonly moveOut: readonly MoveOutTable[];
  readonly manure: Readonly<
    Record<
      Purpose,
      Sourced & { readonly nKgPerDayPerKgLive: number; readonly pKgPerDayPerKgLive: number }
    >
  >;
  readonly heatStress: Sourced & { readonly beginsC: number; readonly seriousC: number };
  readonly feedKeeping: Sourced &
    Ranged & {
      readonly maxDays: number;
      readonly bagLeadDays: number;
      /** Taken where no weight of a bag is given. */
      readonly usualBag: Sourced & { readonly kg: number };
    };
  readonly taskTemplates: readonly TaskTemplate[];
  readonly forages: readonly Forage[];
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
  losses: 'losses.json',
  processing: 'processing.json',
  layCurves: 'lay-curves.json',
  materials: 'materials.json',
  heat: 'heat.json',
  litter: 'litter.json',
  light: 'light.json',
  moveOut: 'move-out.json',
  manure: 'manure.json',
  heatStress: 'heat-stress.json',
  feedKeeping: 'feed-keeping.json',
  taskTemplates: 'task-templates.json',
  forages: 'forages.json',
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

/** The row marked as default, else the first. */
export function defaultRow<T extends { readonly default?: boolean }>(rows: readonly T[]): T {
  const row = rows.find((each) => each.default) ?? rows[0];
  if (!row) throw new Error('A table without rows has no default.');
  return row;
}
