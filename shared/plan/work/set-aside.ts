import { daysBetween } from '../../calendar/plain-date.js';
import type { Reading, WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/** A piece of work that was ticked off. */
export interface DoneNeed {
  readonly key: string;
  readonly name: string;
  readonly on: string;
  readonly doneBy?: string;
  /** Batch or herd it was for. */
  readonly of?: string;
  /** Of each who took part: as it was logged, else as it was reckoned. */
  readonly hours: number;
  /** Of these, what was done on days before the one on which it was ticked off. */
  readonly hoursEarlier?: number;
  /** By the table or the job, whatever was logged. */
  readonly reckonedHours: number;
  readonly kind?: string;
  readonly peopleNeeded: number;
  /** Ticked off longer ago than what is shown beside the work of today. */
  readonly isEarlier?: true;
}

/** A piece of work or a chore that was struck out. */
export interface StruckNeed {
  readonly key: string;
  readonly name: string;
  readonly of?: string;
  readonly because?: string;
}

/** Work and chores that were ticked off, so that each can be opened again. */
export function doneLately(
  { today, tables }: WorkRequest,
  { needs, chores, marks }: Reading,
): DoneNeed[] {
  const shown = tables.judgements.work.shownDoneDays.value;
  const done = ({ key, name, belongsTo, hours, conditions, ...need }: Known): DoneNeed[] => {
    const mark = marks.get(key);
    if (mark?.doneOn === undefined) return [];
    const { doneOn: on, doneBy, hours: took, ownHours, hoursDone = 0 } = mark;
    const earlier = hoursDone - (mark.partOn === on ? (mark.partHours ?? 0) : 0);
    return [
      {
        ...{ key, name, on },
        ...(doneBy === undefined ? {} : { doneBy }),
        ...(belongsTo ? { of: belongsTo.name } : {}),
        hours: took ?? ownHours ?? hours,
        ...(0 < earlier ? { hoursEarlier: earlier } : {}),
        reckonedHours: need.reckonedHours,
        ...(need.kind === undefined ? {} : { kind: need.kind }),
        peopleNeeded: conditions?.peopleNeeded ?? 1,
        ...(shown < daysBetween(on, today) ? { isEarlier: true } : {}),
      },
    ];
  };
  return [
    ...needs.flatMap(done),
    ...chores.flatMap(({ hoursPerDay: hours, ...chore }) =>
      done({ ...chore, hours, reckonedHours: hours }),
    ),
  ];
}

type Known = Pick<WorkNeed, 'key' | 'name' | 'belongsTo' | 'hours' | 'reckonedHours' | 'kind'> & {
  readonly conditions?: WorkNeed['conditions'];
};

/** Work and chores that were struck out, with the reason. */
export const struckOut = ({ needs, chores, marks }: Reading): StruckNeed[] =>
  [...needs, ...chores].flatMap(({ key, name, belongsTo }) => {
    const { struckOut: isStruck, because } = marks.get(key) ?? {};
    return isStruck !== true
      ? []
      : [
          {
            ...{ key, name },
            ...(belongsTo ? { of: belongsTo.name } : {}),
            ...(because === undefined ? {} : { because }),
          },
        ];
  });
