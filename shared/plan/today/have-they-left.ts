import type { Tables } from '../../tables/tables.js';
import { formatDate } from '../../units/dates.js';
import { takenUncounted } from '../left-untold.js';
import type { BatchLine } from './batch-line.js';
import type { Attention, Looked } from './looked-at.js';

/** Meat birds that were to leave, of which nobody told that they did: each day on which some were to. */
export const haveTheyLeft = ({ animals, picture: { farm, today } }: Looked): Attention[] =>
  animals.flatMap((line) => {
    if (line.kind !== 'batch') return [];
    const { id, name, wasToLeave, untoldDays = [] } = line;
    const date = (on: string): string => formatDate(on, { units: farm.units, today });
    const about = { level: 'act' as const, of: name, place: { kind: 'batch' as const, id } };
    return [
      ...untoldDays.map(({ on, birds }) => ({
        ...about,
        key: `left/${id}/${on}`,
        words: `${birds} were to be processed on ${date(on)}: were they?`,
        text: 'Nobody told that they were. Until then all of them are counted, fed and watered. Touch “Tell” at them above: how many were processed and on which day, or that processing is on another day.',
      })),
      ...(wasToLeave === undefined
        ? []
        : [
            {
              ...about,
              key: `left/${id}`,
              words: `have they left? ${0 < untoldDays.length ? 'The last of them' : 'They'} were to on ${date(wasToLeave)}`,
              text: `Nobody told that they did. Until then they are looked after as before, and the work of processing them waits for your answer. Touch “Tell” at them above: how many were processed, or that processing is on another day. Its work then stands before that day. Heavy birds that stay on want room, shade and water: losses rise with every hot day.`,
            },
          ]),
    ];
  });

/** Meat birds whose processing was ticked off, and that nobody counted. */
export const howManyWereThey = (
  { batches, picture: { farm, today, progress, headChanges } }: Pick<Looked, 'batches' | 'picture'>,
  tables: Tables,
): Attention[] =>
  batches.flatMap(({ id, name, plan }) => {
    const on = takenUncounted({ id, plan }, { today, progress, headChanges, tables });
    if (on === undefined) return [];
    const head = plan.birds.counted?.now ?? plan.birds.atEnd;
    const line: BatchLine = {
      ...{ kind: 'batch', id, name, purpose: plan.purpose, stage: 'out', wasToLeave: on },
      ...{ head, isSent: false, refills: [], cautions: [] },
      ...(plan.leaving
        ? {
            weighs: {
              liveKg: plan.leaving.liveEach.value,
              dressedKg: plan.leaving.dressedEach.value,
            },
          }
        : {}),
    };
    return [
      {
        key: `uncounted/${id}`,
        level: 'act' as const,
        words: `processed on ${formatDate(on, { units: farm.units, today })}: how many were they?`,
        text: `Their work was ticked off, and nobody told the count; about ${Math.floor(head.value)} were there by the plan. What is not told is not in the record, and in time not in the freezer.`,
        ...{ of: name, place: { kind: 'batch' as const, id }, uncounted: { line, on } },
      },
    ];
  });
