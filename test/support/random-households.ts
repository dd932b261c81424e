import { drawIndex, type Random } from '../../shared/schedule/random.js';
import type { WorkJob, WorkProblem, Worker } from '../../shared/schedule/work.js';

/** How large an invented household is. */
export interface HouseholdSize {
  readonly days: number;
  readonly people: number;
  readonly jobs: number;
  /** Work asked for over the hours there are. */
  readonly load: number;
}

/** Lost and late costs of must, should and could, as in the table of work. */
const PRIORITIES = [
  { lostCost: 1000, lateCostPerDay: 60 },
  { lostCost: 200, lateCostPerDay: 8 },
  { lostCost: 200, lateCostPerDay: 8 },
  { lostCost: 40, lateCostPerDay: 1 },
];
const WEEKDAY_MINUTES = 120;
const WEEKEND_MINUTES = 300;

/** An invented household's work: waits, weather, light, work for two, spread work, last days. */
export function randomHousehold(random: Random, size: HouseholdSize): WorkProblem {
  const { days, people, jobs: count, load } = size;
  const workers = Array.from({ length: people }, () => randomWorker(random, days));
  const hours = workers.reduce((sum, { minutes }) => sum + minutes.reduce((a, b) => a + b, 0), 0);
  const dry = Uint8Array.from({ length: days }, () => (random() < 0.4 ? 1 : 0));
  const warm = Uint8Array.from({ length: days }, () => (random() < 0.7 ? 1 : 0));
  const average = (load * hours) / (1.1 * count);
  const jobs = Array.from({ length: count }, (_, i): WorkJob => {
    const minutes = 15 * Math.max(1, Math.round((average * (0.2 + 1.6 * random())) / 15));
    const isSpread = 60 < minutes && random() < 0.6;
    const fromDay = drawIndex(random, Math.ceil(0.7 * days));
    const dueDay = Math.min(days - 1, fromDay + drawIndex(random, 10));
    const isLast = random() < 0.5;
    const late = isLast ? drawIndex(random, 4) : days;
    const isForTwo = 1 < people && random() < 0.12;
    const able = workers.map((_, w) => w).filter(() => random() < 0.75);
    const everyone = workers.map((_, w) => w);
    const suits = random() < 0.3 ? dry : random() < 0.2 ? warm : undefined;
    return {
      id: `job ${i}`,
      minutes,
      peopleNeeded: isForTwo ? 2 : 1,
      able: isForTwo ? everyone : able.length === 0 ? everyone : able,
      ...(isSpread ? { smallestPieceMinutes: random() < 0.7 ? 30 : 60 } : {}),
      fromDay,
      dueDay,
      untilDay: Math.min(days - 1, dueDay + late),
      ...(suits ? { suits } : {}),
      needsLight: random() < 0.2,
      waitsFor:
        0 < i && random() < 0.3 ? [{ job: drawIndex(random, i), days: drawIndex(random, 3) }] : [],
      ...PRIORITIES[drawIndex(random, PRIORITIES.length)]!,
    };
  });
  return { days, workers, jobs };
}

function randomWorker(random: Random, days: number): Worker {
  const awayFrom = random() < 0.4 ? drawIndex(random, days) : days;
  const minutes = Int32Array.from({ length: days }, (_, day) => {
    if (awayFrom <= day && day < awayFrom + 4) return 0;
    const most = day % 7 < 5 ? WEEKDAY_MINUTES : WEEKEND_MINUTES;
    return most - 15 * drawIndex(random, 5);
  });
  return { minutes, lightMinutes: minutes.map((m) => Math.min(m, 75 + 15 * drawIndex(random, 8))) };
}

/** A household of 10 to 25 jobs in two to three weeks, so short that much of it may be lost. */
export const smallHousehold = (random: Random): WorkProblem =>
  randomHousehold(random, {
    days: 12 + drawIndex(random, 10),
    people: 1 + drawIndex(random, 3),
    jobs: 10 + drawIndex(random, 16),
    load: 0.6 + 0.6 * random(),
  });
