import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { changed } from '../support/bad-values.js';
import { databases } from '../support/databases.js';
import { exampleOrder } from '../support/orders.js';
import { expectProblem } from '../support/problem.js';

/** Every field of an order that may be left out. */
const OPTIONAL = [
  'today',
  'farmId',
  'facilities',
  'people',
  'previousArrivalDate',
  'facilities.0.roof',
  'facilities.0.roof.layers',
  'facilities.0.roof.rM2KPerW',
  'facilities.0.roomC',
  'facilities.0.circuitId',
  'facilities.0.feederCm',
  'facilities.0.drinkerCm',
  'people.0.id',
  'batch.id',
  'batch.orderedBirds',
  'batch.orderDate',
  'batch.brooderId',
  'batch.penId',
  'batch.coopId',
  'batch.freezerId',
  'batch.feedStoreId',
  'batch.growthTableId',
  'batch.broodingScheduleId',
  'batch.spaceStandardId',
  'batch.moveOutRuleId',
  'batch.moveOutDate',
  'batch.weightFactor',
  'batch.feedFactor',
  'batch.wastePercent',
  'batch.firstWeekLossPercent',
  'batch.laterLossPercent',
  'batch.leaveAgeDays',
  'batch.targetLiveKg',
  'batch.processing',
  'batch.dressingShare',
  'batch.movesPerDay',
  'batch.medicatedWithdrawalDays',
  'batch.bagKg',
  'batch.prices',
  'batch.prices.perBird',
  'batch.prices.processingPerBird',
  'batch.prices.beddingPerBag',
  'batch.prices.feedPerBag',
] as const;

describe.each(databases())('null for a field that may be left out on $name', (database) => {
  let app: TestApp;

  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  it.each(OPTIONAL)('is read as left out, or refused: %s', async (path) => {
    const body = changed(exampleOrder(), path, null);
    const response = await app.api.post('/api/plans/preview').send(body);
    // What is left out may be named by another field, as an order without its brooder is.
    if (response.status !== 200) expectProblem(response, 400);
    expect(response.text).not.toMatch(/NaN|Invalid/);
  });
});
