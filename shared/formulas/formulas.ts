import { dayLengthFormulas } from '../calendar/day-length.js';
import { cattleHeatFormulas } from '../pasture/cattle-heat.js';
import { cattleWaterFormulas } from '../pasture/cattle-water.js';
import { girthFormulas } from '../pasture/weight-of-girth.js';
import { forageMassFormulas } from '../pasture/forage-mass.js';
import { gestationFormulas } from '../pasture/gestation.js';
import { hayFormulas } from '../pasture/hay.js';
import { intakeFormulas } from '../pasture/intake.js';
import { recalibrateFormulas } from '../pasture/recalibrate.js';
import { swardFormulas } from '../pasture/sward-day.js';
import { sizingFormulas } from '../pasture/sizing.js';
import { bedFormulas } from '../plan/pasture/beds.js';
import { baledFormulas } from '../plan/pasture/baled.js';
import { hayFedSinceFormulas } from '../plan/pasture/hay-fed-since.js';
import { hayUntoldFormulas } from '../plan/pasture/hay-untold.js';
import { grassYearsFormulas } from '../plan/pasture/grass-years.js';
import { plainRuleFormulas } from '../plan/pasture/plain-rule.js';
import { coldCattleFormulas } from '../plan/mishap/cold-cattle.js';
import { hayOutsidePlanFormulas } from '../plan/pasture/hay-outside-plan.js';
import { hayRunsOutFormulas } from '../plan/pasture/hay-runs-out.js';
import { hayStoreFormulas } from '../plan/pasture/hay-store.js';
import { hayByWinterFormulas } from '../plan/pasture/hay-by-winter.js';
import { winterGrassFormulas } from '../plan/pasture/winter-grass.js';
import { hayPartFormulas } from '../plan/pasture/hay-part.js';
import { seasonFeedFormulas } from '../plan/pasture/season-feed.js';
import { closerFormulas } from '../plan/pasture/short-of-grass.js';
import { manureFormulas } from '../plan/pasture/manure.js';
import { pensFormulas } from '../plan/pasture/pens-part.js';
import { moveFormulas } from '../plan/pasture/move-quantities.js';
import { seasonRowFormulas } from '../plan/pasture/season-rows.js';
import { hayBesideGrassFormulas } from '../plan/pasture/hay-beside-grass.js';
import { standingFormulas } from '../plan/pasture/standing.js';
import { surplusFormulas } from '../plan/pasture/surplus.js';
import { herdDateFormulas } from '../plan/pasture/herd-dates.js';
import { stockpileFormulas } from '../plan/pasture/stockpile.js';
import { turningFormulas } from '../plan/pasture/turning-points.js';
import { evapotranspirationFormulas } from '../weather/evapotranspiration.js';
import { hotDayFormulas } from '../weather/hot-day.js';
import { frostFreeFormulas } from '../weather/frost-free-days.js';
import { snowFormulas } from '../weather/snow-cover.js';
import { soilTemperatureFormulas } from '../weather/soil-temperature.js';
import { soilWaterFormulas } from '../weather/soil-water.js';
import { arrivalFormulas } from '../plan/arrival-finder.js';
import { billFormulas } from '../plan/bill.js';
import { compareFormulas } from '../plan/compare/compare-formulas.js';
import { costFormulas } from '../plan/cost/cost-formulas.js';
import { penHeatFormulas } from '../plan/pen-heat.js';
import { countedFormulas } from '../plan/counted.js';
import { deliveryFormulas } from '../plan/feed-deliveries.js';
import { feedActualFormulas } from '../plan/feed-year/feed-actual-formulas.js';
import { feedSpentFormulas } from '../plan/feed-spent/feed-spent-formulas.js';
import { feedYearFormulas } from '../plan/feed-year/feed-year-formulas.js';
import { herdCostFormulas } from '../plan/feed-year/herd-costs.js';
import { feedFormulas } from '../plan/feed.js';
import { closeOffFormulas } from '../plan/heat-close-off.js';
import { heatFormulas } from '../plan/heat-energy.js';
import { aroundFormulas, instructionFormulas } from '../plan/heat-instructions.js';
import { heatSeriesFormulas } from '../plan/heat-series.js';
import { clearanceFormulas } from '../plan/lamp-clearance.js';
import { weatherFormulas } from '../plan/outside-weather.js';
import { lampFormulas } from '../plan/lay-lamp.js';
import { layMonthFormulas } from '../plan/lay-months.js';
import { layYearFormulas } from '../plan/lay-years.js';
import { layingFormulas } from '../plan/laying.js';
import { spareFormulas } from '../plan/brooder-spare.js';
import { raisingFormulas } from '../plan/raising-pullets.js';
import { moveOutFormulas } from '../plan/move-out.js';
import { shelterFormulas } from '../plan/shelter.js';
import { carriedFormulas } from '../pasture/carried.js';
import { forageEnergyFormulas } from '../pasture/forage-energy.js';
import { coldFeedFormulas } from '../poultry/cold-feed.js';
import { taskFormulas } from '../plan/tasks/task-hours.js';
import { brooderBoxFormulas } from '../poultry/brooder-box.js';
import { brooderHeatFormulas } from '../poultry/brooder-heat.js';
import { broodingFormulas } from '../poultry/brooding.js';
import { gompertzFormulas } from '../poultry/gompertz.js';
import { growthFormulas } from '../poultry/growth.js';
import { hatchFormulas } from '../poultry/hatch.js';
import { chickBoxFormulas } from '../poultry/chick-box.js';
import { lampZoneFormulas } from '../poultry/lamp-zone.js';
import { growthInAirFormulas } from '../poultry/growth-in-air.js';
import { weighingFormulas } from '../poultry/weighings.js';
import { layFormulas } from '../poultry/lay.js';
import { layConditionFormulas } from '../poultry/lay-conditions.js';
import { layCycleFormulas } from '../poultry/lay-cycles.js';
import { lossFormulas } from '../poultry/losses.js';
import { heatLimitFormulas } from '../plan/heat-limit.js';
import { largestBatchFormulas } from '../plan/largest-batch.js';
import { readyByFormulas } from '../plan/ready-by.js';
import { slotFormulas } from '../plan/slot-weight.js';
import { iceFormulas } from '../poultry/ice.js';
import { processingFormulas } from '../poultry/processing.js';
import { stationFormulas } from '../poultry/stations.js';
import { spaceFormulas } from '../poultry/space.js';
import { rationFormulas } from '../ration/ration-formulas.js';
import { refillFormulas } from '../poultry/refills.js';
import { waterFormulas } from '../poultry/water.js';
import { herdDayFormulas } from '../plan/pasture/herd-day.js';
import { todayFormulas } from '../plan/today/today-formulas.js';
import { jobSetFormulas } from '../plan/work/job-sets.js';
import { groundFormulas } from '../plan/work/ground-quantities.js';
import { workFormulas } from '../plan/work/work-quantities.js';
import { gardenDateFormulas } from '../plan/year/garden-dates.js';
import { yearFrostFormulas } from '../plan/year/year-frost.js';
import { yearFormulas } from '../plan/year/year-weather.js';
import type { Formula } from '../explain/formula.js';
import { plainFormulas } from '../explain/plain-formulas.js';
import { judgementFormulas } from './judgements.js';

const all: readonly Readonly<Record<string, Formula>>[] = [
  cattleHeatFormulas,
  cattleWaterFormulas,
  countedFormulas,
  rationFormulas,
  bedFormulas,
  girthFormulas,
  hotDayFormulas,
  forageMassFormulas,
  gestationFormulas,
  hayFormulas,
  intakeFormulas,
  recalibrateFormulas,
  swardFormulas,
  sizingFormulas,
  hayPartFormulas,
  seasonFeedFormulas,
  closerFormulas,
  coldCattleFormulas,
  hayOutsidePlanFormulas,
  hayRunsOutFormulas,
  hayStoreFormulas,
  hayByWinterFormulas,
  winterGrassFormulas,
  plainRuleFormulas,
  baledFormulas,
  hayUntoldFormulas,
  hayFedSinceFormulas,
  grassYearsFormulas,
  manureFormulas,
  pensFormulas,
  moveFormulas,
  seasonRowFormulas,
  standingFormulas,
  hayBesideGrassFormulas,
  surplusFormulas,
  turningFormulas,
  herdDateFormulas,
  stockpileFormulas,
  evapotranspirationFormulas,
  frostFreeFormulas,
  snowFormulas,
  soilTemperatureFormulas,
  soilWaterFormulas,
  arrivalFormulas,
  aroundFormulas,
  billFormulas,
  compareFormulas,
  costFormulas,
  penHeatFormulas,
  brooderBoxFormulas,
  brooderHeatFormulas,
  broodingFormulas,
  clearanceFormulas,
  closeOffFormulas,
  dayLengthFormulas,
  deliveryFormulas,
  feedSpentFormulas,
  feedYearFormulas,
  feedActualFormulas,
  herdCostFormulas,
  feedFormulas,
  gompertzFormulas,
  growthFormulas,
  hatchFormulas,
  growthInAirFormulas,
  weighingFormulas,
  heatFormulas,
  heatSeriesFormulas,
  instructionFormulas,
  lampZoneFormulas,
  lampFormulas,
  layConditionFormulas,
  layCycleFormulas,
  layFormulas,
  layingFormulas,
  layMonthFormulas,
  layYearFormulas,
  raisingFormulas,
  lossFormulas,
  moveOutFormulas,
  chickBoxFormulas,
  spareFormulas,
  shelterFormulas,
  carriedFormulas,
  forageEnergyFormulas,
  coldFeedFormulas,
  plainFormulas,
  processingFormulas,
  iceFormulas,
  stationFormulas,
  heatLimitFormulas,
  largestBatchFormulas,
  readyByFormulas,
  slotFormulas,
  jobSetFormulas,
  judgementFormulas,
  groundFormulas,
  workFormulas,
  gardenDateFormulas,
  yearFrostFormulas,
  yearFormulas,
  spaceFormulas,
  taskFormulas,
  herdDayFormulas,
  todayFormulas,
  refillFormulas,
  waterFormulas,
  weatherFormulas,
];

/** Every formula of the core. No two share an id. */
export const ALL_FORMULAS: readonly Formula[] = all.flatMap((group) => Object.values(group));

/** Every formula of the core by its id. */
export const FORMULAS: ReadonlyMap<string, Formula> = new Map(
  ALL_FORMULAS.map((formula) => [formula.id, formula]),
);
