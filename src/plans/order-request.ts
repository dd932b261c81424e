import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { Person } from '../../shared/farm/farm.js';
import { checkCircuit, checkMaterials } from '../../shared/plan/check-facilities.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import type { FarmDto } from '../farms/farm.dto.js';
import type { OrderDto } from './order.dto.js';

/** A self-contained order as a plan request: used by the preview and by the terminal alike. */
export function requestOfOrder(order: OrderDto, tables: Tables, nowMs: number): PlanRequest {
  const { farm } = order;
  if (!farm) {
    throw new FieldError([
      {
        field: 'farm',
        code: 'missing',
        given: undefined,
        fix: 'Give a farm, or the id of a saved one as farmId.',
      },
    ]);
  }
  return {
    ...aroundBatch(order, farm, tables),
    batch: order.batch,
    today: order.today ?? plainDateAt(nowMs, farm.timeZone),
    ...(order.previousArrivalDate === undefined
      ? {}
      : { previousArrivalDate: order.previousArrivalDate }),
  };
}

type Around = Omit<PlanRequest, 'batch' | 'today' | 'previousArrivalDate'>;

// A checked farm object belongs to one order's surroundings and comes back with each order like it.
const known = new WeakMap<FarmDto, Around>();

function aroundBatch(order: OrderDto, farm: FarmDto, tables: Tables): Around {
  let around = known.get(farm);
  if (!around) known.set(farm, (around = workOutAround(order, farm, tables)));
  return around;
}

function workOutAround(order: OrderDto, farm: FarmDto, tables: Tables): Around {
  const facilities = (order.facilities ?? []).map((facility, i): Facility => {
    const path = `facilities.${i}`;
    if (facility.id === undefined) {
      throw new FieldError([
        {
          field: `${path}.id`,
          code: 'missing',
          given: undefined,
          fix: 'Give each facility an id of your own, so that the batch can name it.',
        },
      ]);
    }
    checkMaterials(facility as Facility, tables, `${path}.`);
    return facility as Facility;
  });
  checkUnique(facilities);
  facilities.forEach((facility, i) => checkCircuit(facility, facilities, `facilities.${i}.`));
  const people = (order.people ?? []).map((person, i): Person => ({
    id: person.id ?? `person-${i + 1}`,
    name: person.name,
    away: person.away,
  }));
  return {
    farm,
    climate: climateFromMonthlyMeans(
      farm.monthlyMinC,
      farm.monthlyMaxC,
      tables.heat.coldNightMarginK.value,
    ),
    facilities,
    people,
    occupied: order.occupied ?? [],
    tables,
  };
}

function checkUnique(facilities: readonly Facility[]): void {
  const seen = new Set<string>();
  facilities.forEach(({ id }, i) => {
    if (seen.has(id)) {
      throw new FieldError([
        {
          field: `facilities.${i}.id`,
          code: 'conflict',
          given: id,
          fix: 'Two facilities have this id: give each its own.',
        },
      ]);
    }
    seen.add(id);
  });
}
