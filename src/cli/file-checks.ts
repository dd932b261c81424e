import type { Check } from '../../shared/checks/compare.js';
import type { Tables } from '../../shared/tables/tables.js';
import { chanceChecks } from './chance-checks.js';
import { grassChecks } from './grass-checks.js';
import { moveOutChecks } from './move-out-checks.js';
import { rowsIn, type ReadRows } from './read-rows.js';
import { stationChecks } from './station-checks.js';
import { townChecks } from './town-checks.js';
import { weighingChecks } from './weighing-checks.js';

/** Comparisons with files of data that are not the project's to hand on, a function a topic. */
const FILE_CHECKS: readonly ((read: ReadRows, tables: Tables) => readonly Check[])[] = [
  townChecks,
  moveOutChecks,
  stationChecks,
  grassChecks,
  chanceChecks,
  weighingChecks,
];

/** The folder that holds them, as the environment names it. */
export const referenceFolder = (): string | undefined => process.env['REFERENCE_DATA'] || undefined;

/** Said in place of the comparisons where no folder is named. */
export const LEFT_OUT =
  'Comparisons with files of data are left out: REFERENCE_DATA names no folder that holds them.';

/**
 * Holds what the program computes against files of data.
 *
 * @throws Error when a file is not in the folder
 */
export const fileChecks = (folder: string, tables: Tables): Check[] =>
  FILE_CHECKS.flatMap((checks) => checks(rowsIn(folder), tables));
