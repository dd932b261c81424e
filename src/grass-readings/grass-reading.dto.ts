import { walkFields } from '../../shared/farm/paddock.js';
import { dtoOf } from '../common/dto-of.js';

/** Heights of one walk. A second reading of a paddock on the same day replaces the first. */
export class WalkDto extends dtoOf(walkFields) {}
