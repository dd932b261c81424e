import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { addDays, plainDateAt, type PlainDate } from '../../shared/calendar/plain-date.js';
import { grazingsOf } from '../../shared/farm/herd-places.js';
import { expectedBirds, lastLeft } from '../../shared/farm/head-count.js';
import type { KeptPlan } from '../../shared/farm/kept-plan.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import {
  brooderLooksOf,
  calvingsToldOf,
  heatOutsOf,
  eggCountsOf,
  feedBoughtOf,
  herdFeedBoughtOf,
  feedOpeningsOf,
  groundChecksOf,
  headChangesOf,
  holding,
  mowingsOf,
  progressOf,
  treatedSince,
  treatmentsOf,
  weighingsOf,
  type FactOf,
  type ToldFact,
  type ToldKind,
} from '../../shared/farm/told-fact.js';
import { TOLD_KINDS } from '../../shared/farm/told-kinds.js';
import { withThoseMoved } from '../../shared/farm/treated-moved.js';
import {
  daysBackOf,
  FURTHEST_DAYS,
  isHistory,
  seasonsSince,
} from '../../shared/plan/planning-day.js';
import { MAX_PASTURE_DAYS } from '../../shared/plan/pasture/check-pasture.js';
import { BatchesService } from '../batches/batches.service.js';
import { Database } from '../database/database.js';
import { FacilitiesService } from '../facilities/facilities.service.js';
import type { FarmEntity } from '../farms/farm.entity.js';
import type { FarmView } from '../farms/farm.dto.js';
import { FarmsService, type FarmState } from '../farms/farms.service.js';
import { GrassReadingsService } from '../grass-readings/grass-readings.service.js';
import { HandoversService } from '../handovers/handovers.service.js';
import { CowsService } from '../herds/cows.service.js';
import { HerdsService } from '../herds/herds.service.js';
import { JobsService } from '../jobs/jobs.service.js';
import { PaddocksService } from '../paddocks/paddocks.service.js';
import { ProductsService } from '../products/products.service.js';
import { SuppliersService } from '../suppliers/suppliers.service.js';
import { PeopleService } from '../people/people.service.js';
import { publicHolidays } from '../holidays/holidays.js';
import { KeptPlanEntity, toKeptPlan } from '../work/kept-plan.entity.js';
import { ToldService } from '../told/told.service.js';
import { WeatherService } from '../weather/weather.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';

/** A saved farm's picture, and a key that changes with it: plans made from it are kept by the key. */
export interface SavedPicture {
  readonly key: string;
  /** Names this one state, whatever else a farm comes to be. */
  readonly mark: string;
  readonly revision: number;
  readonly picture: FarmPicture & { readonly farm: FarmView };
}

/** Pictures of farms from the database, each built once for a revision of its farm and a day. */
@Injectable()
export class PicturesService {
  private readonly pictures = new SharedAnswers<SavedPicture>(50);
  /** The last picture of each farm: after an entry only what the entry changes is read again. */
  private readonly last = new LRUCache<string, SavedPicture>({ max: 20 });
  private readonly marked = new LRUCache<string, SavedPicture>({ max: 50 });

  constructor(
    private readonly database: Database,
    private readonly farms: FarmsService,
    private readonly facilities: FacilitiesService,
    private readonly products: ProductsService,
    private readonly suppliers: SuppliersService,
    private readonly people: PeopleService,
    private readonly batches: BatchesService,
    private readonly paddocks: PaddocksService,
    private readonly herds: HerdsService,
    private readonly cows: CowsService,
    private readonly readings: GrassReadingsService,
    private readonly jobs: JobsService,
    private readonly handovers: HandoversService,
    private readonly told: ToldService,
    private readonly weather: WeatherService,
  ) {}

  async of(farmId: string): Promise<SavedPicture> {
    const key = keyOf(await this.farms.findState(farmId));
    return this.pictures.of(key, () =>
      this.database.snapshot((manager) => this.read(farmId, manager)),
    );
  }

  /** The picture of a mark, as long as it is remembered. */
  ofMark(farmId: string, mark: string): SavedPicture | undefined {
    const found = this.marked.get(mark);
    return found?.picture.farm.id === farmId ? found : undefined;
  }

  private async read(farmId: string, manager: EntityManager): Promise<SavedPicture> {
    // Read again: a change may have come in between.
    const farm = await this.farms.findOne(farmId);
    const picture = (await this.afterTelling(farm, manager)) ?? (await this.build(farm, manager));
    const saved = { key: keyOf(farm), mark: randomUUID(), revision: farm.revision, picture };
    this.last.set(farmId, saved);
    this.marked.set(saved.mark, saved);
    return saved;
  }

  /** The last picture with what was told since; undefined where more than that may have changed. */
  private async afterTelling(
    farm: FarmView,
    manager: EntityManager,
  ): Promise<SavedPicture['picture'] | undefined> {
    const before = this.last.get(farm.id);
    if (before?.picture.today !== todayOf(farm)) return undefined;
    const kinds = this.told.changes.between(farm.id, before.revision, farm.revision);
    if (!kinds || [...kinds].some((kind) => !TOLD_ALONE.has(kind))) return undefined;
    const parts: TellingParts[] = [];
    for (const part of PARTS)
      if (part.kinds.some((kind) => kinds.has(kind)))
        parts.push(
          part.of(await this.factsOf(farm.id, part, before.picture.today), before.picture),
        );
    const wholes: WholeParts[] = [];
    for (const { kinds: of, read } of this.wholes)
      if (of.some((kind) => kinds.has(kind))) wholes.push(await read(farm, before.picture.today));
    const keptPlans = await keptPlansOf(farm.id, manager);
    return Object.assign({}, before.picture, ...parts, ...wholes, { farm, keptPlans });
  }

  /** What was told as far back as any plan that is still made goes. */
  private factsOf(farmId: string, { kinds }: Telling, today: PlainDate): Promise<ToldFact[]> {
    // Hens are planned for longer, and how many there are goes by all that was told of them.
    const days = kinds.includes('arrived') ? daysBackOf({ purpose: 'layers' }) : FURTHEST_DAYS;
    return this.told.factsSince(farmId, addDays(today, -days - EARLY_DAYS), kinds);
  }

  /** Parts of a picture that go by what was told in all years, and by rows of their own. */
  private readonly wholes: readonly Whole[] = [
    {
      kinds: ['herd-move', 'cattle-left'],
      read: async ({ id: farmId, revision }, today) => {
        const moves = await this.told.movesOf(farmId, revision);
        const paddocks = await this.paddocks.findAll(farmId, moves);
        const paddockIds = paddocks.map(({ id }) => id);
        const herds = await this.herds.findAll(farmId, { moves, paddockIds });
        const grazings = grazingsOf(moves).filter(({ to = today }) => seasonsSince(today) <= to);
        return { paddocks, herds, grazings };
      },
    },
    {
      kinds: ['cattle-left'],
      read: async ({ id: farmId }, today) => {
        const left = holding(await this.told.factsOf(farmId, 'cattle-left'));
        const gone = new Set(left.map(({ details }) => details.cowId));
        const cows = (await this.cows.findAll(farmId)).filter(({ id }) => !gone.has(id));
        return { cows, cattleLeft: left.filter(({ on }) => treatedSince(today) <= on) };
      },
    },
    {
      // Some are told with the moves.
      kinds: ['grass-reading', 'herd-move'],
      read: async ({ id: farmId, revision }, today) => ({
        readings: await this.readings.findAll(farmId, seasonsSince(today), revision),
      }),
    },
    {
      kinds: ['paddock-mown'],
      read: async ({ id: farmId }, today) => ({
        mowings: mowingsOf(
          await this.told.factsSince(farmId, seasonsSince(today), ['paddock-mown']),
        ),
      }),
    },
    {
      kinds: ['work-progress'],
      read: async ({ id: farmId }) => ({
        jobs: (await this.jobs.findAll(farmId)).filter(
          ({ restingSince }) => restingSince === undefined,
        ),
        progress: progressOf(await this.told.factsOf(farmId, 'work-progress')),
      }),
    },
  ];

  private async build(farm: FarmView, manager: EntityManager): Promise<SavedPicture['picture']> {
    const farmId = farm.id;
    const today = todayOf(farm);
    // One after another: they share the connection of the snapshot.
    const climate = await this.weather.climateOf(farm);
    const facilities = await this.facilities.findAll(farmId);
    const products = await this.products.findAll(farmId);
    const suppliers = await this.suppliers.findAll(farmId);
    const people = await this.people.findAll(farmId);
    const batches = await this.batches.findAll(farmId);
    const row = await this.farms.findRow(farmId);
    const handovers = await this.handovers.findAll(farmId);
    const wholes: WholeParts[] = [];
    for (const { read } of this.wholes) wholes.push(await read(farm, today));
    const whole = Object.assign({}, ...wholes) as Required<WholeParts>;
    const keptPlans = await keptPlansOf(farmId, manager);
    let told: TellingParts = {};
    for (const part of PARTS) {
      const facts = await this.factsOf(farmId, part, today);
      told = { ...told, ...part.of(facts, { headChanges: [], ...told, batches, today }) };
    }
    return {
      today,
      farm,
      climate,
      facilities,
      products,
      suppliers,
      people,
      publicHolidays: publicHolidays(farm, today),
      batches,
      ...(told as Required<TellingParts>),
      ...whole,
      pastureChoices: choicesOf(row, whole.paddocks, today),
      handovers,
      keptPlans,
    };
  }
}

type WholeParts = Partial<
  Pick<
    FarmPicture,
    | 'paddocks'
    | 'herds'
    | 'cows'
    | 'cattleLeft'
    | 'grazings'
    | 'readings'
    | 'mowings'
    | 'jobs'
    | 'progress'
  >
>;

interface Whole {
  readonly kinds: readonly (typeof OF_WHOLES)[number][];
  readonly read: (farm: FarmView, today: PlainDate) => Promise<WholeParts>;
}

/** Kinds of which such a part is made. */
const OF_WHOLES = [
  'herd-move',
  'cattle-left',
  'grass-reading',
  'paddock-mown',
  'work-progress',
] as const satisfies readonly ToldKind[];

/** Parts of a picture that are made of nothing but what was told. */
type TellingParts = Partial<
  Pick<
    FarmPicture,
    | 'headChanges'
    | 'brooderLooks'
    | 'heatOuts'
    | 'weighings'
    | 'eggCounts'
    | 'feedOpenings'
    | 'feedBought'
    | 'herdFeedBought'
    | 'groundChecks'
    | 'treatments'
    | 'calvings'
  >
>;

interface Telling {
  readonly kinds: readonly ToldKind[];
  readonly of: (facts: readonly ToldFact[], farm: Around) => TellingParts;
}

/** What such a part goes by beside what was told of it. */
type Around = Pick<FarmPicture, 'batches' | 'today' | 'headChanges'>;

const telling = <Kind extends ToldKind>(
  kinds: readonly Kind[],
  of: (facts: FactOf<Kind>[], farm: Around) => TellingParts,
): Telling => ({ kinds, of: of as Telling['of'] });

/** A box may be told of some days before the day it was ordered for. */
const EARLY_DAYS = 31;

/** What was told of a batch that came years ago is history: no plan goes by it. Heads come first. */
const PARTS: readonly Telling[] = [
  telling(['arrived', 'died', 'processed', 'gone'], (facts, { batches, today }) => ({
    headChanges: headChangesOf(facts).filter(isOf(batches, today)),
  })),
  telling(['brooder-seen'], (facts, { batches, today }) => ({
    brooderLooks: brooderLooksOf(facts, today).filter(isOf(batches, today)),
  })),
  telling(['heat-works'], (facts, { batches, today }) => ({
    heatOuts: heatOutsOf(facts).filter(isOf(batches, today)),
  })),
  telling(['weighed'], (facts, { batches, today }) => ({
    weighings: weighingsOf(facts).filter(isOf(batches, today)),
  })),
  telling(['feed-opened'], (facts, farm) => ({
    feedOpenings: feedOpeningsOf(facts).filter(isDaily(farm)),
  })),
  telling(['bought'], (facts, { today }) => ({
    feedBought: feedBoughtOf(facts, today),
    herdFeedBought: herdFeedBoughtOf(facts, today),
  })),
  telling(['eggs-counted'], (facts, farm) => ({
    eggCounts: eggCountsOf(facts).filter(isDaily(farm)),
  })),
  telling(['treated', 'row-changed'], (facts, { today }) => ({
    treatments: withThoseMoved(
      treatmentsOf(
        facts.filter((fact) => fact.kind === 'treated'),
        treatedSince(today),
      ),
      facts.filter((fact) => fact.kind === 'row-changed'),
    ),
  })),
  telling(['calved'], (facts, { today }) => ({ calvings: calvingsToldOf(facts, today) })),
  telling(['ground-check'], (facts) => ({ groundChecks: groundChecksOf(facts) })),
];

/** Kinds that change nothing of a picture but such a part, and those that no picture holds. */
const TOLD_ALONE: ReadonlySet<ToldKind> = new Set([
  ...PARTS.flatMap(({ kinds }) => kinds),
  ...OF_WHOLES,
  ...(Object.keys(TOLD_KINDS) as ToldKind[]).filter((kind) => TOLD_KINDS[kind].leavesPlans),
]);

const keptPlansOf = async (farmId: string, manager: EntityManager): Promise<KeptPlan[]> => {
  const order = { plannedOn: 'DESC' } as const;
  const rows = await manager.find(KeptPlanEntity, { where: { farmId }, order, take: 2 });
  return rows.map(toKeptPlan);
};

const isOf = (
  batches: FarmPicture['batches'],
  today: PlainDate,
): ((told: { readonly batchId: string }) => boolean) => {
  const ids = new Set(batches.filter((batch) => !isHistory(batch, today)).map(({ id }) => id));
  return ({ batchId }) => ids.has(batchId);
};

/** Bags and eggs of every day: those of birds that are long gone are read in their record alone. */
const isDaily = ({ batches, today, headChanges }: Around): ReturnType<typeof isOf> => {
  const isLongGone = (batch: (typeof batches)[number]): boolean => {
    const own = headChanges.filter(({ batchId }) => batchId === batch.id);
    return (lastLeft(own, expectedBirds(batch)) ?? today) < seasonsSince(today);
  };
  return isOf(
    batches.filter((batch) => !isLongGone(batch)),
    today,
  );
};

const todayOf = ({ timeZone }: Pick<FarmView, 'timeZone'>): PlainDate =>
  plainDateAt(Date.now(), timeZone);
const keyOf = (farm: FarmState): string => `${farm.id}/${farm.revision}/${todayOf(farm)}`;

/**
 * The choices of a farm as they hold today, with their version. A paddock that is gone is no longer kept for fall; days of a season that is over
 * are none.
 */
export function choicesOf(
  { pasture, pastureVersion }: FarmEntity,
  paddocks: readonly Paddock[],
  today: PlainDate,
): PastureChoices {
  const { keepForAutumnIds: kept, from, to, ...rest } = pasture;
  const last = to ?? (from && addDays(from, MAX_PASTURE_DAYS));
  const isOver = last !== undefined && last < today;
  return {
    ...rest,
    version: pastureVersion,
    ...(from === undefined || isOver ? {} : { from }),
    ...(to === undefined || isOver ? {} : { to }),
    ...(kept && { keepForAutumnIds: kept.filter((id) => paddocks.some((p) => p.id === id)) }),
  };
}
