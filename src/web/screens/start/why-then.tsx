import { useEffect, useState } from 'react';
import { whyBest } from '../../../../shared/plan/why-best.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatDate } from '../../../../shared/units/dates.js';
import { inOwnUnits } from '../../../../shared/units/own-units.js';
import type { SavedBatch, SavedFarm, SavedPicture } from '../../api/queries.js';

const AS_GOOD_AS_OTHERS =
  'no week of the year suits better, and many suit as well: move it as you like.';

/** Why a batch was given the week it has: what speaks most for it against the rest of the year. */
export function WhyThen({
  farm,
  tables,
  picture,
  batch,
}: {
  farm: SavedFarm;
  tables: Tables;
  picture: SavedPicture;
  batch: SavedBatch;
}) {
  const [why, setWhy] = useState<string>();
  useEffect(() => {
    const timer = setTimeout(
      () => setWhy(whyBest(picture, tables, batch.id) ?? AS_GOOD_AS_OTHERS),
      0,
    );
    return () => clearTimeout(timer);
  }, [tables, picture, batch.id]);
  if (why === undefined) return null;
  return (
    <p>
      <b>
        {batch.name} on {formatDate(batch.arrivalDate, { ...farm, today: picture.today })}, because:
      </b>{' '}
      {inOwnUnits(why, farm.units)}
    </p>
  );
}
