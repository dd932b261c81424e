import { pastureChoiceFields } from '../../shared/farm/pasture-choices.js';
import { dtoOf } from '../common/dto-of.js';

/** The household's choices for the whole pasture, as sent by a client. */
export class PastureChoicesDto extends dtoOf(pastureChoiceFields) {}
