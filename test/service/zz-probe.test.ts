import { describe, it, beforeAll, afterAll } from '@jest/globals';
import { openApp, type TestApp } from '../support/app.js';
import { databases } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { ODD_VALUES, pathsIn, change } from '../support/any-body.js';
import { exampleOrder, brooderBody, batchBody, saveFarm } from '../support/orders.js';
describe.each(databases())('probe on $name', (database) => {
  let app: TestApp;
  beforeAll(async () => { app = await openApp(database); }, 60000);
  afterAll(async () => { await app.close(); });
  it('probes', async () => {
    const f = await saveFarm(app);
    const L = { ...exampleOrder(), previousArrivalDate: '2027-04-14', occupied: [{ batchName: 'O', facilityId: 'shed-brooder', from: '2027-04-01', to: '2027-04-20' }] };
    const places: [string, object][] = [['/api/plans/preview', L], ['/api/plans/arrivals', { ...exampleOrder(), from: '2027-03-01', to: '2027-03-20', weekday: 3 }], ['/api/farms', newFarm()], [`${f.path}/facilities`, brooderBody()], [`${f.path}/batches`, batchBody({ prices: { perBird: '3', feedPerBag: { starter: '2' } }, orderDate: '2026-10-01' })], [`${f.path}/people`, { name: 'A', away: [{ from: '2027-05-10', to: '2027-05-14' }] }]];
    for (const [path, valid] of places) {
      const bad = new Map<string, string[]>();
      for (const p of pathsIn(valid)) for (const v of [...ODD_VALUES, undefined]) {
        const copy = structuredClone(valid); change(copy, p, v);
        const r = await fetch(app.url + path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(copy) });
        const t = await r.text();
        if (r.status >= 500 || /NaN|Infinity|null,"unit"|Invalid/.test(r.status < 300 ? t : '')) { const k = `${r.status} ${p.join('.')}`; bad.set(k, [...(bad.get(k) ?? []), JSON.stringify(v) ?? 'left out']); }
      }
      process.stderr.write(path + '\n' + [...bad].map(([k, v]) => `   ${k}: ${v.map((x) => x.slice(0, 30)).join(' ')}`).join('\n') + '\n');
    }
  }, 300000);
});
