import 'reflect-metadata';
import { readFileSync } from 'node:fs';
import { parse } from 'jsonc-parser';
import { loadTables } from '../../src/reference/load-tables.js';
import { pictureOfDocument } from '../../src/picture/farm-document.js';
import { planAnimals } from '../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../shared/plan/farm/work-of-farm.js';
import { fitAll } from '../../shared/plan/work/work-plan.js';
import { workFrame, daysOfWork } from '../../shared/plan/work/days-of-work.js';
import { yearsOf } from '../../shared/plan/work/years-of-weather.js';
import { playedWork } from '../../shared/plan/work/played-work.js';
import { costOf, finishDay } from '../../shared/schedule/work.js';
import { placeInOrder } from '../../shared/schedule/work-placing.js';
import { WorkDays } from '../../shared/schedule/work-days.js';
import { inOrderOf } from '../../shared/schedule/work-search.js';
import { workNetwork } from '../../shared/schedule/work-network.js';
const tables: any = structuredClone(loadTables());
tables.work.horizonDays.value = 300;
for (const file of ['/tmp/w/sky-sample.json', 'test/support/examples/household.jsonc'])
for (const factor of [1, 0.6]) {
  const document = parse(readFileSync(file, 'utf8'), undefined, { allowTrailingComma: true });
  const picture = document.climate ? structuredClone(document) : pictureOfDocument(document, tables, Date.UTC(2026, 10, 27));
  const animals = planAnimals(picture, tables);
  const request: any = { ...workOfFarm(picture, tables, animals), history: [] };
  delete request.kept;
  const { work } = fitAll(request, 200);
  for (const w of work.problem.workers) for (let d = 0; d < 300; d++) { (w.minutes as any)[d] = Math.round(w.minutes[d]! * factor); (w.lightMinutes as any)[d] = Math.round(w.lightMinutes[d]! * factor); }
  const frame = workFrame(request, work.problem.days);
  const { runs } = yearsOf(request, frame, 100);
  const years = runs.map((run) => daysOfWork(frame, run));
  const played = playedWork(work, years);
  const t = performance.now();
  const base = played.play();
  const ms = performance.now() - t;
  let cost = 0, inTime = 0, n = 0, lost = 0;
  base.forEach((p, i) => { const job = played.problem.jobs[i]!; if (job.pinned || job.dueDay < 0 || job.dueDay >= 300) return; p.finishes.forEach((f) => { cost += costOf(job, f) / 100; n++; if (0 <= f && f <= job.dueDay) inTime++; if (f < 0) lost++; }); });
  // the plan's order with every day known
  const network = workNetwork(work.problem.jobs);
  const list = inOrderOf(network, Float64Array.from(work.needs, (_, i) => work.fitted.plan[i]![0]?.day ?? played.windows[i]!.latestDay));
  const days = new WorkDays(work.problem);
  let known = 0, kIn = 0;
  for (const suits of played.suits) {
    const jobs = played.problem.jobs.map((job, i) => suits[i] ? { ...job, suits: suits[i]! } : job);
    const { pieces } = placeInOrder({ ...played.problem, jobs }, days, list);
    jobs.forEach((job, i) => { if (job.pinned || job.dueDay < 0 || job.dueDay >= 300) return; const f = finishDay(pieces[i]!); known += costOf(job, f) / 100; if (0 <= f && f <= job.dueDay) kIn++; });
  }
  console.log(file.slice(-20), factor, 'plan', work.fitted.cost.toFixed(0), 'played', cost.toFixed(0), 'in time', (inTime / n).toFixed(3), 'lost', (lost / n).toFixed(3), '| known', known.toFixed(0), (kIn / n).toFixed(3), 'ms', ms.toFixed(0));
}
