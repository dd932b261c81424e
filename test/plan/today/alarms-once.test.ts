import { describe, expect, it } from '@jest/globals';
import { addDays, type PlainDate } from '../../../shared/calendar/plain-date.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { todayOf, withTicks } from '../../../shared/plan/today/today.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { newBrooder, newRequest, tables } from '../../support/factories.js';
import { newGroup, newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';
import { newOwnJob } from '../../support/season-factories.js';

const DAY = '2027-05-12';
const { batch: ordered, farm, climate, facilities } = newRequest({});
const batch = { ...ordered, id: 'chicks', arrivalDate: '2027-05-05', orderedBirds: 80 } as Batch & {
  id: string;
};
const came = { batchId: 'chicks', date: batch.arrivalDate, change: 'arrived', birds: 80 } as const;
const herd = newHerd({ groups: [newGroup({ classId: 'stocker', head: 5 })] });
const paddocks = newPaddocks(4, { areaM2: 3000, forageId: 'mixed' });
const stay = { herdId: herd.id!, paddockId: paddocks[0]!.id! };

type More = Partial<FarmPicture>;
/** What is so on a day, of facts of which none lies after it. */
interface Case {
  readonly of: string;
  readonly key: RegExp;
  readonly has: (on: PlainDate) => More;
}

const told = <Fact extends { readonly date: PlainDate }>(on: PlainDate, ...facts: Fact[]): Fact[] =>
  facts.filter(({ date }) => date <= on);

const grazed = (on: PlainDate, ...stays: { from: PlainDate; to?: PlainDate }[]) => {
  const own = stays.filter(({ from }) => from <= on);
  const now = own.find(({ to }) => to === undefined);
  return {
    paddocks,
    herds: [now ? { ...herd, inPaddockId: stay.paddockId, inSince: now.from } : herd],
    grazings: own.map((each) => ({ ...stay, ...each })),
  };
};

const CASES: readonly Case[] = [
  {
    of: 'a cold thermometer',
    key: /^alarm\/thermometer\//,
    has: (on) => ({
      batches: [batch],
      brooderLooks: told(on, { id: 'look', batchId: 'chicks', date: DAY, underHeatC: 22 }),
    }),
  },
  {
    of: 'a brooder that today’s weather makes too hot',
    key: /^alarm\/hot-today\//,
    has: (on) => ({
      batches: [{ ...batch, arrivalDate: addDays(DAY, -14), brooderId: 'brooder' }],
      facilities: [newBrooder({})],
      climate: {
        ...climate,
        forecast: [0, 1, 2].map((k) => ({
          ...{ date: addDays(on, k), rainMm: 0 },
          ...(addDays(on, k) === DAY ? { minC: 24, maxC: 38 } : { minC: 8, maxC: 18 }),
        })),
      },
    }),
  },
  {
    of: 'losses above the usual',
    key: /^alarm\/losses\//,
    has: (on) => ({
      batches: [batch],
      headChanges: told<FarmPicture['headChanges'][number]>(on, came, {
        ...{ batchId: 'chicks', date: DAY, change: 'died', birds: 12 },
      }),
    }),
  },
  {
    of: 'grass grazed too low',
    key: /^alarm\/too-low\//,
    has: (on) => ({
      ...grazed(on, { from: addDays(DAY, -3) }),
      readings: told(on, { id: 'r', paddockId: stay.paddockId, date: DAY, heightCm: 3 }),
    }),
  },
  {
    of: 'grass entered too soon',
    key: /^alarm\/too-soon\//,
    has: (on) => grazed(on, { from: addDays(DAY, -9), to: addDays(DAY, -5) }, { from: DAY }),
  },
  {
    of: 'frost on what was set out',
    key: /^alarm\/frost\//,
    has: (on) => ({
      climate: {
        ...climate,
        forecast: [0, 1, 2].map((k) => ({
          ...{ date: addDays(on, k), maxC: 14, rainMm: 0 },
          minC: addDays(on, k) === addDays(DAY, 1) ? -2 : 6,
        })),
      },
      jobs: [newOwnJob({ id: 'toms', name: 'Set out', harmedAtOrBelowC: 0, dueOn: DAY })],
      progress: [{ key: 'own/toms', doneOn: addDays(DAY, -4) }],
    }),
  },
  {
    of: 'medicated feed that runs on processing day',
    key: /^alarm\/withdrawal\//,
    has: (on) => ({
      batches: [{ ...batch, arrivalDate: DAY, medicatedWithdrawalDays: 40 }],
      headChanges: told(on, { ...came, date: DAY }),
    }),
  },
  {
    of: 'feed that is out before a trip',
    key: /^alarm\/feed-(out|sooner)\//,
    has: (on) => ({
      batches: [batch],
      headChanges: told(on, came),
      feedBought: told(on, { id: 'b', date: DAY, amount: 1, eachKg: 5 }),
    }),
  },
  {
    of: 'more feed than they should use',
    key: /^alarm\/feed\//,
    has: (on) => ({
      batches: [{ ...batch, arrivalDate: addDays(DAY, -28) }],
      feedOpenings: told(
        on,
        ...[7, 7, 19, 7].map((bags, k) => ({
          ...{ id: `o${k}`, batchId: 'chicks', date: addDays(DAY, 3 * k - 9), bags, bagKg: 5 },
        })),
      ),
    }),
  },
  {
    of: 'weights far below the plan',
    key: /^alarm\/weight\//,
    has: (on) => ({
      batches: [batch],
      headChanges: told(on, came),
      weighings: told(on, { id: 'w', batchId: 'chicks', date: DAY, birds: 30, averageKg: 0.12 }),
    }),
  },
  {
    of: 'a limit of the year that the plans go over, though a bird dies',
    key: /^alarm\/limit\/planned\//,
    has: (on) => ({
      farm: { ...farm, yearLimits: DAY <= on ? { birdsProcessed: 50 } : {} },
      batches: [batch],
      headChanges: told<FarmPicture['headChanges'][number]>(on, came, {
        ...{ batchId: 'chicks', date: addDays(DAY, 1), change: 'died', birds: 3 },
      }),
    }),
  },
  {
    of: 'chicks in a box indoors',
    key: /^alarm\/box-indoors\//,
    has: (on) => ({
      batches: [{ ...batch, arrivalDate: DAY, brooderId: 'brooder' }],
      facilities: [newBrooder({ assumed: ['lengthM'] })],
      headChanges: told(on, { ...came, date: DAY }),
    }),
  },
  {
    of: 'a calf that was due',
    key: /^alarm\/calved\//,
    has: () => ({
      paddocks,
      herds: [
        {
          ...herd,
          groups: [newGroup({ classId: 'dry-cow', head: 1, calvesOn: addDays(DAY, -4) })],
        },
      ],
    }),
  },
];

const shown = (on: PlainDate, more: More, seen: ReadonlyMap<string, PlainDate> = new Map()) => {
  const picture = newPicture({ farm, climate, facilities, today: on, ...more });
  const animals = planAnimals(picture, tables);
  const { keep: _keep, ...plan } = workPlanOf(workOfFarm(picture, tables, animals), 10);
  return withTicks(todayOf(picture, tables, animals, plan), new Map(), seen).attention.map(
    ({ key }) => key,
  );
};

describe('an alarm', () => {
  it.each(CASES)(
    'of $of is silent the day before, said once on its day, and not again once it was seen',
    ({ key, has }) => {
      const on = (day: PlainDate, seen?: ReadonlyMap<string, PlainDate>): string[] =>
        shown(day, has(day), seen).filter((each) => key.test(each));
      expect(on(addDays(DAY, -1))).toEqual([]);
      const said = on(DAY);
      expect(said).toHaveLength(1);
      const seen = new Map(said.map((each) => [each, DAY]));
      expect(on(DAY, seen)).toEqual([]);
      expect(on(addDays(DAY, 1), seen)).toEqual([]);
    },
  );
});
