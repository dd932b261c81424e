import type { PlainDate } from '../../calendar/plain-date.js';
import type { BatchPlan } from '../batch-plan.js';
import { feedOut } from './feed-out.js';
import type { Alarm, Looked } from './looked-at.js';

/** What is wrong with feed: more used than planned, out before the next trip, medicated too long. */
export const feedAlarms = (looked: Looked): Alarm[] => [
  ...feedOut(looked),
  ...feedAbovePlan(looked),
  ...withdrawalRuns(looked),
];

/** Feed that is used beyond the plan, once for each bag more that was opened. */
const feedAbovePlan = ({ batches }: Looked): Alarm[] =>
  batches.flatMap(({ id, name, plan }) => {
    const issue = plan.issues.find(({ code }) => code === 'feed-above-plan');
    const used = plan.feed.used?.used.value;
    return issue && used !== undefined
      ? [
          {
            key: `alarm/feed/${id}/${Math.round(used)}`,
            isAlarm: true,
            level: 'act',
            words: 'they use more feed than they should',
            text: issue.text,
            ...{ of: name, place: { kind: 'batch', id } },
          },
        ]
      : [];
  });

/** Medicated feed that would still be in the birds on the day they are processed. */
const withdrawalRuns = ({ batches, picture: { today } }: Looked): Alarm[] =>
  batches.flatMap(({ id, name, plan }) => {
    const issue = plan.issues.find(({ code }) => code === WITHDRAWAL);
    const leaves = plan.leaving && String(plan.leaving.on.value);
    if (!issue || leaves === undefined || today < plan.arrivalDate || leaves < today) return [];
    return [
      {
        key: `alarm/withdrawal/${id}/${leaves}`,
        isAlarm: true,
        level: 'stop',
        words: 'medicated feed too close to eating',
        text: issue.text,
        // The feed is to be stopped now: the day of processing would be too late to be told.
        ...{ of: name, place: { kind: 'batch', id } },
      },
    ];
  });

const WITHDRAWAL = 'withdrawal-short';

/** Issues that are said as alarms, of birds that are there. */
export const isSaidAsAlarm = (code: string, plan: BatchPlan, today: PlainDate): boolean =>
  code === 'losses-above-usual' ||
  code === 'feed-above-plan' ||
  (code === WITHDRAWAL && plan.arrivalDate <= today);
