import { describe, expect, it } from '@jest/globals';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { tables } from '../../support/factories.js';
import { TEN_HOUSEHOLDS } from '../../support/ten-households.js';

const [, picture] = TEN_HOUSEHOLDS.find(([name]) => name === 'away at calving')!;
const againAsOf = (today: string): string | undefined =>
  planAnimals({ ...picture, today, batches: [] }, tables).pasture!.herds[0]!.grassAgain;

describe('grass again after the plan', () => {
  it('comes a year after the turn-out that is planned', () => {
    const { pasture } = planAnimals({ ...picture, batches: [] }, tables);
    const [herd] = pasture!.keyDates.herds;
    expect(String(herd!.turnOut!.value)).toBe('2027-05-03');
    expect(againAsOf(picture.today)).toBe('2028-05-02');
  });

  it.each(['2027-07-15', '2027-10-20'])(
    'comes in spring though nobody told by %s that they went out',
    (today) => {
      const again = againAsOf(today)!;
      expect('2028-04-01' < again && again < '2028-06-01').toBe(true);
    },
  );

  it('does not come in August because the first move was told then', () => {
    const [herd] = picture.herds;
    const told = { herdId: herd!.id, paddockId: picture.paddocks[0]!.id, from: '2027-08-01' };
    const { pasture } = planAnimals(
      { ...picture, today: '2027-08-20', batches: [], grazings: [told] },
      tables,
    );
    expect(pasture!.herds[0]!.grassAgain! < '2028-06-01').toBe(true);
  });
});
