import { Injectable } from '@nestjs/common';
import { addDays } from '../../shared/calendar/plain-date.js';
import { withAway } from '../../shared/farm/absences.js';
import { withBatch } from '../../shared/farm/picture.js';
import type { WorkComparison } from '../../shared/plan/work/compare-plans.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { PastureService } from '../pasture/pasture.service.js';
import { PicturesService } from '../picture/pictures.service.js';
import { TablesService } from '../reference/tables.service.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import type { ArrivalMoveDto, SuddenlyAwayDto } from './work.dto.js';

/** The work of a household beside itself as it would be. Nothing is changed by asking. */
@Injectable()
export class WorkIfService {
  constructor(
    private readonly pictures: PicturesService,
    private readonly pasture: PastureService,
    private readonly tables: TablesService,
    private readonly pool: WorkPool,
  ) {}

  /** What moving an arrival would free or break. */
  async ifArrivalMoves(
    farmId: string,
    { batchId, arrivalDate }: ArrivalMoveDto,
  ): Promise<WorkComparison> {
    const saved = await this.pictures.of(farmId);
    const { picture } = saved;
    refuseOutside('arrivalDate', arrivalDate, picture.today, this.tables.tables);
    const batch = picture.batches.find(({ id }) => id === batchId);
    if (!batch) {
      throw new FieldError([
        {
          field: 'batchId',
          code: 'not-allowed',
          given: batchId,
          allowed: picture.batches.map(({ id }) => id),
          fix: 'Choose a batch of this farm.',
        },
      ]);
    }
    const now = await this.pasture.planned(saved);
    const moved = withBatch(picture, { ...batch, arrivalDate });
    // Birds on grass move with their batch; else the grass is as it was.
    const isOnGrass =
      batch.grassPaddockId !== undefined ||
      picture.herds.some((herd) => herd.followedByBatchId === batchId);
    return this.pool.run('compareWork', {
      now,
      then: isOnGrass ? { picture: moved } : { ...now, picture: moved },
    });
  }

  /** What it would move, and what of the animals has nobody, when people are away from today on. */
  async ifAway(farmId: string, { awayIds, to }: SuddenlyAwayDto): Promise<WorkComparison> {
    const saved = await this.pictures.of(farmId);
    const { picture } = saved;
    refuseOutside('to', to, picture.today, this.tables.tables);
    refuseUnknown(
      awayIds,
      picture.people.map(({ id }) => id!),
    );
    const now = await this.pasture.planned(saved);
    const people = withAway(picture.people, { awayIds, from: picture.today, to });
    return this.pool.run('compareWork', { now, then: { ...now, picture: { ...picture, people } } });
  }
}

function refuseUnknown(awayIds: readonly string[], allowed: readonly string[]): void {
  const problems = awayIds.flatMap((given, k) =>
    allowed.includes(given)
      ? []
      : [
          {
            field: `awayIds.${k}`,
            code: 'not-allowed' as const,
            given,
            allowed,
            fix: 'Choose one of the people of this farm.',
          },
        ],
  );
  if (0 < problems.length) throw new FieldError(problems);
}

/** Beyond the days of a plan nothing can be compared. */
function refuseOutside(field: string, given: string, today: string, tables: Tables): void {
  const last = addDays(today, tables.work.horizonDays.value - 1);
  if (today <= given && given <= last) return;
  throw new FieldError([
    {
      field,
      code: 'out-of-bounds',
      given,
      min: today,
      max: last,
      fix: 'Ask about a day within the plan; change the row itself for any other.',
    },
  ]);
}
