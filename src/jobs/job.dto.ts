import { jobFields, takenSetFields } from '../../shared/farm/job.js';
import { dtoOf } from '../common/dto-of.js';

/** Work the household sets itself, as sent by a client. */
export class JobDto extends dtoOf(jobFields) {}

/** A ready-made set that is taken: the date it hangs on, and how many trees, hives or beds. */
export class TakenSetDto extends dtoOf(takenSetFields) {}
