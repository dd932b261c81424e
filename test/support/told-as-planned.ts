import { addDays } from '../../shared/calendar/plain-date.js';
import type { FeedBought } from '../../shared/farm/feed-bought.js';
import type { Grazing } from '../../shared/farm/herd-places.js';
import type { Progress } from '../../shared/farm/job.js';
import type { Mowing } from '../../shared/farm/mowing.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { PlannedJob } from '../../shared/plan/work/planned-work.js';

/** What is told of a job by somebody who does today what the plan says. */
export function doneAsPlanned(job: PlannedJob, today: string): Progress[] {
  const { key, hours, hoursDone, kind, pieces, lostHours } = job;
  const ofToday = pieces.filter(({ date }) => date === today);
  if (ofToday.length === 0) return [];
  const all = hours + hoursDone;
  if (ofToday.length < pieces.length || 0 < lostHours) {
    const worked = ofToday.reduce((sum, piece) => sum + piece.hours, 0);
    return [{ key, hoursDone: hoursDone + worked }];
  }
  const of = kind === undefined ? {} : { kind };
  return [{ key, doneOn: today, hours: all, reckonedHours: all, ...of }];
}

/** The picture of the next morning: herds went where the grass plan had them go, and were told of. */
export function movedAsPlanned(picture: FarmPicture, pasture: PasturePlan): FarmPicture {
  const { grazings = [], herds, today } = picture;
  const isHere = (herdId: string, paddockId: string): boolean =>
    herds.some((herd) => herd.id === herdId && herd.inPaddockId === paddockId);
  const moves = pasture.moves.filter(
    ({ herdId, paddockId, from }) => from === today && !isHere(herdId, paddockId),
  );
  const left = grazings.map((each): Grazing => {
    const next = moves.find(({ herdId }) => herdId === each.herdId);
    return next && each.to === undefined ? { ...each, to: addDays(today, -1) } : each;
  });
  const all = [
    ...left,
    ...moves.map(({ herdId, paddockId, from }): Grazing => ({ herdId, paddockId, from })),
  ];
  return {
    ...picture,
    grazings: all,
    herds: herds.map((herd) => {
      const here = all.findLast(({ herdId, to }) => herdId === herd.id && to === undefined);
      return here ? { ...herd, inPaddockId: here.paddockId, inSince: here.from } : herd;
    }),
    paddocks: picture.paddocks.map((own) => {
      const last = all.findLast(({ paddockId, to }) => paddockId === own.id && to !== undefined);
      return last ? { ...own, lastGrazedOn: last.to! } : own;
    }),
  };
}

/** Paddocks that were mown or topped by work that is done, as its tick tells them. */
export const mownAsPlanned = (
  { mowingWork }: PasturePlan,
  told: readonly Progress[],
  date: string,
): Mowing[] =>
  mowingWork
    .filter(({ key }) => told.some((each) => each.key === key && each.doneOn !== undefined))
    .flatMap(({ key: work, paddockIds, isLeftLying }) =>
      paddockIds.map((paddockId) => ({
        ...{ id: `${work} ${paddockId}`, work, paddockId, date },
        ...(isLeftLying ? { isLeftLying } : {}),
      })),
    );

/** Feed that came home from the trips that were told as done. */
export const boughtAsPlanned = (
  { jobs }: { readonly jobs: readonly PlannedJob[] },
  told: readonly Progress[],
): FeedBought[] =>
  told.flatMap(({ key, doneOn }) =>
    doneOn === undefined
      ? []
      : (jobs.find((job) => job.key === key)?.buys?.lines ?? [])
          .filter(({ what }) => what === 'feed')
          .map(({ name, amount, eachKg }, k) => ({
            ...{ id: `${key}/${doneOn}/${k}`, date: doneOn, name, amount, eachKg },
          })),
  );
