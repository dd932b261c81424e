import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { HeadChange } from '../../shared/farm/head-count.js';
import type { Weighing } from '../../shared/farm/weighing.js';
import { addDays } from '../../shared/calendar/plain-date.js';
import { whatChanged, type Change } from '../../shared/plan/what-changed.js';
import { newRequest, tables } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const ARRIVAL = '2027-05-05';
const AIM: Partial<Batch> = { targetLiveKg: 2.5, orderedBirds: 50, wantedBirds: 45 };
interface Told {
  readonly weighings?: readonly Weighing[];
  readonly headChanges?: readonly HeadChange[];
  readonly batch?: Partial<Batch>;
}
const planned = ({ batch = {}, ...told }: Told = {}) =>
  plannedBatch({
    ...newRequest({ batch: { ...AIM, ...batch }, ...told }),
    today: addDays(ARRIVAL, 28),
  });
const readers = { units: 'us', currency: 'USD' } as const;
const changed = (told: Told, before: Told = {}): Change[] =>
  whatChanged(planned(before), planned(told), {
    reader: readers,
    judged: tables.judgements.birds,
  });
const idsOf = (changes: readonly Change[]): readonly string[] => changes.map(({ id }) => id);
const plannedKg = planned().daily.find(({ id }) => id === 'weight-mean')!.values[27]!;
const weighed = (share: number): Weighing => ({
  ...{ id: 'w', batchId: 'any', date: addDays(ARRIVAL, 27), birds: 20 },
  averageKg: plannedKg * share,
});
const died = (birds: number): HeadChange => ({
  ...{ id: 'd', batchId: 'any', date: addDays(ARRIVAL, 20), change: 'died', birds },
});

describe('what changed in a plan', () => {
  it('is nothing where nothing was told', () => {
    expect(changed({})).toEqual([]);
  });

  it('does not call it over that too few were ordered when the birds are counted', () => {
    const few = { batch: { orderedBirds: 30 } };
    const came = { ...died(30), change: 'arrived' as const, date: ARRIVAL };
    const changes = changed({ ...few, headChanges: [came] }, few);
    expect(idsOf(changes)).not.toContain('solved');
  });

  it('is only how sure the day is, when birds weigh what was planned', () => {
    expect(idsOf(changed({ weighings: [weighed(1)] }))).toEqual(['ready']);
  });

  it('is a later day and more feed for light birds, in words', () => {
    const changes = changed({ weighings: [weighed(0.85)] });
    expect(idsOf(changes)).toEqual(expect.arrayContaining(['leaves', 'ready', 'feed']));
    expect(changes.find(({ id }) => id === 'leaves')!.words).toMatch(
      /^Processing: \w{3}, \w{3} \d+(, \d{4})?, .+ later than /,
    );
    expect(changes.find(({ id }) => id === 'feed')!.words).toMatch(
      /^Feed for all their days: [\d,]+ lb, \d+(\.\d)? lb more than before\.$/,
    );
  });

  it('calls no sum the bill in which something has no price', () => {
    const young = (price: string) => ({ batch: { prices: { perBird: price } } });
    const [change] = changed(young('9.00'), young('1.00')).filter(({ id }) => id === 'bill');
    expect(change!.words).toMatch(
      /^What has a price: \$[\d.,]+, \$[\d.,]+ more than before, without .*feed.*: no price given/,
    );
  });

  it('turns round when what was told is taken back', () => {
    const [there, back] = [
      changed({ weighings: [weighed(0.85)] }),
      changed({}, { weighings: [weighed(0.85)] }),
    ];
    expect(there.find(({ id }) => id === 'leaves')!.words).toMatch(/later/);
    expect(back.find(({ id }) => id === 'leaves')!.words).toMatch(/earlier/);
  });

  it('names what must be seen to when many die, and no longer when they did not', () => {
    const many = { headChanges: [died(14)] };
    expect(idsOf(changed(many))).toEqual(expect.arrayContaining(['birds', 'feed', 'new-issue']));
    expect(
      changed(many)
        .map(({ words }) => words)
        .join(' '),
    ).toMatch(/14 have died/);
    expect(idsOf(changed({}, many))).toContain('solved');
  });

  it('is every bird that there is more or less of, however little feed that is', () => {
    const changes = changed({ headChanges: [died(5)] }, { headChanges: [died(3)] });
    expect(idsOf(changes)).toContain('birds');
  });
});
