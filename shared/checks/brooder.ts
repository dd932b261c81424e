import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { Batch } from '../farm/batch.js';
import type { Brooder, HeatSourceKind } from '../farm/facility.js';
import type { Farm } from '../farm/farm.js';
import { planContext } from '../plan/plan-context.js';
import { planHeat } from '../plan/heat.js';
import { ventilationWPerK } from '../poultry/brooder-heat.js';
import { fluxBelowLampWPerM2, riseBelowLampK } from '../poultry/lamp-zone.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import type { Given, Topic } from './given.js';

const J_PER_MJ = 1e6;
const SECONDS_PER_DAY = 86_400;

/** Rays of lamps, heat of fresh air, and what whole plans use for each chick. */
export const brooderChecks: Topic = {
  title: 'Heat in the brooder',
  by: {
    'flux-below-lamp': ({ tables, number }) =>
      fluxBelowLampWPerM2(tables.heat.radiant, number('watts'), number('heightM')),
    'under-lamp': (given) => given.number('airC') + riseAt(given, given.number('heightM')),
    'cooler-when-raised': (given) => {
      const heightM = given.number('heightM');
      return riseAt(given, heightM) - riseAt(given, heightM + given.number('raisedM'));
    },
    'propane-of-fresh-air': ({ tables, number }) => {
      const watts = ventilationWPerK(number('m3PerH'), 0) * (number('toC') - number('fromC'));
      return (watts * SECONDS_PER_DAY) / J_PER_MJ / tables.heat.propane.MJPerL;
    },
    'kwh-a-chick': (given) => kWhAChick(given, given.text('arrivalDate')),
    'kwh-a-chick-of-year': kWhAChickOfYear,
  },
};

const riseAt = ({ tables, number }: Given, heightM: number): number =>
  riseBelowLampK(tables.heat.radiant, number('watts'), heightM);

/** Mean over the flocks of a year, which follow each other without a gap. */
function kWhAChickOfYear(given: Given): number {
  const flocks = given.number('flocks');
  const all = Array.from({ length: flocks }, (_, flock) =>
    kWhAChick(given, addDays('2027-01-01', Math.round((flock * 365) / flocks))),
  );
  return all.reduce((a, b) => a + b, 0) / flocks;
}

/** Energy of a whole plan of a mild place, for each chick. */
function kWhAChick({ tables, number, text }: Given, arrivalDate: PlainDate): number {
  const kind = text('kind') as HeatSourceKind;
  const chicks = number('chicks');
  const isGas = kind === 'gas';
  const buildUp = { rM2KPerW: number('rM2KPerW') };
  const brooder: Brooder = {
    ...{ kind: 'brooder', id: 'brooder', name: 'Brooder', walls: buildUp, roof: buildUp },
    lengthM: number('lengthM'),
    widthM: number('widthM'),
    heightM: number('heightM'),
    standsIn: isGas ? 'outdoors' : 'unheated-building',
    // Houses of broilers are brooded in a part of their length at first.
    closesOff: isGas,
    heat: { kind, wattsEach: number('wattsEach'), count: number('count'), thermostat: true },
  };
  const batch: Batch = {
    ...{ name: 'Check', purpose: 'meat', strainId: 'fast-meat', sex: 'straight-run' },
    ...{ wantedBirds: chicks, orderedBirds: chicks, hatchToArrivalDays: 1 },
    ...{ arrivalDate, brooderId: brooder.id },
    ...(isGas ? { broodingScheduleId: 'whole-house' } : {}),
  };
  const heat = planHeat(
    planContext({
      ...{
        farm: MILD,
        batch,
        tables,
        facilities: [brooder],
        people: [],
        occupied: [],
        packed: [],
        products: [],
      },
      climate: climateFromMonthlyMeans(
        MILD.monthlyMinC,
        MILD.monthlyMaxC,
        tables.heat.coldNightMarginK.value,
      ),
      today: batch.arrivalDate,
    }),
  ).part;
  return heat!.energyTotal.value / chicks;
}

/** A place with mild springs. */
const MILD: Farm = {
  ...{ name: 'Check', latitudeDeg: 35, longitudeDeg: -85, elevationM: 100 },
  ...{ timeZone: 'UTC', units: 'metric', currency: 'USD' },
  ...{ electricityPricePerKWh: '0', gasPricePerL: '0', noDeliveryDates: [] },
  ...{ lastFrost: '04-10', firstFrost: '10-30' },
  monthlyMinC: [0, 1, 5, 9, 14, 18, 20, 20, 17, 10, 5, 1],
  monthlyMaxC: [11, 13, 18, 23, 27, 31, 33, 33, 29, 24, 18, 12],
};
