import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Check } from '../../shared/checks/compare.js';
import type { Formula } from '../../shared/explain/formula.js';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { Tables } from '../../shared/tables/tables.js';
import { loadChecks } from '../../src/reference/load-checks.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { tables as seeds } from '../support/factories.js';
import { exampleOrder } from '../support/orders.js';

const LAYERS = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets', coopId: 'hen-house' };

describe.each([anyDatabase()])('formulas and tables on $name', (database) => {
  let app: TestApp;
  let formulas: readonly Formula[];
  let tables: Tables;

  beforeAll(async () => {
    app = await openApp(database);
    formulas = (await app.api.get('/api/reference/formulas').expect(200)).body as Formula[];
    tables = (await app.api.get('/api/reference/tables').expect(200)).body as Tables;
  }, 60_000);
  afterAll(() => app.close());

  it('are the published tables', () => {
    expect(tables).toEqual(JSON.parse(JSON.stringify(seeds)));
  });

  it('have one formula for each id, with words, symbols and known sources', () => {
    expect(new Set(formulas.map((formula) => formula.id)).size).toBe(formulas.length);
    for (const { words, symbols, sources, title } of formulas) {
      for (const text of [title, words, symbols]) expect(text).toMatch(/\S/);
      for (const source of sources) expect(tables.sources).toHaveProperty([source]);
    }
  });

  it('are held against values from outside, which are worked out in a thread and kept', async () => {
    const first = (await app.api.get('/api/reference/checks').expect(200)).body as Check[];
    const rows = Object.values(loadChecks(seeds)).flat();
    expect(first.map(({ id }) => id)).toEqual(rows.map(({ id }) => id));
    for (const { ours, source, topic } of first) {
      expect(Number.isFinite(ours)).toBe(true);
      expect(tables.sources).toHaveProperty([source]);
      expect(topic).toMatch(/\S/);
    }
    expect((await app.api.get('/api/reference/checks').expect(200)).body).toEqual(first);
  });

  describe.each([
    ['meat', {}],
    ['layers', LAYERS],
  ])('in a plan for %s', (purpose, more) => {
    let plan: BatchPlan;

    beforeAll(async () => {
      const order = exampleOrder();
      const {
        penId: _pen,
        freezerId: _freezer,
        leaveAgeDays: _age,
        processing: _how,
        ...batch
      } = order.batch;
      const own = purpose === 'meat' ? order.batch : { ...batch, ...more };
      const { body } = await app.api.post('/api/plans/preview').send({ ...order, batch: own });
      plan = body as BatchPlan;
      expect(plan.purpose).toBe(purpose);
    });

    it('explain every quantity', () => {
      const quantities = quantitiesIn(plan);
      expect(quantities.length).toBeGreaterThan(100);
      const ids = formulas.map((formula) => formula.id);
      for (const { formula, sources, label, inputs } of quantities) {
        expect(label).toMatch(/\S/);
        expect(ids).toContain(formula);
        for (const source of sources) expect(tables.sources).toHaveProperty([source]);
        for (const input of inputs) expect(input.value).not.toBeNull(); // NaN is null in JSON
      }
    });

    it('name a source for every quantity that is said to be read somewhere', () => {
      const unsourced = quantitiesIn(plan)
        .filter((each) => ['published', 'second-hand', 'from-memory'].includes(each.mark))
        .filter((each) => each.sources.length === 0)
        .map(({ formula, label, mark }) => `${mark} without a source: ${label} (${formula})`);
      expect([...new Set(unsourced)]).toEqual([]);
    });

    it('explain every daily series', () => {
      const ids = formulas.map((formula) => formula.id);
      const series = plan.daily.map((each) => each.id);
      for (const { formula, sources, values, inputs } of plan.daily) {
        expect(ids).toContain(formula);
        for (const source of sources) expect(tables.sources).toHaveProperty([source]);
        expect(values).not.toContain(null);
        for (const input of inputs) if ('series' in input) expect(series).toContain(input.series);
      }
    });

    it('hold every caution', () => {
      expect(plan.cautions.length).toBeGreaterThan(0);
      for (const key of plan.cautions) expect(tables.cautions).toHaveProperty([key]);
    });

    it('hold a number for every quantity', () => {
      const broken = quantitiesIn(plan).filter((each) => each.value === null);
      expect(broken).toEqual([]);
    });
  });
});
