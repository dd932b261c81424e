import { startFields } from '../../shared/farm/start.js';
import { dtoOf } from '../common/dto-of.js';

export class StartDto extends dtoOf(startFields) {}
