import { Injectable } from '@nestjs/common';
import type { Batch } from '../../shared/farm/batch.js';
import type { Cow } from '../../shared/farm/cow.js';
import type { OwnJob } from '../../shared/farm/job.js';
import type { Herd } from '../../shared/farm/herd.js';
import { paddockFields, type Paddock } from '../../shared/farm/paddock.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { NextHerd, NextPaddock } from '../../shared/plan/record/next-land.js';
import { tiedAnew, type NextJob, type NextYear } from '../../shared/plan/record/next-year.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { BatchesService } from '../batches/batches.service.js';
import type { BatchDto } from '../batches/batch.dto.js';
import { Database } from '../database/database.js';
import type { HerdDto } from '../herds/herd.dto.js';
import type { CowDto } from '../herds/cow.dto.js';
import { CowsService } from '../herds/cows.service.js';
import { HerdsService } from '../herds/herds.service.js';
import { JobsService } from '../jobs/jobs.service.js';
import type { JobDto } from '../jobs/job.dto.js';
import type { PaddockDto } from '../paddocks/paddock.dto.js';
import { PaddocksService } from '../paddocks/paddocks.service.js';
import { PicturesService } from '../picture/pictures.service.js';
import { OF_BATCHES, yearOf } from '../record/record.service.js';
import { ToldService } from '../told/told.service.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import type { NextYearDto } from './next-year.dto.js';
import type { TakeOutYearDto } from './take-out-year.dto.js';

const MOST_SPANS = paddockFields.fields.closedDays.most;

/** What was made of a year that was begun from another. */
export interface BegunYear {
  readonly batches: readonly Saved<Batch>[];
  readonly jobs: readonly Saved<OwnJob>[];
  readonly herds: readonly Saved<Herd>[];
  readonly paddocks: readonly Saved<Paddock>[];
  readonly cows: readonly Saved<Cow>[];
}

/** What became of taking a year out. */
export interface YearTakenOut {
  /** What was changed since, and stays as it is. */
  readonly kept: readonly string[];
}

/** Begins a year from the one before it. */
@Injectable()
export class NextYearService {
  constructor(
    private readonly database: Database,
    private readonly pictures: PicturesService,
    private readonly told: ToldService,
    private readonly batches: BatchesService,
    private readonly jobs: JobsService,
    private readonly herds: HerdsService,
    private readonly cows: CowsService,
    private readonly paddocks: PaddocksService,
    private readonly work: WorkPool,
  ) {}

  /** @throws FieldError when it is no year */
  async of(farmId: string, asked: string): Promise<NextYear> {
    const year = yearOf(asked);
    const { picture } = await this.pictures.of(farmId);
    const facts = await this.told.factsOf(farmId, ...OF_BATCHES);
    // What was done long ago rests, and comes again all the same: the picture leaves it out.
    const jobs = (await this.jobs.findAll(farmId)).map(({ restingSince: _since, ...job }) => job);
    return this.work.run('nextYear', { picture: { ...picture, jobs }, facts, year });
  }

  /** Saves what is to come again, all of it or nothing. @throws FieldError when it is not of the year */
  async begin(farmId: string, asked: NextYearDto): Promise<BegunYear> {
    const { year, batchIds, jobIds, herdIds = [], paddockIds = [] } = asked;
    const next = await this.of(farmId, `${year}`);
    refuseOthers('batchIds', batchIds, next.batches);
    refuseOthers('jobIds', jobIds, next.jobs);
    refuseOthers('herdIds', herdIds, next.herds);
    refuseOthers('paddockIds', paddockIds, next.paddocks);
    return this.database.write(farmId, async () => {
      const ids = { batchIds: new Map<string, string>(), jobIds: new Map<string, string>() };
      const batches: Saved<Batch>[] = [];
      for (const { ofId, next: batch } of next.batches.filter((b) => batchIds.includes(b.ofId))) {
        const made = await this.batches.create(farmId, batch as BatchDto);
        batches.push(made);
        ids.batchIds.set(ofId, made.id);
      }
      const jobs: Saved<OwnJob>[] = [];
      for (const { ofId, next: job } of inTurn(next.jobs.filter((j) => jobIds.includes(j.ofId)))) {
        const made = await this.jobs.create(farmId, tiedAnew(job, ids) as JobDto, true);
        jobs.push(made);
        ids.jobIds.set(ofId, made.id);
      }
      const herds: Saved<Herd>[] = [];
      const cows: Saved<Cow>[] = [];
      for (const herd of next.herds.filter(({ ofId }) => herdIds.includes(ofId))) {
        cows.push(...(await this.withCalvings(farmId, herd)));
        herds.push(await this.withCattle(farmId, herd));
      }
      const paddocks: Saved<Paddock>[] = [];
      for (const paddock of next.paddocks.filter(({ ofId }) => paddockIds.includes(ofId)))
        paddocks.push(await this.withDays(farmId, paddock));
      return { batches, jobs, herds, paddocks, cows };
    });
  }

  /**
   * Takes out what a year was begun with, all of it in one write. What is gone already is no matter;
   * what somebody changed or told of since stays as it is, with the jobs that such a job waits for.
   */
  async takeOut(farmId: string, begun: TakeOutYearDto): Promise<YearTakenOut> {
    const { batchIds, jobIds, herds = [], cows = [], paddocks = [] } = begun;
    return this.database.write(farmId, async () => {
      const kept: string[] = [];
      const made = await byId(this.jobs.findAll(farmId));
      const staying = await this.jobsThatStay(farmId, made, jobIds);
      // Those that wait for others were made after them.
      for (const id of jobIds.toReversed()) {
        const job = made.get(id);
        if (job && staying.has(id)) kept.push(job.name);
        else if (job) await this.jobs.remove(farmId, id);
      }
      const came = await byId(this.batches.findAll(farmId));
      for (const id of batchIds) {
        const batch = came.get(id);
        if (!batch) continue;
        const stays = batch.version !== NEW || (await this.told.isToldOf(farmId, 'batch', id));
        if (stays) kept.push(batch.name);
        else await this.batches.remove(farmId, id);
      }
      const put = async <Row extends { readonly name: string; readonly version: number }>(
        before: readonly { readonly id: string; readonly version: number }[],
        all: Promise<readonly (Row & { readonly id: string })[]>,
        update: (id: string, row: object) => Promise<unknown>,
      ): Promise<void> => {
        const now = await byId(all);
        for (const { id, version, ...fields } of before) {
          const row = now.get(id);
          if (row && row.version !== version) kept.push(row.name);
          else if (row) await update(id, { ...row, ...fields });
        }
      };
      await put(cows.map(fieldsOf(COW)), this.cows.findAll(farmId), (id, row) =>
        this.cows.update(farmId, id, row as CowDto),
      );
      await put(herds.map(fieldsOf(HERD)), this.herds.findAll(farmId), (id, row) =>
        this.herds.update(farmId, id, row as HerdDto),
      );
      await put(paddocks.map(fieldsOf(PADDOCK)), this.paddocks.findAll(farmId), (id, row) =>
        this.paddocks.update(farmId, id, row as PaddockDto),
      );
      return { kept };
    });
  }

  private async jobsThatStay(
    farmId: string,
    made: ReadonlyMap<string, Saved<OwnJob>>,
    jobIds: readonly string[],
  ): Promise<ReadonlySet<string>> {
    const staying = new Set<string>();
    for (const [id, { version }] of made) {
      const isBegun = jobIds.includes(id) && version === NEW;
      if (isBegun && !(await this.told.isToldOf(farmId, 'own', id))) continue;
      // A job that waits for one that is gone could not be saved again.
      for (let next: string | undefined = id; next !== undefined && !staying.has(next);) {
        staying.add(next);
        next = made.get(next)?.waitsForId;
      }
    }
    return staying;
  }

  private async withCalvings(
    farmId: string,
    { calvings = [] }: NextHerd,
  ): Promise<readonly Saved<Cow>[]> {
    const cows: Saved<Cow>[] = [];
    for (const { of, calvesOn } of calvings) {
      if (!('cowId' in of)) continue;
      const { bredOn: _bredOn, ...cow } = await this.cows.findOne(farmId, of.cowId);
      cows.push(await this.cows.update(farmId, of.cowId, { ...cow, calvesOn } as CowDto));
    }
    return cows;
  }

  private async withCattle(farmId: string, next: NextHerd): Promise<Saved<Herd>> {
    const { ofId, groups, turnOutOn, calvings = [] } = next;
    const herd = await this.herds.findOne(farmId, ofId);
    const there = herd.groups.map((group, k) => {
      const calving = calvings.find(({ of }) => 'group' in of && of.group === k);
      if (!calving) return group;
      const { bredOn: _bredOn, ...rest } = group;
      return { ...rest, calvesOn: calving.calvesOn };
    });
    return this.herds.update(farmId, ofId, {
      ...herd,
      groups: [...there, ...groups],
      ...(turnOutOn === undefined ? {} : { turnOutOn }),
    } as HerdDto);
  }

  private async withDays(farmId: string, next: NextPaddock): Promise<Saved<Paddock>> {
    const { ofId, name: _name, closedDays, ...harvest } = next;
    const paddock = await this.paddocks.findOne(farmId, ofId);
    const before = [...(paddock.closedDays ?? [])].sort((a, b) => (a.from < b.from ? -1 : 1));
    // A paddock holds so many spans: the oldest make room.
    const spans = [...before, ...closedDays].slice(-MOST_SPANS);
    return this.paddocks.update(farmId, ofId, {
      ...paddock,
      ...harvest,
      closedDays: spans,
    } as PaddockDto);
  }
}

/** The version of a row that nobody changed since it was made. */
const NEW = 1;

const HERD = ['groups', 'turnOutOn'] as const;
const COW = ['bredOn', 'calvesOn'] as const;
const PADDOCK = ['closedDays', 'harvestOn', 'lastHarvestOn'] as const;

/** A row with each of its fields named: one that it had not is taken away again. */
const fieldsOf =
  (names: readonly string[]) => (before: { readonly id: string; readonly version: number }) => ({
    ...{ id: before.id, version: before.version },
    ...Object.fromEntries(
      names.map((name) => [name, (before as unknown as Record<string, unknown>)[name]]),
    ),
  });

const byId = async <Row extends { readonly id: string }>(
  rows: Promise<readonly Row[]>,
): Promise<ReadonlyMap<string, Row>> => new Map((await rows).map((row) => [row.id, row]));

/** Jobs with those first that others wait for. */
function inTurn(jobs: readonly NextJob[]): NextJob[] {
  const turn: NextJob[] = [];
  const add = (job: NextJob): void => {
    if (turn.includes(job)) return;
    const first = jobs.find(({ ofId }) => ofId === job.next.waitsForId);
    if (first) add(first);
    turn.push(job);
  };
  for (const job of jobs) add(job);
  return turn;
}

function refuseOthers(
  field: string,
  ids: readonly string[],
  of: readonly { readonly ofId: string }[],
): void {
  const allowed = of.map(({ ofId }) => ofId);
  const k = ids.findIndex((id, at) => !allowed.includes(id) || ids.indexOf(id) !== at);
  if (k < 0) return;
  throw new FieldError([
    {
      ...{ field: `${field}.${k}`, code: 'not-allowed', given: ids[k], allowed },
      fix: 'Name what belongs to that year, each once.',
    },
  ]);
}
