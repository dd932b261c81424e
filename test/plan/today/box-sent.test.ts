import { describe, expect, it } from '@jest/globals';
import { animalLines } from '../../../shared/plan/today/animal-lines.js';
import { newRequest, tables } from '../../support/factories.js';
import { newPicture, plannedBatch } from '../../support/pictures.js';

const today = '2027-05-05';

/** Whether a box of them can fail to come, of chicks due in three days. */
function isSent(more: Parameters<typeof newRequest>[0]): unknown {
  const request = newRequest({
    today,
    ...more,
    batch: { arrivalDate: '2027-05-08', ...more?.batch },
  });
  const { farm, climate, batch, facilities, people } = request;
  const picture = newPicture({
    ...{ farm, climate, today, facilities, people: [...people] },
    batches: [{ ...batch, id: 'birds' }],
  });
  const plan = plannedBatch(request);
  const [line] = animalLines(picture, tables, { batches: [{ id: 'birds', name: 'Birds', plan }] });
  return (line as { isSent?: boolean }).isSent;
}

describe('a box that may not come', () => {
  it('is one that is sent: not own eggs, nor what is fetched', () => {
    expect(isSent({ batch: { hatchToArrivalDays: 1 } })).toBe(true);
    expect(isSent({ batch: { hatchToArrivalDays: 0 } })).toBe(false);
    expect(isSent({ batch: { origin: 'incubator', hatchToArrivalDays: 0 } })).toBe(false);
  });
});
