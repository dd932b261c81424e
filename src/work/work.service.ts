import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { LessThan, type EntityManager } from 'typeorm';
import type { PlainDate } from '../../shared/calendar/plain-date.js';
import { afterSaid } from '../../shared/farm/said-of-work.js';
import { isMowingWork } from '../../shared/farm/mowing.js';
import { isTurnOutWork } from '../../shared/farm/herd-move-work.js';
import { movedBy } from '../../shared/plan/pasture/move-told.js';
import { goesByTurnOut } from '../../shared/plan/work/herd-goes.js';
import { isFetch } from '../../shared/plan/tasks/fetches.js';
import { isUnseen } from '../../shared/farm/told-seen.js';
import { undoneFacts } from '../../shared/farm/work-undo.js';
import { saysOtherOfWork } from '../../shared/farm/work-clash.js';
import { FARM_GROUND, holding } from '../../shared/farm/told-fact.js';
import { isWorkKey, notAKey } from '../../shared/farm/about-problems.js';
import type { GroundCheck } from '../../shared/farm/ground-check.js';
import type { Progress } from '../../shared/farm/job.js';
import type { KeptPlan } from '../../shared/farm/kept-plan.js';
import { refuseUnplannable } from '../../shared/plan/farm/check-picture.js';
import type { MowingWork } from '../../shared/farm/mowing.js';
import type { Today } from '../../shared/plan/today/today.js';
import type { WorkOutlook } from '../../shared/plan/work/work-outlook.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { storageFaultOf } from '../common/storage-fault.js';
import { Database } from '../database/database.js';
import { PastureService } from '../pasture/pasture.service.js';
import type { FarmDocumentDto } from '../documents/farm-document.dto.js';
import { pictureOfDocument } from '../picture/farm-document.js';
import { PicturesService, type SavedPicture } from '../picture/pictures.service.js';
import { TablesService } from '../reference/tables.service.js';
import { toldOtherwise, type Said } from '../told/keep-facts.js';
import { ToldService } from '../told/told.service.js';
import { WeatherService } from '../weather/weather.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import type { DueWork } from '../../shared/plan/farm/work-of-farm.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { KeptPlanEntity } from './kept-plan.entity.js';
import { factsKey } from './facts-key.js';
import { boughtAsPlanned } from './bought-as-planned.js';
import { isLong, refuseLong } from './long-hours.js';
import type { GroundLookDto, ProgressDto } from './work.dto.js';

/** Chances that are kept, by farm and revision. */
const OUTLOOKS = 20;

/** The work of a farm as it is sent, and for those of the service who look into it. */
interface KnownWork {
  readonly bytes: Uint8Array;
  readonly plan: () => WorkPlan;
  readonly day: Today;
}

@Injectable()
export class WorkService {
  /** Plans by farm, revision and day: nothing is planned again that did not change. */
  private readonly plans = new SharedAnswers<KnownWork>(50);
  /** The same by what they were planned from: what was kept and is undone gives back the plan there was. */
  private readonly sameFacts = new LRUCache<string, KnownWork & { readonly keep: KeptPlan }>({
    max: 50,
  });
  private readonly outlooks = new SharedAnswers<WorkOutlook>(OUTLOOKS);
  /** How far the chances of a farm and revision are, in thousandths. */
  private readonly played = new LRUCache<string, Int32Array>({ max: OUTLOOKS });

  constructor(
    private readonly database: Database,
    private readonly pictures: PicturesService,
    private readonly pasture: PastureService,
    private readonly weather: WeatherService,
    private readonly tables: TablesService,
    private readonly pool: WorkPool,
    private readonly told: ToldService,
  ) {}

  async planOf(farmId: string): Promise<WorkPlan> {
    return (await this.planned(farmId)).plan();
  }

  /** The same as the bytes of its JSON. */
  async planBytesOf(farmId: string): Promise<Uint8Array> {
    return (await this.planned(farmId)).bytes;
  }

  /** Work that was due before a day. */
  async dueBefore(farmId: string, before: string): Promise<DueWork[]> {
    const asked = await this.pasture.planned(await this.pictures.of(farmId));
    return this.pool.run('workDueBefore', { ...asked, before });
  }

  /** The day that it is on a farm, out of the plans of its animals and its work. */
  async dayOf(farmId: string): Promise<Today> {
    return (await this.planned(farmId)).day;
  }

  private async planned(farmId: string): Promise<KnownWork> {
    const saved = await this.pictures.of(farmId);
    return this.plans.of(saved.key, async () => {
      const facts = factsKey(farmId, saved.picture);
      const { keep, ...known } = this.sameFacts.get(facts) ?? (await this.plannedAnew(saved));
      this.sameFacts.set(facts, { keep, ...known });
      await this.keep(farmId, keep);
      return known;
    });
  }

  private async plannedAnew(saved: SavedPicture): Promise<KnownWork & { readonly keep: KeptPlan }> {
    const made = await this.pasture.together(saved, (asked) => this.pool.run('planWork', asked));
    const { keep, plan: bytes, day } = made;
    return { bytes, plan: readOnce(bytes), day, keep };
  }

  /** The work of a household that is not saved. */
  async preview(document: FarmDocumentDto): Promise<Uint8Array> {
    const picture = pictureOfDocument(document, this.tables.tables, Date.now());
    refuseUnplannable(picture, this.tables.tables);
    return (await this.pool.run('planWork', { picture })).plan;
  }

  /** Chances over many years of weather, start-by dates, workable days and frost. */
  async outlookOf(farmId: string): Promise<WorkOutlook> {
    const saved = await this.pictures.of(farmId);
    return this.outlooks.of(saved.key, async () => {
      const permille = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
      this.played.set(saved.key, permille);
      const history = await this.weather.historyOf(farmId);
      const asked = await this.pasture.planned(saved);
      const outlook = await this.pool.run('workOutlook', { ...asked, history, permille });
      permille[0] = 1000;
      return outlook;
    });
  }

  /** How far the chances are that somebody has asked for. */
  async outlookProgressOf(farmId: string): Promise<{ played: number }> {
    const { key } = await this.pictures.of(farmId);
    const permille = this.played.get(key);
    return { played: permille ? Atomics.load(permille, 0) / 1000 : 0 };
  }

  /**
   * Keeps what is said of a piece of work, beside what was said of it before; what it took is kept
   * with what was reckoned.
   */
  async tellProgress(farmId: string, dto: ProgressDto): Promise<Progress> {
    const { key, undo, tellKey, seen, saidBy, ...said } = dto;
    if (!isWorkKey(key)) throw new FieldError([notAKey(key, 'key')]);
    if (undo === true) return { key, ...(await this.undo(farmId, key)) };
    const { today } = (await this.pictures.of(farmId)).picture;
    if (said.doneOn !== undefined) refuseFuture('doneOn', said.doneOn, today);
    if (Object.values(said).every((each) => each === undefined)) {
      await this.told.takeBackAbout(farmId, 'work-progress', ({ about }) => about === key);
      await this.told.takeBackMown(farmId, key);
      await this.takeBackBought(farmId, key);
      await this.told.takeBackMoved(farmId, key);
      return { key };
    }
    const mowing = await this.mowingOf(farmId, key);
    const bought = said.doneOn === undefined ? [] : await this.boughtOn(farmId, key, said.doneOn);
    const moved = said.doneOn === undefined ? [] : await this.turnedOut(farmId, key, said.doneOn);
    const isOfHours = said.hours !== undefined || isLong(said, this.tables.tables.judgements.work);
    const planned = isOfHours ? await this.reckoned(farmId, key) : {};
    const reckoned = said.hours === undefined ? {} : planned;
    return this.told.telling(farmId, async () => {
      const facts = await this.told.factsAbout(farmId, key, ['work-progress']);
      const theirs = holding(facts).at(-1);
      if (await this.isKept(farmId, tellKey)) return { key, ...theirs?.details };
      refuseLong(said, planned.reckonedHours, this.tables.tables.judgements.work);
      const before = theirs?.details ?? {};
      const known = holding(facts.filter((fact) => !isUnseen(fact, seen))).at(-1)?.details ?? {};
      if (theirs && isUnseen(theirs, seen) && saysOtherOfWork(known, before, said)) {
        throw toldOtherwise([{ theirs, yours: dto }]);
      }
      const details = { ...afterSaid(before, said, today), ...reckoned };
      const fact = {
        kind: 'work-progress',
        about: key,
        on: details.doneOn ?? today,
        details,
        saidBy,
        key: tellKey,
      } as Said;
      const isNewDay = details.doneOn !== before.doneOn;
      const mown = isNewDay ? await this.mownBy(farmId, key, { mowing, on: details.doneOn }) : [];
      if (isNewDay) {
        await this.told.takeBackMown(farmId, key);
        await this.told.takeBackMoved(farmId, key);
      }
      const brought = isNewDay ? [...bought, ...moved] : [];
      await this.told.tell(farmId, [fact, ...mown, ...brought], (_k, field) =>
        field === 'on' ? 'doneOn' : field === 'about' ? 'key' : field.replace(/^details\./, ''),
      );
      return { key, ...details };
    });
  }

  /** Refuses hours of work among facts that are told, as of progress that is told by itself. */
  async refuseLongHours(farmId: string, facts: readonly Said[]): Promise<void> {
    const { work } = this.tables.tables.judgements;
    for (const [k, { kind, about, details, key }] of facts.entries()) {
      if (kind !== 'work-progress' || !isLong(details, work)) continue;
      if (await this.isKept(farmId, key)) continue;
      const { reckonedHours } = await this.reckoned(farmId, about);
      refuseLong(details, reckonedHours, work, (name) => `facts.${k}.details.${name}`);
    }
  }

  private async isKept(farmId: string, key: string | undefined): Promise<boolean> {
    return key !== undefined && (await this.told.hasKey(farmId, key));
  }

  /** What a piece of work mows; undefined of other work. */
  private async mowingOf(farmId: string, key: string): Promise<MowingWork | undefined> {
    if (!isMowingWork(key)) return undefined;
    const { mowingWork } = await this.pasture.planOf(farmId);
    return mowingWork.find((each) => each.key === key);
  }

  /** Paddocks that were mown or topped by work that is done, but for those that it is told of already. */
  private async mownBy(
    farmId: string,
    key: string,
    { mowing: work, on }: { mowing: MowingWork | undefined; on: PlainDate | undefined },
  ): Promise<Said[]> {
    if (on === undefined || !work) return [];
    const told = holding(await this.told.factsOf(farmId, 'paddock-mown'));
    const isTold = (paddockId: string): boolean =>
      told.some((fact) => fact.about === paddockId && fact.on === on && fact.details.work !== key);
    const details = { work: key, ...(work.isLeftLying ? { isLeftLying: true } : {}) };
    return work.paddockIds
      .filter((about) => !isTold(about))
      .map((about) => ({ kind: 'paddock-mown', about, on, details }));
  }

  /** What a trip brings that is ticked off, unless what was bought on it is told. */
  private async boughtOn(farmId: string, key: string, on: PlainDate): Promise<Said[]> {
    if (!isFetch(key)) return [];
    if (0 < holding(await this.told.factsAbout(farmId, key, ['bought'])).length) return [];
    return boughtAsPlanned((await this.planOf(farmId)).jobs, key, on);
  }

  /** Where a herd stands once it was let out, unless it is told to stand somewhere. */
  private async turnedOut(farmId: string, key: string, on: PlainDate): Promise<Said[]> {
    if (!isTurnOutWork(key)) return [];
    const own = (await this.told.factsOf(farmId, 'herd-move')).find(
      ({ details }) => details.work === key,
    );
    // Ticked off on another day than was said before.
    if (own) return [{ kind: own.kind, about: own.about, on, details: own.details }];
    const { herds } = (await this.pictures.of(farmId)).picture;
    const goes = goesByTurnOut(key, herds, await this.pasture.planOf(farmId));
    return goes ? movedBy(goes, key, on) : [];
  }

  private async takeBackBought(farmId: string, key: string): Promise<void> {
    if (!isFetch(key)) return;
    await this.told.takeBackAbout(farmId, 'bought', ({ details }) => details.work === key);
  }

  /**
   * Takes back what was last said of a piece of work, with the hours that were told after it was
   * done. What had been said before holds again.
   */
  private async undo(farmId: string, key: string): Promise<Omit<Progress, 'key'>> {
    const of = () => this.told.factsAbout(farmId, key, ['work-progress']);
    for (const { id } of undoneFacts(await of())) await this.told.takeBack(farmId, id);
    const left = holding(await of()).at(-1)?.details ?? {};
    if (left.doneOn === undefined) await this.takeBackBought(farmId, key);
    return left;
  }

  /** What a piece of work is reckoned at and its kind, open or done. */
  private async reckoned(farmId: string, key: string): Promise<Omit<Progress, 'key'>> {
    const { jobs, done } = await this.planOf(farmId);
    const found = [...jobs, ...done].find((each) => each.key === key);
    if (!found) return {};
    const { reckonedHours, kind } = found;
    return { reckonedHours, ...(kind === undefined ? {} : { kind }) };
  }

  /** What was found when the ground was looked at; without an answer the look is forgotten. */
  async look(farmId: string, { date, isWorkable }: GroundLookDto): Promise<Partial<GroundCheck>> {
    const { today } = (await this.pictures.of(farmId)).picture;
    refuseFuture('date', date, today);
    if (isWorkable === undefined) {
      await this.told.takeBackAbout(farmId, 'ground-check', ({ on }) => on === date);
    } else {
      const said = { kind: 'ground-check', about: FARM_GROUND, on: date, details: { isWorkable } };
      await this.told.tell(farmId, [said as Said], () => 'date');
    }
    return { date, ...(isWorkable === undefined ? {} : { isWorkable }) };
  }

  /** Keeps the last plan of today and that of the last day before it. */
  private async keep(farmId: string, plan: KeptPlan): Promise<void> {
    try {
      // A farm that was deleted while its work was planned keeps nothing, and is not found.
      await this.database.write(farmId, (manager) => keepPlan(manager, farmId, plan), {
        raises: false,
      });
    } catch (error) {
      // The plan is there all the same: a full disk does not keep it from being read.
      if (!storageFaultOf(error)) throw error;
    }
  }
}

/** Reads a plan the first time that somebody looks into it. */
function readOnce(bytes: Uint8Array): () => WorkPlan {
  let plan: WorkPlan | undefined;
  return () => (plan ??= JSON.parse(new TextDecoder().decode(bytes)) as WorkPlan);
}

async function keepPlan(manager: EntityManager, farmId: string, plan: KeptPlan): Promise<void> {
  const { plannedOn, jobs, madeFor, madeBy } = plan;
  const rows = manager.getRepository(KeptPlanEntity);
  const source = { madeFor: madeFor ?? null, madeBy: madeBy ?? null };
  await rows.upsert({ farmId, plannedOn, jobs, ...source }, ['farmId', 'plannedOn']);
  const [, before] = await rows.find({ where: { farmId }, order: { plannedOn: 'DESC' }, take: 2 });
  if (before) await rows.delete({ farmId, plannedOn: LessThan(before.plannedOn) });
}

function refuseFuture(field: string, given: string, today: string): void {
  if (given <= today) return;
  throw new FieldError([
    {
      field,
      code: 'out-of-bounds',
      given,
      max: today,
      fix: 'Give the day on which it was so; what is to come cannot be written down yet.',
    },
  ]);
}
