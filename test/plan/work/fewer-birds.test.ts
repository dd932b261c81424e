import { describe, expect, it } from '@jest/globals';
import { fewerBirds } from '../../../shared/plan/work/fewer-birds.js';
import { fitAll } from '../../../shared/plan/work/fitted-work.js';
import { newBatchWork, newOwnJob, newWork } from '../../support/season-factories.js';

describe('fewerBirds', () => {
  const today = '2027-04-05';
  const workOf = (birds: number, arrival = '2027-05-05') =>
    newWork({ work: [newBatchWork(arrival, today, birds)], ownJobs: [newOwnJob()] });
  const request = workOf(60);
  const { work } = fitAll(request, 1);
  const ofBatch = work.needs.flatMap(({ belongsTo }, i) => (belongsTo ? [i] : []));
  const own = work.needs.findIndex(({ belongsTo }) => !belongsTo);
  const withFewerBirds = (_: string, birds: number) => workOf(60 - birds);

  it('tries ten fewer of a batch for its own work, which then takes fewer hours', () => {
    const [candidate, ...more] = fewerBirds({ withFewerBirds }, work, [ofBatch[0]!, own]);
    expect(more).toEqual([]);
    expect(candidate).toMatchObject({
      told: { kind: 'fewer-birds', birds: 10 },
      helps: [ofBatch[0]],
    });
    const sum = ({ jobs }: typeof work.problem): number =>
      jobs.reduce((minutes, job) => minutes + job.minutes, 0);
    expect(sum(candidate!.problem)).toBeLessThan(sum(work.problem));
  });

  it('tries none for other work, where a batch cannot be smaller, or where its dates move', () => {
    expect(fewerBirds({ withFewerBirds }, work, [own])).toEqual([]);
    expect(fewerBirds({}, work, ofBatch)).toEqual([]);
    expect(fewerBirds({ withFewerBirds: () => undefined }, work, ofBatch)).toEqual([]);
    const other = () => newWork({ work: [] });
    expect(fewerBirds({ withFewerBirds: other }, work, ofBatch)).toEqual([]);
  });
});
