/**
 * What tests of the service use of it. `compile-program.mjs` makes one file of it with all that it
 * stands on, which each process loads once for all of its files of tests: `outside.ts` gives it.
 */
export { DataSource } from 'typeorm';
export { createApp } from '../../src/app.js';
export { makeBackup } from '../../src/archive/backup.js';
export { restore } from '../../src/archive/restore.js';
export { inSnapshot } from '../../src/archive/snapshot.js';
export { ownNames, storedTables } from '../../src/archive/stored-table.js';
export { writeArchive } from '../../src/archive/write-archive.js';
export { AskerGone } from '../../src/common/asker.js';
export { storageFaultOf } from '../../src/common/storage-fault.js';
export { dataSourceOptions, MIGRATIONS } from '../../src/database/data-source.js';
export { Database } from '../../src/database/database.js';
export { EggsCounted1798002000000 } from '../../src/database/eggs-counted.migration.js';
export { WordsOfRows1796600000000 } from '../../src/database/words-of-rows.migration.js';
export { PersonEntity } from '../../src/people/person.entity.js';
export { TablesService } from '../../src/reference/tables.service.js';
export { whyNotStarted } from '../../src/why-not-started.js';
export { KeptPlanEntity } from '../../src/work/kept-plan.entity.js';
export { JobsService } from '../../src/jobs/jobs.service.js';
export { WorkPool } from '../../src/work-pool/work-pool.service.js';
