import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { saidOf } from '../../shared/plan/bird-words.js';
import { newBrooder, newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const POULTS = { young: 'poults', youngOne: 'poult' };

describe('saidOf', () => {
  it.each([
    ['Chicks held over', 'Poults held over'],
    ['order chicks for a date', 'order poults for a date'],
    ['at chick height', 'at poult height'],
    ['where chickens were', 'where chickens were'],
  ])('says “%s” as “%s”', (text, said) => {
    expect(saidOf(POULTS, text)).toBe(said);
  });
});

describe('a plan of birds that are no chickens', () => {
  const planOf = (batch: Partial<Batch>): BatchPlan =>
    plannedBatch(newRequest({ batch, facilities: [newBrooder()] }));
  const all = { brooderId: 'brooder', leaveAgeDays: 100, moveOutDate: '2027-07-20' } as const;
  const [chicks, poults] = ['fast-meat', 'turkey'].map((strainId) => planOf({ ...all, strainId }));
  const hatched = planOf({ ...all, strainId: 'pekin-duck', origin: 'hen', hatchToArrivalDays: 0 });

  it('keeps the ids of its tasks', () => {
    const idsOf = (plan: BatchPlan | undefined) =>
      plan!.tasks.tasks.map(({ templateId }) => templateId).filter((id) => id.includes('chick'));
    expect(idsOf(poults)).toEqual(idsOf(chicks));
  });

  it.each([
    ['poults', poults],
    ['ducklings', hatched],
  ])('calls them %s in tasks and key dates', (young, plan) => {
    const { tasks, events } = plan!.tasks;
    const texts = [
      ...tasks.flatMap(({ name, ifLate, waitsFor }) => [name, ifLate, ...waitsFor]),
      ...events.flatMap(({ words }) => words ?? []),
    ];
    expect(texts.filter((text) => /\bchick/i.test(text))).toEqual([]);
    expect(texts.join('\n')).toContain(young);
  });

  it('calls them so in what it warns of, but for rules that were printed of chicks', () => {
    const texts = poults!.issues.map(({ text }) => text.replace('heaters over chicks', ''));
    expect(texts.filter((text) => /\bchicks?\b/i.test(text))).toEqual([]);
  });

  it('hands the words on to page, print and terminal', () => {
    expect(poults!.words).toEqual({
      young: 'poults',
      youngOne: 'poult',
      male: 'tom',
      female: 'hen',
    });
  });
});
