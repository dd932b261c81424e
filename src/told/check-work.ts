import { In, type EntityManager } from 'typeorm';
import { isWorkKey, notAKey } from '../../shared/farm/about-problems.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import { isKnownWork, workOfKey, type WorkOf } from '../../shared/plan/known-work.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { JobEntity } from '../jobs/job.entity.js';
import type { NamesOfFarm } from './names-of-farm.js';
import { ToldFactEntity } from './told-fact.entity.js';

interface Told {
  readonly told: readonly ToldFact[];
  readonly namesOf: () => Promise<NamesOfFarm>;
  readonly tables: Tables;
}

/**
 * Refuses marks of work that this farm never had: of jobs, batches and herds that are not there and
 * of which nothing was ever told, and of work that no plan of theirs has. What a plan has no more, and
 * what belongs to rows that were deleted, is history and can still be told: a phone may send it late.
 */
export async function refuseUnknownWork(
  manager: EntityManager,
  farmId: string,
  { told, namesOf, tables }: Told,
  fieldOf: (fact: ToldFact, field: string) => string,
): Promise<void> {
  const marks = told.filter(({ about }) => isWorkKey(about));
  const ids = new Set(told.map(({ id }) => id));
  const works = marks.map((fact) => ({ fact, work: workOfKey(fact.about) }));
  const jobs = await ownJobs(manager, farmId, works);
  for (const { fact, work } of works) {
    const isKnown = isKnownWork(work, tables);
    if (isKnown && (await isOfFarm(work, { jobs, namesOf }))) continue;
    if (await wasTold(manager, farmId, { work, key: isKnown ? undefined : fact.about, ids }))
      continue;
    throw new FieldError([
      {
        ...notAKey(fact.about, fieldOf(fact, 'about')),
        fix: isKnown
          ? NOT_OF_FARM[work.of]
          : 'No plan has this work. Use the key that a plan gave.',
      },
    ]);
  }
}

const NOT_OF_FARM = {
  own: 'This farm has no such job of your own, and never had. Use the key as the plan of work gave it.',
  batch: 'This farm has no such batch, and never had. Use the key as the plan of work gave it.',
  herd: 'This farm has no such herd, and never had. Use the key as the plan of work gave it.',
} as const;

/** Those of the jobs named that the farm has. */
async function ownJobs(
  manager: EntityManager,
  farmId: string,
  works: readonly { readonly work: WorkOf }[],
): Promise<ReadonlySet<string>> {
  const ids = works.flatMap(({ work }) => (work.of === 'own' ? [work.id] : []));
  if (ids.length === 0) return new Set();
  const rows = await manager.find(JobEntity, {
    where: { id: In([...new Set(ids)]), farmId },
    select: { id: true },
  });
  return new Set(rows.map(({ id }) => id));
}

async function isOfFarm(
  { of, id }: WorkOf,
  { jobs, namesOf }: { readonly jobs: ReadonlySet<string> } & Pick<Told, 'namesOf'>,
): Promise<boolean> {
  if (of === 'own') return jobs.has(id);
  const { batches, herds } = await namesOf();
  return (of === 'batch' ? batches : herds).some((each) => each.id === id);
}

/** Whether something was told of it before: of the very work, or of what it belongs to. */
async function wasTold(
  manager: EntityManager,
  farmId: string,
  asked: { readonly work: WorkOf; readonly key: string | undefined; readonly ids: Set<string> },
): Promise<boolean> {
  const { of, id } = asked.work;
  const own = `${of}/${id}`;
  const query = manager.createQueryBuilder(ToldFactEntity, 'f').where('f.farmId = :farmId', {
    farmId,
  });
  if (asked.key === undefined)
    query.andWhere('(f.about IN (:...all) OR f.about LIKE :work)', {
      all: [id, own],
      work: `${own}/%`,
    });
  else query.andWhere('f.about = :key', { key: asked.key });
  return query.andWhere('f.id NOT IN (:...ids)', { ids: [...asked.ids] }).getExists();
}
