import { FieldError } from '../../shared/problems/field-problem.js';

/** Why a file cannot be read back, and what to do; it is called by the name that it was given. */
export const refusedFile = (name: string, why: string, fix: string): FieldError =>
  new FieldError([{ field: name, code: 'unreadable', given: why, fix }]);
