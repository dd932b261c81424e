import { Button } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { batchFields, type Batch } from '../../../../shared/farm/batch.js';
import { betterWeek, type BetterWeek } from '../../../../shared/plan/better-week.js';
import { gradeOf, weekInWords } from '../../../../shared/plan/week-in-words.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatDate } from '../../../../shared/units/dates.js';
import { formatMoney } from '../../../../shared/units/format.js';
import { inOwnUnits } from '../../../../shared/units/own-units.js';
import { useSave, type SavedBatch, type SavedFarm, type SavedPicture } from '../../api/queries.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { WhyThen } from '../../explain/why-then.js';
import { Failure } from '../../shell/states.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly picture: SavedPicture;
}

/**
 * Why batches come when they do; of those that would do better in another week (whose day or month
 * was picked), that week, and one touch to take it.
 */
export function BetterWeeks({ picture, ...rest }: Props) {
  // Nobody chose a week for birds that are here.
  const batches = picture.batches.filter(({ arrivalDate }) => picture.today < arrivalDate);
  const section = useRef<HTMLElement>(null);
  if (batches.length === 0) return null;
  return (
    <section ref={section} tabIndex={-1} className="start-block" aria-label="Arrival">
      {batches.map((batch) => (
        <OneBatch
          key={batch.id}
          {...{ batch, picture, ...rest }}
          // The button that was pressed is gone then.
          onTaken={() => section.current?.focus({ preventScroll: true })}
        />
      ))}
      {areApart(batches) && (
        <p>Each has a week of its own. If you want them in one shipment, give both the same day.</p>
      )}
    </section>
  );
}

/** Whether birds of different kinds, for which nobody said a day, come on different ones. */
const areApart = (batches: readonly SavedBatch[]): boolean =>
  new Set(batches.map(({ purpose }) => purpose)).size === batches.length &&
  1 < new Set(batches.map(({ arrivalDate }) => arrivalDate)).size &&
  batches.every(({ assumed }) => assumed?.includes('arrivalDate'));

function OneBatch({
  farm,
  tables,
  picture,
  batch,
  onTaken,
}: Props & { batch: SavedBatch; onTaken: () => void }) {
  const found = useBetterWeek({ tables, picture }, batch.id);
  const words = wordsOfRow(batchFields, { ...farm, today: picture.today });
  const save = useSave<Batch, SavedBatch>(farm.id, 'batches', words);
  const say = (date: string): string => formatDate(date, { ...farm, today: picture.today });
  const inMoney = (minor: number): string => formatMoney(minor, farm.currency);
  const at = say(batch.arrivalDate);
  if (found === undefined)
    return (
      <p>
        {batch.name} on {at}: looking at the weeks around …
      </p>
    );
  if (found === 'none')
    return batch.assumed?.includes('arrivalDate') ? (
      <WhyThen {...{ farm, tables, picture, batch }} />
    ) : (
      <p>
        {batch.name} on {at}: no week around suits them much better.
      </p>
    );
  const { now, best, because, heat } = found;
  return (
    <div className="start-rows">
      <p>
        <b>
          {batch.name} would do better on {say(best.arrivalDate)}
        </b>{' '}
        ({weekInWords(best.score)}
        {gradeOf(best.score) === gradeOf(now.score)
          ? ', the better one'
          : `; ${at} is ${weekInWords(now.score)}`}
        ). Against {at}: {inOwnUnits(because, farm.units)}
        {heat &&
          ` Heat for the brooder then costs ${inMoney(heat.nowMinor)}, against ${inMoney(heat.bestMinor)}.`}
      </p>
      <div>
        <Button
          variant="default"
          loading={save.isPending}
          onClick={() =>
            save.mutate({ ...batch, arrivalDate: best.arrivalDate }, { onSuccess: onTaken })
          }
        >
          Take {say(best.arrivalDate)}
        </Button>
      </div>
      <Failure error={save.error} />
    </div>
  );
}

/** Looked for once the page stands; undefined until it is known. */
function useBetterWeek(
  { tables, picture }: Pick<Props, 'tables' | 'picture'>,
  batchId: string,
): BetterWeek | 'none' | undefined {
  const [found, setFound] = useState<BetterWeek | 'none'>();
  useEffect(() => {
    const timer = setTimeout(() => setFound(betterWeek(picture, tables, batchId) ?? 'none'), 0);
    return () => clearTimeout(timer);
  }, [tables, picture, batchId]);
  return found;
}
