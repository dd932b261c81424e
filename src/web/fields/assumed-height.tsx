import { Link } from 'wouter';
import { restsOnAssumedHeight } from '../../../shared/farm/assumed.js';
import { formatAbout } from '../../../shared/units/format.js';
import type { SavedFarm } from '../api/queries.js';

/** Said beside dates that hang on a height nobody gave; nothing where somebody did. */
export function AssumedHeight({ farm, what }: { farm: SavedFarm; what: string }) {
  if (!restsOnAssumedHeight(farm)) return null;
  return (
    <p className="assumed-height">
      {what} with an assumed height of {formatAbout(farm.elevationM, 'm', { ...farm, today: '' })}:
      higher up it is later. <Link href={`/farm/${farm.id}/place`}>Give the height</Link>
    </p>
  );
}
