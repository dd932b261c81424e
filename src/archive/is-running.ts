import type { FieldError } from '../../shared/problems/field-problem.js';
import { refusedFile } from './refused-file.js';

/** Said when a database that would be replaced is in use. */
export const isRunning = (database: string): FieldError =>
  refusedFile(
    database,
    'it is in use',
    'Stop Broodfold, and whatever else has the database open, and try again. Nothing was changed.',
  );
