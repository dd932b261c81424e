import { loadTables } from '../../src/reference/load-tables.js';
import { chanceChecks } from '../../src/cli/chance-checks.js';
import { rowsIn } from '../../src/cli/read-rows.js';
const t = performance.now(); const c0 = process.cpuUsage();
for (const c of chanceChecks(rowsIn('/work/shared/reference'), loadTables())) console.log(c.id, 'told', c.ours.toFixed(3), 'counted', c.theirs.toFixed(3), c.standing, c.where);
console.log(performance.now() - t, process.cpuUsage(c0).user / 1000);
