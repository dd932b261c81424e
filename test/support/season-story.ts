import { addDays } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { HowItWent } from '../../shared/plan/record/how-it-went.js';
import { newBatch } from './factories.js';
import type { PhoneFact } from './season-house.js';

export const PLANNED = '2027-05-03';
/** The box is two days late and six birds short. */
export const CAME = addDays(PLANNED, 2);
export const DAYS = 52;
export const HALF = 26;
export const on = (day: number): string => addDays(CAME, day);

/** Birds found dead, by days after they came: who found them, and why. */
export const DEATHS: Readonly<
  Record<number, readonly [who: 'a' | 'b', birds: number, cause: string]>
> = {
  1: ['a', 2, 'not-known'],
  4: ['b', 1, 'chilled'],
  13: ['b', 2, 'piled-up'],
  17: ['b', 1, 'sick'],
  31: ['a', 1, 'weak-legs'],
  44: ['b', 1, 'heat'],
};
export const DIED = Object.values(DEATHS).reduce((sum, [, birds]) => sum + birds, 0);
export const IN_BOX = 54;
export const DEAD_IN_BOX = 2;
export const GIVEN = 2;
export const SOLD = 2;
export const PROCESSED = IN_BOX - DEAD_IN_BOX - DIED - GIVEN - SOLD; // 54 − 2 − 8 − 2 − 2 = 40

/** Feed bought, by day: bags of 22.68 kg (50 lb) and what they cost. */
export const BOUGHT: readonly (readonly [day: number, bags: number, cents: number])[] = [
  [0, 3, 6_297],
  [15, 6, 12_774],
  [30, 9, 18_891],
];
export const SPENT_CENTS = 6_297 + 12_774 + 18_891;
export const SOLD_CENTS = 4_850;
/** Live weight each on a scale, kg: a hundredth under the table and over it by turns. */
export const WEIGHED: Readonly<Record<number, number>> = { 14: 0.36, 28: 1.18, 42: 2.1 };
/** Days on which the second phone has no signal; it sends all of it after them, some of it twice. */
export const NO_SIGNAL = { from: 12, to: 20 };

/** Everything that is told of a day, by whom. */
export function factsOf(batchId: string, day: number): { who: 'a' | 'b'; fact: PhoneFact }[] {
  const fact = (who: 'a' | 'b', kind: string, details: object, about = batchId) => ({
    who,
    fact: { key: `${who}-${kind}-${day}`, kind, about, on: on(day), details },
  });
  const died = DEATHS[day];
  const bought = BOUGHT.find(([at]) => at === day);
  const kg = WEIGHED[day];
  return [
    ...(day === 0 ? [fact('a', 'arrived', { birds: IN_BOX, dead: DEAD_IN_BOX })] : []),
    ...(died ? [fact(died[0], 'died', { birds: died[1], cause: died[2] })] : []),
    ...(bought
      ? [
          fact(
            'a',
            'bought',
            {
              ...{ what: 'feed', amount: bought[1], eachKg: 22.68 },
              money: (bought[2] / 100).toFixed(2),
            },
            'farm',
          ),
        ]
      : []),
    ...(day % 5 === 0 ? [fact('b', 'water-drunk', { liters: 5 + day / 2 })] : []),
    ...(kg === undefined ? [] : [fact('b', 'weighed', { birds: 10, averageKg: kg })]),
    ...(day === 40 ? [fact('a', 'gone', { birds: GIVEN, how: 'given' })] : []),
    ...(day === 46
      ? [fact('b', 'gone', { birds: SOLD, how: 'sold', money: (SOLD_CENTS / 100).toFixed(2) })]
      : []),
    ...(day % 2 === 0 ? [fact('b', 'note', { text: `Day ${day}: all of them up.` })] : []),
    ...(day === DAYS
      ? [fact('a', 'processed', { birds: PROCESSED, liveKg: 112, dressedKg: 81 })]
      : []),
  ];
}

/** The batch as it was ordered. */
export const orderIn = (brooderId: string): Batch => ({
  ...newBatch({ wantedBirds: 55, orderedBirds: 60, arrivalDate: PLANNED, brooderId }),
  leaveAgeDays: DAYS + 1,
});

/** What was forecast when it was ordered and half-way, beside what happened. */
export function beside(ordered: BatchPlan, half: BatchPlan, went: HowItWent): string {
  const actual = (line: string): string =>
    String(went.lines.find((each) => each.id === line)?.actual ?? 'not told');
  const rows = [
    ['', 'as ordered', 'half-way', 'as it was'],
    ['birds at the end', ...[ordered, half].map((p) => p.birds.atEnd.value), PROCESSED],
    [
      'live weight, kg',
      ...[ordered, half].map((p) => kg(p.leaving?.liveEach?.value)),
      kg(112 / PROCESSED),
    ],
    [
      'feed, kg (bought)',
      ...[ordered, half].map((p) => Math.round(p.feed.total.value)),
      Math.round(BOUGHT.reduce((sum, [, bags]) => sum + bags * 22.68, 0)),
    ],
    ['last day', ...[ordered, half].map((p) => String(p.leaving?.on.value)), on(DAYS)],
    ['lost', '', '', actual('lost')],
  ];
  return `${rows.map((row) => row.map((each) => String(each).padEnd(18)).join('')).join('\n')}\n`;
}

const kg = (value: number | undefined): string => value?.toFixed(2) ?? '';
