import { findArrivals, type ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import type { Tables } from '../../shared/tables/tables.js';
import type { PastureOrderDto } from '../pasture/pasture.dto.js';
import type { HouseholdOrderDto } from '../season/household-order.dto.js';
import { planPasture } from '../../shared/plan/pasture/pasture-plan.js';
import type { PastureRequest } from '../../shared/plan/pasture/pasture-request.js';
import { compareSeasons, type SeasonComparison } from '../../shared/plan/season/compare-seasons.js';
import { seasonOutlook, type OutlookRequest } from '../../shared/plan/season/season-outlook.js';
import { planSeason } from '../../shared/plan/season/season-plan.js';
import { climateFromDaily, type Climate, type DailyWeather } from '../../shared/weather/climate.js';
import { outlinesOfGeoJson, type GeoJsonOutlines } from '../paddocks/geojson.js';
import { parseDailyCsv, parseForecastCsv, type ImportedDay } from '../weather/daily-csv.js';
import type { SeasonRequest } from '../../shared/plan/season/season-request.js';

/** What was sent whole, with what it is planned with. */
interface Ordered<Order> {
  readonly order: Order;
  readonly tables: Tables;
  readonly nowMs: number;
}
interface ArrivalsAsked {
  readonly request: PlanRequest;
  readonly options: Parameters<typeof findArrivals>[1];
}

/**
 * Long computations that are done away from the thread that answers requests, by name. Each takes
 * one value and returns one, both plain data, because they are copied from thread to thread.
 */
export const TASKS = {
  planPasture: (request: PastureRequest) => planPasture(request),
  planSeason: (request: SeasonRequest) => planSeason(request),
  seasonOutlook: (request: OutlookRequest) => seasonOutlook(request),
  compareSeasons: (requests: { now: SeasonRequest; then: SeasonRequest }): SeasonComparison =>
    compareSeasons(requests.now, requests.then),
  checkLargeBody: async (asked: { name: string; body: unknown }): Promise<void> =>
    (await import('./large-bodies.js')).checkLargeBody(asked),
  outlinesOfGeoJson: (document: unknown): GeoJsonOutlines => outlinesOfGeoJson(document),
  findArrivals: ({ request, options }: ArrivalsAsked): ArrivalWeek[] =>
    findArrivals(request, options),
  planPastureOrder: async ({ order, tables, nowMs }: Ordered<PastureOrderDto>) =>
    planPasture(
      (await import('../pasture/pasture-order.js')).requestOfPasture(order, tables, nowMs),
    ),
  planHousehold: async ({ order, tables, nowMs }: Ordered<HouseholdOrderDto>) =>
    planSeason(
      (await import('../season/household-order.js')).seasonOfHousehold(order, tables, nowMs)
        .request,
    ),
  climateFromDaily: ({
    history,
    ...source
  }: {
    history: readonly DailyWeather[];
    way: 'fetched' | 'csv';
    label: string;
  }): Climate => climateFromDaily(history, source),
  parseDailyCsv: ({ text, today }: { text: string; today: string }): ImportedDay[] =>
    parseDailyCsv(text, today),
  parseForecastCsv: ({ text, today }: { text: string; today: string }): ImportedDay[] =>
    parseForecastCsv(text, today),
};

export type TaskName = keyof typeof TASKS;
export type TaskInput<Name extends TaskName> = Parameters<(typeof TASKS)[Name]>[0];
export type TaskOutput<Name extends TaskName> = Awaited<ReturnType<(typeof TASKS)[Name]>>;
