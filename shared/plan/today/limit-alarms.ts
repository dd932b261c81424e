import type { PlainDate } from '../../calendar/plain-date.js';
import type { Farm } from '../../farm/farm.js';
import type { Judgements } from '../../tables/judgements.js';
import { formatValue, type Reader } from '../../units/format.js';
import { againstLimits } from '../record/year-limits.js';
import type { YearCounts } from '../record/year-counts.js';
import type { Alarm, Looked } from './looked-at.js';

/** Birds or eggs that are near the limit of the place or over it, once as it comes near and once over. */
export const toldLimitAlarms = (
  counts: Pick<YearCounts, 'year' | 'birds' | 'eggs'>,
  farm: Farm,
  { limitNearShare }: Judgements['alarms'],
): Alarm[] =>
  againstLimits(counts, farm.yearLimits).flatMap(({ of, label, told, limit }) => {
    if (told < limitNearShare.value * limit) return [];
    const isOver = limit < told;
    const say = sayCount(farm);
    return [
      {
        key: `alarm/limit/${of}/${counts.year}/${limit}/${isOver ? 'over' : 'near'}`,
        isAlarm: true,
        level: isOver ? 'stop' : 'act',
        words: `${label.toLowerCase()}: ${say(told)} of ${say(limit)}`,
        text: isOver
          ? `That is more than the limit you typed for ${counts.year}. Ask the office that grants it before more goes.`
          : `${say(limit - told)} more in ${counts.year} reach the limit you typed.`,
        of: 'Limit of the year',
        place: { kind: 'record' },
      },
    ];
  });

const sayCount =
  (reader: Reader) =>
  (n: number): string =>
    formatValue(n, 'count', reader);

/** Birds still to be processed in a year by the plans of batches that are not over. */
export function stillToProcess(
  { picture, batches }: Pick<Looked, 'picture' | 'batches'>,
  year: string,
): number {
  return batches.reduce((sum, { id, plan }) => {
    const on = plan.leaving && String(plan.leaving.on.value);
    if (!plan.leaving || on === undefined || on.slice(0, 4) !== year || on < picture.today)
      return sum;
    const changes = picture.headChanges.filter(({ batchId }) => batchId === id);
    const gone = changes
      .filter(({ change }) => change !== 'arrived')
      .reduce((all, { birds }) => all + birds, 0);
    const left = Math.max(0, plan.birds.chicksPlaced.value - gone);
    return sum + Math.min(left, plan.leaving.birdsToProcess);
  }, 0);
}

/** A year whose plans come to more birds than the place may process, before they are all there. */
export function plannedOverLimit({ picture, batches }: Looked): Alarm[] {
  const limit = picture.farm.yearLimits?.birdsProcessed;
  if (limit === undefined) return [];
  const year = picture.today.slice(0, 4);
  const told = processedIn(picture.headChanges, year);
  const still = stillToProcess({ picture, batches }, year);
  const all = told + still;
  // What is over the limit already is said as that.
  if (all <= limit || limit < told) return [];
  const say = sayCount(picture.farm);
  // Every bird lost makes it another number: only other birds ordered or wanted make it another question.
  const asked = picture.batches
    .filter(({ purpose, arrivalDate }) => purpose === 'meat' && arrivalDate.slice(0, 4) === year)
    .reduce((sum, { orderedBirds, wantedBirds }) => sum + (orderedBirds ?? wantedBirds), 0);
  return [
    {
      key: `alarm/limit/planned/${year}/${limit}/${asked}`,
      isAlarm: true,
      level: 'act',
      words: `${say(all)} birds to process in ${year}, the limit is ${say(limit)}`,
      text: `${say(told)} are told and ${say(still)} more are planned this year. Raise fewer, sell some alive, have the rest processed under inspection, or move a batch past December.`,
      of: 'Limit of the year',
      place: { kind: 'record' },
    },
  ];
}

const processedIn = (
  changes: readonly { change: string; date: PlainDate; birds: number }[],
  year: string,
): number =>
  changes
    .filter(({ change, date }) => change === 'processed' && date.slice(0, 4) === year)
    .reduce((sum, { birds }) => sum + birds, 0);
