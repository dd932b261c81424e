import { whole } from '../../shared/farm/bounds.js';
import { farmFields } from '../../shared/farm/farm.js';
import { number, optional, row, yesNo, type RowOf } from '../../shared/farm/field.js';
import { id, version } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

const sentFarm = {
  ...farmFields,
  name: 'SentFarm',
  fields: { ...farmFields.fields, version: optional(version()) },
};

/** A farm as sent by a client, with the version that was seen last. */
export class SentFarmDto extends dtoOf(sentFarm) {}

/** A farm as sent to a client. */
export const farmViewFields = row('FarmView', {
  ...farmFields.fields,
  id: id(),
  version: version(),
  isSample: yesNo('The invented sample'),
  revision: number(
    'Revision',
    whole(1, Number.MAX_SAFE_INTEGER, 'count', 'Raised by every write.'),
  ),
});
export type FarmView = RowOf<typeof farmViewFields>;
