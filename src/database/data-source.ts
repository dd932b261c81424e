import { dirname, join } from 'node:path';
import type { DataSourceOptions } from 'typeorm';
import { BatchEntity } from '../batches/batch.entity.js';
import { CowEntity } from '../herds/cow.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import { makeFolder } from '../common/make-folder.js';
import { FacilityEntity } from '../facilities/facility.entity.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { JobEntity } from '../jobs/job.entity.js';
import { HandoverEntity } from '../handovers/handover.entity.js';
import { KeptPlanEntity } from '../work/kept-plan.entity.js';
import { PhotoEntity } from '../photos/photo.entity.js';
import { ProductEntity } from '../products/product.entity.js';
import { SupplierEntity } from '../suppliers/supplier.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { PROJECT_ROOT } from '../reference/load-tables.js';
import { ToldFactEntity } from '../told/told-fact.entity.js';
import { WeatherDayEntity } from '../weather/weather-day.entity.js';
import { CalendarKey1796400000000 } from './calendar-key.migration.js';
import { EggsCounted1798002000000 } from './eggs-counted.migration.js';
import { FirstTables1764000000000 } from './first-tables.migration.js';
import { FrostDates1796700000000 } from './frost-dates.migration.js';
import { Holidays1797005000000 } from './holidays.migration.js';
import { GrassAndCattle1795600000000 } from './grass-and-cattle.migration.js';
import { HouseholdWork1795700000000 } from './household-work.migration.js';
import { Photos1798000040000000 } from './photos.migration.js';
import { Products1797007000000 } from './products.migration.js';
import { Suppliers1798000025000000 } from './suppliers.migration.js';
import { PastureVersion1796500000000 } from './pasture-version.migration.js';
import { KeptPlanPeople1798000026000000 } from './kept-plan-people.migration.js';
import { KeptPlanSource1798000020000000 } from './kept-plan-source.migration.js';
import { NamedCows1796550000000 } from './named-cows.migration.js';
import { SeasonRecords1795800000000 } from './season-records.migration.js';
import { ByDay1798000016000000 } from './by-day.migration.js';
import { Start1798000005000000 } from './start.migration.js';
import { StartingHours1795900000000 } from './starting-hours.migration.js';
import { TablesInSeeds1795950000000 } from './tables-in-seeds.migration.js';
import { ToldByDay1798000042000000 } from './told-by-day.migration.js';
import { ToldBySubject1798000041000000 } from './told-by-subject.migration.js';
import { ToldFacts1796100000000 } from './told-facts.migration.js';
import { WordsOfRows1796600000000 } from './words-of-rows.migration.js';
import { Versions1796000000000 } from './versions.migration.js';
import { LooksIn1798000031000000 } from './looks-in.migration.js';
import { YearLimits1798000030000000 } from './year-limits.migration.js';

export const ENTITIES = [
  FarmEntity,
  FacilityEntity,
  PersonEntity,
  BatchEntity,
  WeatherDayEntity,
  PaddockEntity,
  HerdEntity,
  JobEntity,
  KeptPlanEntity,
  ToldFactEntity,
  HandoverEntity,
  CowEntity,
  ProductEntity,
  SupplierEntity,
  PhotoEntity,
];
export const MIGRATIONS = [
  FirstTables1764000000000,
  GrassAndCattle1795600000000,
  HouseholdWork1795700000000,
  SeasonRecords1795800000000,
  StartingHours1795900000000,
  TablesInSeeds1795950000000,
  Versions1796000000000,
  ToldFacts1796100000000,
  CalendarKey1796400000000,
  PastureVersion1796500000000,
  NamedCows1796550000000,
  WordsOfRows1796600000000,
  FrostDates1796700000000,
  Holidays1797005000000,
  Products1797007000000,
  EggsCounted1798002000000,
  Start1798000005000000,
  ByDay1798000016000000,
  KeptPlanSource1798000020000000,
  Suppliers1798000025000000,
  KeptPlanPeople1798000026000000,
  YearLimits1798000030000000,
  LooksIn1798000031000000,
  Photos1798000040000000,
  ToldBySubject1798000041000000,
  ToldByDay1798000042000000,
];

/** A server that does not answer by then is not there. */
const CONNECT_MS = 5000;

/** The part of better-sqlite3's connection that is set up by hand. */
interface SqliteConnection {
  pragma(text: string): unknown;
}

/** Where the embedded database and copies lie. */
export const dataFolder = (env: NodeJS.ProcessEnv = process.env): string =>
  env['DATA_DIR'] || join(PROJECT_ROOT, 'data');

/** PostgreSQL when DATABASE_URL is set, else SQLite in DATA_DIR (default data/). */
export function dataSourceOptions(env: NodeJS.ProcessEnv = process.env): DataSourceOptions {
  const shared = {
    entities: ENTITIES,
    migrations: MIGRATIONS,
    migrationsRun: true,
    synchronize: false,
  };
  if (env['DATABASE_URL']) {
    return {
      type: 'postgres',
      url: env['DATABASE_URL'],
      connectTimeoutMS: CONNECT_MS,
      ...shared,
    };
  }
  const database = join(dataFolder(env), 'broodfold.sqlite');
  makeFolder(dirname(database));
  return {
    type: 'better-sqlite3',
    database,
    enableWAL: true,
    // In WAL mode only FULL makes a commit wait for the disk, which is what "saved" promises.
    prepareDatabase: (connection: unknown) => {
      (connection as SqliteConnection).pragma('synchronous = FULL');
      (connection as SqliteConnection).pragma('foreign_keys = ON');
    },
    ...shared,
  };
}

/** Another connection to the same SQLite file that can only read; undefined on PostgreSQL. */
export function readOnlyOptions(options: DataSourceOptions): DataSourceOptions | undefined {
  if (options.type !== 'better-sqlite3') return undefined;
  const { prepareDatabase: _prepare, ...rest } = options;
  return { ...rest, readonly: true, enableWAL: false, migrationsRun: false };
}
