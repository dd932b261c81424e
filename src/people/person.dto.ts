import { personFields } from '../../shared/farm/farm.js';
import { dtoOf } from '../common/dto-of.js';

export class PersonDto extends dtoOf(personFields) {}
