import type { PlainDate } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import type { BatchPlan } from '../batch-plan.js';
import { feedOut } from './feed-out.js';
import type { Alarm, Looked } from './looked-at.js';

/** What is wrong with feed: none for new birds, more used than planned, out before the next trip, medicated too long. */
export const feedAlarms = (looked: Looked): Alarm[] => [
  ...noFirstFeed(looked),
  ...feedOut(looked),
  ...feedAbovePlan(looked),
  ...withdrawalRuns(looked),
];

/** Birds that come, or just came, whose first feed nobody can fetch before. */
const noFirstFeed = ({ plan: { jobs }, batches, picture: { farm, today } }: Looked): Alarm[] =>
  jobs.flatMap(({ buys, pieces }) => {
    const late = buys?.tooLateFor;
    const of = batches.find(({ id }) => id === late?.batchId);
    const on = pieces[0]?.date;
    if (!late || !of || (on !== undefined && (on === today || on <= late.by))) return [];
    const say = (date: PlainDate): string => formatDate(date, { ...farm, today });
    const trip =
      on === undefined
        ? 'Nobody has the time to fetch it.'
        : `It can be fetched on ${say(on)} at the soonest.`;
    return [
      {
        key: `alarm/first-feed/${of.id}/${late.by}`,
        isAlarm: true,
        level: 'stop',
        words: `no ${late.name} for when they come`,
        text: `It is to be in the house by ${say(late.by)}. ${trip} Ask the seller today, borrow some, or buy it elsewhere before they come, and tell what was bought.`,
        ...{ of: of.name, place: { kind: 'feed' } },
      },
    ];
  });

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
