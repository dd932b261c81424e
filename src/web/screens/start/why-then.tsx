import { useEffect, useState } from 'react';
import { whyBest, type WhyBest } from '../../../../shared/plan/why-best.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatDate } from '../../../../shared/units/dates.js';
import { inOwnUnits } from '../../../../shared/units/own-units.js';
import { besideInWords } from '../../explain/weeks-beside.js';
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
  const [why, setWhy] = useState<WhyBest>();
  useEffect(() => {
    const timer = setTimeout(() => setWhy(whyBest(picture, tables, batch.id) ?? { beside: [] }), 0);
    return () => clearTimeout(timer);
  }, [tables, picture, batch.id]);
  if (why === undefined) return null;
  const say = (date: string): string => formatDate(date, { ...farm, today: picture.today });
  return (
    <div>
      <b>
        {batch.name} on {say(batch.arrivalDate)}, because:
      </b>{' '}
      {inOwnUnits(why.because ?? AS_GOOD_AS_OTHERS, farm.units)}
      {why.isOnlyLess &&
        ' That speaks against this week too, but less than against the other weeks of the year on average.'}
      {0 < why.beside.length && (
        <details>
          <summary>Why not earlier or later?</summary>
          {inOwnUnits(besideInWords(why.beside, batch.arrivalDate, say), farm.units)}
        </details>
      )}
    </div>
  );
}
