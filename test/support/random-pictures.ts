import { addDays } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Person } from '../../shared/farm/farm.js';
import type { OwnJob } from '../../shared/farm/job.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { drawIndex, type Random } from '../../shared/schedule/random.js';
import { newBatch, newRequest } from './factories.js';
import { newHerd } from './pasture-factories.js';
import { newPicture } from './pictures.js';
import { newOwnJob } from './season-factories.js';

/** A farm with birds, perhaps cattle, people and jobs, none of them like another; all invented. */
export function randomPicture(random: Random): FarmPicture {
  const today = addDays('2027-03-01', drawIndex(random, 200));
  const among = (count: number): number => drawIndex(random, count);
  const { farm, climate, facilities } = newRequest();
  const later = (from: number, days: number): string => addDays(today, from + among(days));
  const batch = (id: string, more: Partial<Batch>) => ({
    ...newBatch({ arrivalDate: later(70, 60), wantedBirds: 20 + among(60), ...more }),
    id,
  });
  const layers = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
  const hasCattle = random() < 0.5;
  const groups = [
    { classId: 'cow-calf', head: 1 + among(6) },
    ...(random() < 0.4 ? [{ classId: 'heifer', head: 2, arrivesOn: later(5, 40) }] : []),
    ...(random() < 0.4 ? [{ classId: 'milk-cow', head: 1, calvesOn: later(5, 60) }] : []),
  ];
  return newPicture({
    ...{ farm, climate, facilities, today },
    people: Array.from({ length: 1 + among(3) }, (_, k) => randomPerson(random, today, k)),
    batches: [batch('meat', {}), ...(random() < 0.5 ? [batch('hens', layers)] : [])],
    ...(hasCattle ? { herds: [newHerd({ groups })] } : {}),
    jobs: Array.from({ length: 3 + among(8) }, (_, k) => randomJob(random, today, k)),
  });
}

function randomPerson(random: Random, today: string, k: number): Person {
  const weekday = 1.5 + drawIndex(random, 4);
  const weekend = 4 + drawIndex(random, 6);
  const from = addDays(today, 3 + drawIndex(random, 40));
  return {
    id: `p${k}`,
    name: `Person ${k}`,
    away: random() < 0.4 ? [{ from, to: addDays(from, drawIndex(random, 5)) }] : [],
    hoursByWeekday: [weekday, weekday, weekday, weekday, weekday, weekend, weekend],
  };
}

function randomJob(random: Random, today: string, k: number): OwnJob {
  const isDry = random() < 0.3;
  const dueOn = addDays(today, 2 + drawIndex(random, 60));
  return newOwnJob({
    id: `j${k}`,
    name: `Job ${k}`,
    hours: 0.5 + drawIndex(random, 12) / 2,
    dueOn,
    ...(random() < 0.3 ? { noUseAfter: addDays(dueOn, drawIndex(random, 10)) } : {}),
    priority: (['must', 'should', 'could'] as const)[drawIndex(random, 3)]!,
    conditions: {
      ...(isDry ? { noRain: true } : {}),
      ...(random() < 0.3 ? { daylight: true } : {}),
    },
    canBeSpread: random() < 0.7,
    ...(random() < 0.2 ? { repeats: { every: 'days', everyDays: 2 + drawIndex(random, 12) } } : {}),
  });
}
