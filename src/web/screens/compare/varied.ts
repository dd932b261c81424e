import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { Batch } from '../../../../shared/farm/batch.js';
import type { BatchChoice } from '../../../../shared/farm/batch-choice.js';
import { choicesFor, rowById, type Tables } from '../../../../shared/tables/tables.js';

/** What of a batch is varied: one thing at a time, so that a difference has one reason. */
export type Varied = keyof BatchChoice;

const NAMES: Readonly<Record<Varied, string>> = {
  wantedBirds: 'How many birds',
  strainId: 'Breed or cross',
  feedProgramId: 'Feeds',
  arrivalDate: 'When they come',
  leaveAgeDays: 'Age at processing',
  ownMixPerBag: 'Own mix against bought',
  twoWeeksApart: 'Two batches in place of one',
};

export const variedOf = ({ purpose }: Pick<Batch, 'purpose'>): { id: Varied; name: string }[] =>
  (Object.keys(NAMES) as Varied[])
    .filter((id) => purpose === 'meat' || (id !== 'leaveAgeDays' && id !== 'twoWeeksApart'))
    .map((id) => ({ id, name: NAMES[id] }));

const WEEK = 7;

/** What is likely asked of a batch, to begin with. */
export function usualChoices(
  varied: Varied,
  batch: Batch,
  tables: Pick<Tables, 'strains' | 'feedPrograms'>,
): readonly BatchChoice[] {
  const { wantedBirds, arrivalDate } = batch;
  switch (varied) {
    case 'wantedBirds':
      return [Math.max(1, Math.round(wantedBirds / 2)), wantedBirds * 2].map((birds) => ({
        wantedBirds: birds,
      }));
    case 'strainId':
      return breedsFor(batch, tables)
        .filter(({ id }) => id !== batch.strainId)
        .slice(0, MOST)
        .map(({ id }) => ({ strainId: id }));
    case 'feedProgramId':
      return feedsFor(batch, tables)
        .filter(({ id }) => id !== feedsOf(batch, tables))
        .slice(0, MOST)
        .map(({ id }) => ({ feedProgramId: id }));
    case 'arrivalDate':
      return [-2, 2, 4].map((weeks) => ({ arrivalDate: addDays(arrivalDate, weeks * WEEK) }));
    case 'leaveAgeDays':
      return [7, 8, 9].map((weeks) => ({ leaveAgeDays: weeks * WEEK }));
    case 'ownMixPerBag':
      return [{}];
    case 'twoWeeksApart':
      return [3, 6].map((twoWeeksApart) => ({ twoWeeksApart }));
  }
}

/** Columns beside the batch as it is planned. */
export const MOST = 3;

export const breedsFor = ({ purpose, strainId }: Batch, { strains }: Pick<Tables, 'strains'>) => {
  const { species } = rowById(strains, strainId);
  return strains.filter((each) => each.purposes.includes(purpose) && each.species === species);
};

export const feedsFor = (batch: Batch, tables: Pick<Tables, 'strains' | 'feedPrograms'>) =>
  choicesFor(
    tables.feedPrograms,
    rowById(tables.strains, batch.strainId).feedProgram[batch.purpose]!,
  );

const feedsOf = (batch: Batch, { strains }: Pick<Tables, 'strains'>): string =>
  batch.feedProgramId ?? rowById(strains, batch.strainId).feedProgram[batch.purpose]!;
