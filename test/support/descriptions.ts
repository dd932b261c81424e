import * as batch from '../../shared/farm/batch.js';
import * as cow from '../../shared/farm/cow.js';
import * as facility from '../../shared/farm/facility.js';
import * as farm from '../../shared/farm/farm.js';
import type { RowDescription } from '../../shared/farm/field.js';
import * as forecast from '../../shared/farm/forecast.js';
import * as ground from '../../shared/farm/ground-check.js';
import * as handover from '../../shared/farm/handover.js';
import * as herd from '../../shared/farm/herd.js';
import * as job from '../../shared/farm/job.js';
import * as paddock from '../../shared/farm/paddock.js';
import * as choices from '../../shared/farm/pasture-choices.js';
import * as repeats from '../../shared/farm/repeats.js';
import * as seen from '../../shared/farm/seen.js';
import * as tiedTo from '../../shared/farm/tied-to.js';

const isDescription = (value: unknown): value is RowDescription =>
  typeof value === 'object' && value !== null && 'fields' in value && 'rules' in value;

/** Every kind of row that is described in `shared/farm`. */
export const DESCRIPTIONS: readonly RowDescription[] = [
  batch,
  cow,
  facility,
  farm,
  forecast,
  ground,
  handover,
  herd,
  job,
  paddock,
  choices,
  repeats,
  seen,
  tiedTo,
].flatMap((module) => Object.values<unknown>(module).filter(isDescription));
