import type { Batch } from '../../shared/farm/batch.js';
import type { Brooder, Facility } from '../../shared/farm/facility.js';
import type { Farm } from '../../shared/farm/farm.js';
import { climateFromMonthlyMeans, type Climate } from '../../shared/weather/climate.js';
import { loadTables } from '../../src/reference/load-tables.js';
import type { BatchCase } from './pictures.js';

export const tables = loadTables();

/** A valid farm, invented. A test writes only what it is about. */
export function newFarm(more: Partial<Farm> = {}): Farm {
  return {
    name: 'Test farm',
    latitudeDeg: 42.9,
    longitudeDeg: -75.3,
    elevationM: 0,
    timeZone: 'America/New_York',
    units: 'metric',
    currency: 'USD',
    electricityPricePerKWh: '0.20',
    gasPricePerL: '0.80',
    monthlyMinC: [-11, -10.5, -5.5, 0.8, 6.7, 12, 14.4, 13.6, 9.6, 3.9, -0.8, -7],
    monthlyMaxC: [-1.5, -0.3, 4.8, 12.3, 19.3, 23.8, 26.1, 25, 20.9, 13.9, 6.9, 0.9],
    lastFrost: '05-20',
    firstFrost: '09-28',
    noDeliveryDates: [],
    ...more,
  };
}

export function newBrooder(more: Partial<Brooder> = {}): Brooder {
  return {
    kind: 'brooder',
    id: 'brooder',
    name: 'Brooder',
    lengthM: 3,
    widthM: 2,
    heightM: 0.6,
    walls: { layers: [{ materialId: 'plywood', thicknessMm: 12 }] },
    roof: { layers: [{ materialId: 'plywood', thicknessMm: 12 }] },
    standsIn: 'unheated-building',
    heat: { kind: 'lamp', wattsEach: 250, count: 4, thermostat: false },
    ...more,
  };
}

export function newBatch(more: Partial<Batch> = {}): Batch {
  return {
    name: 'Test batch',
    purpose: 'meat',
    strainId: 'fast-meat',
    sex: 'straight-run',
    wantedBirds: 100,
    arrivalDate: '2027-05-05',
    hatchToArrivalDays: 1,
    ...more,
  };
}

/** Weather of the farm's months: one object for the same months, as all batches of a farm share it. */
function climateOf({ monthlyMinC, monthlyMaxC }: Farm): Climate {
  const key = JSON.stringify([monthlyMinC, monthlyMaxC]);
  const climate = CLIMATES.get(key) ?? climateFromMonthlyMeans(monthlyMinC, monthlyMaxC, 6);
  CLIMATES.set(key, climate);
  return climate;
}
const CLIMATES = new Map<string, Climate>();

/** A valid plan request on a valid farm. */
export function newRequest(
  more: Partial<Omit<BatchCase, 'batch' | 'farm'>> & {
    batch?: Partial<Batch>;
    farm?: Partial<Farm>;
  } = {},
): BatchCase {
  const farm = newFarm(more.farm);
  const facilities: readonly Facility[] = more.facilities ?? [newBrooder()];
  return {
    climate: more.climate ?? climateOf(farm),
    products: [],
    people: [],
    occupied: [],
    packed: [],
    tables,
    today: '2026-11-25',
    ...more,
    farm,
    facilities,
    batch: newBatch(more.batch),
  };
}
