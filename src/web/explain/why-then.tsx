import { useEffect, useState } from 'react';
import { whyThen } from '../../../shared/plan/why-then.js';
import type { WeekBeside } from '../../../shared/plan/weeks-beside.js';
import type { Tables } from '../../../shared/tables/tables.js';
import { formatDate } from '../../../shared/units/dates.js';
import { inOwnUnits } from '../../../shared/units/own-units.js';
import { besideInWords } from './weeks-beside.js';

const AS_GOOD_AS_OTHERS =
  'no week around it suits better, and those a month away suit about as well: move it as you like.';

/** Why a batch was given the week it has, by the weeks before and after; of birds that are here nothing. */
export function WhyThen({
  farm,
  tables,
  picture,
  batch,
}: {
  farm: { readonly units: Parameters<typeof inOwnUnits>[1] };
  tables: Tables;
  picture: Parameters<typeof whyThen>[0];
  batch: { readonly id: string; readonly name: string; readonly arrivalDate: string };
}) {
  const [beside, setBeside] = useState<readonly WeekBeside[]>();
  useEffect(() => {
    const timer = setTimeout(() => setBeside(whyThen(picture, tables, batch.id)), 0);
    return () => clearTimeout(timer);
  }, [tables, picture, batch.id]);
  if (beside === undefined) return null;
  const say = (date: string): string => formatDate(date, { ...farm, today: picture.today });
  const decides = beside.some(({ against }) => against !== undefined);
  const why = decides ? besideInWords(beside, batch.arrivalDate, say) : AS_GOOD_AS_OTHERS;
  return (
    <div>
      <b>
        {batch.name} on {say(batch.arrivalDate)}, because:
      </b>{' '}
      {inOwnUnits(why, farm.units)}
    </div>
  );
}
