import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { EstimateAnswer } from '../../shared/farm/estimated-climate.js';
import type { Climate } from '../../shared/weather/climate.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { newFarm } from '../support/factories.js';

describe.each([anyDatabase()])('the climate estimate on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => {
    app = await openApp(database);
  }, 60_000);
  afterAll(() => app.close());

  const ask = (query: string) => app.api.get(`/api/climate-estimate?${query}`);

  it('answers coordinates and height with twelve months and how far off they may be', async () => {
    const { body } = await ask('latitudeDeg=51.75&longitudeDeg=-1.9&elevationM=130').expect(200);
    const { estimate } = body as EstimateAnswer;
    expect(estimate).toMatchObject({
      restsOn: 'observed',
      nightErrorC: 0.8,
      rainErrorPercent: 10,
      toConfirm: ['frost'],
    });
    expect(estimate!.monthlyMaxC[0]).toBe(7.6);
    expect(estimate!.monthlyRainMm.reduce((a, b) => a + b)).toBe(756);
  });

  it('says where it knows nothing, and names what is missing or wrong', async () => {
    const { body } = await ask('latitudeDeg=-1.3&longitudeDeg=36.8&elevationM=1700').expect(200);
    expect((body as EstimateAnswer).because).toContain('enter the 36 figures or fetch them online');
    expect(body).not.toHaveProperty('estimate');
    const wrong = await ask('latitudeDeg=north&longitudeDeg=36.8').expect(400);
    const fields = (wrong.body as { problems: { field: string }[] }).problems.map((p) => p.field);
    expect(fields.sort()).toEqual(['elevationM', 'latitudeDeg']);
  });

  it('is named as what plans go by, until the household types the figures', async () => {
    const estimated = ['monthlyMinC', 'monthlyMaxC', 'monthlyRainMm'];
    const { body } = await app.api
      .post('/api/farms')
      .send({ ...newFarm(), estimated })
      .expect(201);
    const farm = body as { id: string; estimated: string[] };
    expect(farm.estimated).toEqual(estimated);
    const seen = async () => {
      const view = await app.api.get(`/api/farms/${farm.id}/weather`).expect(200);
      const picture = await app.api.get(`/api/farms/${farm.id}/picture`).expect(200);
      const { climate } = picture.body as { climate: Climate };
      return [(view.body as { label: string }).label, climate.label, climate.isEstimate ?? false];
    };
    const label = 'An estimate from the farm’s coordinates and height';
    expect(await seen()).toEqual([label, label, true]);
    await app.api.put(`/api/farms/${farm.id}`).send({ ...newFarm(), estimated: ['monthlyRainMm'] });
    expect(await seen()).toEqual(['Typed monthly averages', 'Typed monthly averages', false]);
  });

  it('is that of the new place once the farm has another height, but for figures that were typed', async () => {
    const place = { latitudeDeg: 44.55, longitudeDeg: -69.63 };
    const estimateAt = async (elevationM: number) => {
      const { latitudeDeg, longitudeDeg } = place;
      const at = `latitudeDeg=${latitudeDeg}&longitudeDeg=${longitudeDeg}&elevationM=${elevationM}`;
      return ((await ask(at).expect(200)).body as EstimateAnswer).estimate!;
    };
    const [high, low] = [await estimateAt(400), await estimateAt(33)];
    const { monthlyMinC, monthlyMaxC, monthlyRainMm } = high;
    const estimated = ['monthlyMinC', 'monthlyMaxC', 'monthlyRainMm'];
    const rows = { ...newFarm(), ...place, monthlyMinC, monthlyMaxC, monthlyRainMm, estimated };
    const { body } = await app.api
      .post('/api/farms')
      .send({ ...rows, elevationM: 400 })
      .expect(201);
    const typed = monthlyRainMm.map((each) => each + 1);
    const { body: after } = await app.api
      .put(`/api/farms/${(body as { id: string }).id}`)
      .send({ ...rows, elevationM: 33, monthlyRainMm: typed })
      .expect(200);
    expect(low.monthlyMinC).not.toEqual(monthlyMinC);
    expect(after).toMatchObject({ monthlyMinC: low.monthlyMinC, monthlyMaxC: low.monthlyMaxC });
    expect(after).toMatchObject({ monthlyRainMm: typed });
  });
});
