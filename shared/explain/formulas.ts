import { dayLengthFormulas } from '../calendar/day-length.js';
import { billFormulas } from '../plan/bill.js';
import { deliveryFormulas } from '../plan/feed-deliveries.js';
import { feedFormulas } from '../plan/feed.js';
import { heatSeriesFormulas } from '../plan/heat-days.js';
import { heatFormulas } from '../plan/heat.js';
import { weatherFormulas } from '../plan/outside-weather.js';
import { layingFormulas } from '../plan/laying.js';
import { moveOutFormulas } from '../plan/move-out.js';
import { taskFormulas } from '../plan/tasks.js';
import { brooderHeatFormulas } from '../poultry/brooder-heat.js';
import { broodingFormulas } from '../poultry/brooding.js';
import { gompertzFormulas } from '../poultry/gompertz.js';
import { growthFormulas } from '../poultry/growth.js';
import { layFormulas } from '../poultry/lay.js';
import { lossFormulas } from '../poultry/losses.js';
import { processingFormulas } from '../poultry/processing.js';
import { spaceFormulas } from '../poultry/space.js';
import { waterFormulas } from '../poultry/water.js';
import type { Formula } from './formula.js';
import { plainFormulas } from './plain-formulas.js';

const all: readonly Readonly<Record<string, Formula>>[] = [
  billFormulas,
  brooderHeatFormulas,
  broodingFormulas,
  dayLengthFormulas,
  deliveryFormulas,
  feedFormulas,
  gompertzFormulas,
  growthFormulas,
  heatFormulas,
  heatSeriesFormulas,
  layFormulas,
  layingFormulas,
  lossFormulas,
  moveOutFormulas,
  plainFormulas,
  processingFormulas,
  spaceFormulas,
  taskFormulas,
  waterFormulas,
  weatherFormulas,
];

/** Every formula of the core by its id. */
export const FORMULAS: ReadonlyMap<string, Formula> = new Map(
  all.flatMap((group) => Object.values(group).map((formula) => [formula.id, formula] as const)),
);
