import { Injectable } from '@nestjs/common';
import { dayInZone } from '../../shared/calendar/day-in-zone.js';
import type { PlainDate } from '../../shared/calendar/plain-date.js';
import { isWorkKey, notAKey } from '../../shared/farm/about-problems.js';
import { yearCounts } from '../../shared/plan/record/year-counts.js';
import { eggsWentTooSoon } from '../../shared/plan/today/eggs-went.js';
import { toldLimitAlarms } from '../../shared/plan/today/limit-alarms.js';
import type { Alarm } from '../../shared/plan/today/looked-at.js';
import { withTicks, type DatedToday } from '../../shared/plan/today/today.js';
import { movedBy } from '../../shared/plan/pasture/move-told.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { holding, type ChoreDone, type FactOf } from '../../shared/farm/told-fact.js';
import { PicturesService } from '../picture/pictures.service.js';
import type { Said } from '../told/keep-facts.js';
import { ToldService } from '../told/told.service.js';
import { TablesService } from '../reference/tables.service.js';
import { WorkService } from '../work/work.service.js';
import type { ChoreTickDto } from './today.dto.js';

/** What counts towards a limit of the year. */
const LIMITED = ['processed', 'gone', 'eggs-gone'] as const;

/** Reads the day out of plans that are kept; ticks of chores lie beside them, no plan goes by one. */
@Injectable()
export class TodayService {
  constructor(
    private readonly work: WorkService,
    private readonly pictures: PicturesService,
    private readonly told: ToldService,
    private readonly tables: TablesService,
  ) {}

  async todayOf(farmId: string): Promise<DatedToday> {
    const day = await this.work.dayOf(farmId);
    const done = new Map(
      (await this.ticks(farmId, day.date)).map(({ about, details }) => [about, details.doneBy]),
    );
    const seen = new Map(
      (await this.told.factsOf(farmId, 'alarm-seen')).map(({ about, on }) => [about, on]),
    );
    const more = [...(await this.eggAlarms(farmId)), ...(await this.limitAlarms(farmId, day.date))];
    const bought = await this.boughtWith(farmId, day.date);
    const { farm } = (await this.pictures.of(farmId)).picture;
    return {
      ...withTicks(day, done, seen, { more, bought }),
      inZone: dayInZone(day.date, farm.timeZone),
    };
  }

  /** What the trips of a day brought, with what was told of it before it was put right. */
  private async boughtWith(farmId: string, on: PlainDate): Promise<FactOf<'bought'>[]> {
    const bought = holding(await this.told.factsSince(farmId, on, ['bought']));
    const trips = bought.flatMap((fact) =>
      fact.on === on && fact.details.work !== undefined ? [fact.about] : [],
    );
    return trips.length === 0 ? [] : this.told.factsAbout(farmId, trips, ['bought']);
  }

  /** Eggs that went while a medicine ran; no plan goes by sales. */
  private async eggAlarms(farmId: string): Promise<Alarm[]> {
    const { picture } = await this.pictures.of(farmId);
    const ofBirds = (picture.treatments ?? []).filter(({ about }) =>
      picture.batches.some(({ id }) => id === about),
    );
    const first = ofBirds.map(({ date }) => date).toSorted()[0];
    if (first === undefined) return [];
    return eggsWentTooSoon(picture, await this.told.factsSince(farmId, first, ['eggs-gone']));
  }

  /** What was told of the year, held against limits that were typed; no plan goes by sales. */
  private async limitAlarms(farmId: string, today: PlainDate): Promise<Alarm[]> {
    const { farm } = (await this.pictures.of(farmId)).picture;
    if (!farm.yearLimits || Object.keys(farm.yearLimits).length === 0) return [];
    const year = Number(today.slice(0, 4));
    const facts = await this.told.factsOfYear(farmId, year, LIMITED);
    const { alarms } = this.tables.tables.judgements;
    return toldLimitAlarms(yearCounts(year, facts, farm.currency), farm, alarms);
  }

  /** Ticks a chore of today off, or opens it again. Either twice is the same. */
  async tick(farmId: string, { key, isDone }: ChoreTickDto): Promise<ChoreTickDto> {
    if (!isWorkKey(key)) throw new FieldError([notAKey(key, 'key')]);
    const { today } = (await this.pictures.of(farmId)).picture;
    const ticked = (await this.ticks(farmId, today)).filter(({ about }) => about === key);
    if (isDone && ticked.length === 0) {
      const done = { kind: 'chore-done', about: key, on: today, details: {} } as const;
      await this.told.tell(
        farmId,
        [done, ...(await this.movedBy(farmId, key, today))],
        () => 'key',
      );
    }
    if (!isDone) for (const { id } of ticked) await this.told.takeBack(farmId, id);
    return { key, isDone };
  }

  /** The herd is where the move of the day that is ticked off brings it. */
  private async movedBy(farmId: string, key: string, on: PlainDate): Promise<Said[]> {
    const { chores } = await this.work.dayOf(farmId);
    const goes = chores.find((chore) => chore.key === key)?.goes;
    return goes ? movedBy(goes, key, on) : [];
  }

  private async ticks(farmId: string, from: PlainDate): Promise<readonly ChoreDone[]> {
    const { facts } = await this.told.find(farmId, { kind: 'chore-done', from });
    return facts.filter((fact) => fact.kind === 'chore-done');
  }
}
