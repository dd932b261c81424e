import 'reflect-metadata';
import { readFileSync } from 'node:fs';
import { parse } from 'jsonc-parser';
import { loadTables } from '../../src/reference/load-tables.js';
import { pictureOfDocument } from '../../src/picture/farm-document.js';
import { planAnimals } from '../../shared/plan/farm/animal-plans.js';
import { workOutlook } from '../../shared/plan/farm/work-of-farm.js';
const tables: any = structuredClone(loadTables());
tables.work.horizonDays.value = Number(process.argv[3] ?? 400);
const text = readFileSync(process.argv[2]!, 'utf8'); const document = parse(text, undefined, { allowTrailingComma: true });
if (document.sample) Object.assign(document, document.sample);
const picture = document.climate ? document : pictureOfDocument(document, tables, Date.UTC(2026, 10, 27));
let t = performance.now();
const animals = planAnimals(picture, tables);
console.log('animals', performance.now() - t);
for (let k = 0; k < 2; k++) {
t = performance.now();
const c0 = process.cpuUsage();
const o = workOutlook(picture, tables, animals, [], (s: number) => process.env.P && console.log(s.toFixed(2), (performance.now() - t).toFixed(0)));
const c = process.cpuUsage(c0);
console.log('outlook', performance.now() - t, 'cpu', (c.user + c.system) / 1000, o.years, o.jobs.length);
if (k == 1) for (const j of o.jobs.filter((j) => j.chance < 0.95)) console.log(j.name, '|', j.belongsTo?.name, j.latest, 'p', j.chance.toFixed(2), 'lost', j.lost.toFixed(2), 'partly', j.partly.toFixed(2), j.partOfIt.toFixed(2), 'win', j.windowDays, j.suitableDays?.half, j.isFewDays, j.lacks, j.waitsFor, JSON.stringify(j.better.map((b) => [b.kind, b.personId ?? b.date ?? b.key ?? b.birds, +b.chance.toFixed(2), +b.standardError.toFixed(3)])));
}
