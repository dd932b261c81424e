import { groundFields, joinFields, paddockFields, splitFields } from '../../shared/farm/paddock.js';
import { dtoOf } from '../common/dto-of.js';

/** A paddock as sent by a client. With an outline, the area may be left out. */
export class PaddockDto extends dtoOf(paddockFields) {}

/** Equal parts, or parts by their shares of the area. */
export class SplitDto extends dtoOf(splitFields) {}

export class JoinDto extends dtoOf(joinFields) {}

/** What an outline does not say of a paddock; an import takes it for all that do not say it. */
export class GroundDto extends dtoOf(groundFields) {}
