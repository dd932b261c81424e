import { Injectable } from '@nestjs/common';
import type { Handover } from '../../shared/farm/handover.js';
import { handoverProblems } from '../../shared/plan/handover/check-handover.js';
import type { SitterSheet } from '../../shared/plan/handover/sitter-sheet.js';
import type { WorkChange } from '../../shared/plan/work/work-changes.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { PastureService } from '../pasture/pasture.service.js';
import { PicturesService } from '../picture/pictures.service.js';
import { WorkService } from '../work/work.service.js';
import type { CareGap } from '../../shared/plan/work/care-gaps.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import type { HandoverDto } from '../handovers/handover.dto.js';
import { HandoversService } from '../handovers/handovers.service.js';

/** A sheet before it is saved, and what it would move. */
export interface SheetPreview {
  readonly sheet: SitterSheet;
  readonly moved: readonly WorkChange[];
  /** Days among these on which animals have nobody, or nobody often enough. */
  readonly careGaps: readonly CareGap[];
}

/** Makes sitters' sheets out of a farm's plans. */
@Injectable()
export class SheetsService {
  constructor(
    private readonly handovers: HandoversService,
    private readonly work: WorkService,
    private readonly pictures: PicturesService,
    private readonly pasture: PastureService,
    private readonly pool: WorkPool,
  ) {}

  async sheetOf(farmId: string, id: string): Promise<SitterSheet> {
    const handover = await this.handovers.findOne(farmId, id);
    const plan = await this.work.planOf(farmId);
    const planned = await this.pasture.planned(await this.pictures.of(farmId));
    return this.pool.run('sheet', { ...planned, handover, plan });
  }

  /** The sheet of days that are not handed over yet, or are to be handed over otherwise. */
  async preview(farmId: string, { id = 'new', ...dto }: HandoverDto): Promise<SheetPreview> {
    const handover: Handover = { ...dto, id };
    const planned = await this.pasture.planned(await this.pictures.of(farmId));
    const { farm, today, people, handovers } = planned.picture;
    const reader = { units: farm.units, today };
    const problems = handoverProblems(handover, { people, others: handovers, reader });
    if (0 < problems.length) throw new FieldError(problems);
    const others = handovers.filter((each) => each.id !== id);
    const withHandovers = (list: readonly Handover[]) => ({
      ...planned,
      picture: { ...planned.picture, handovers: list },
    });
    const then = withHandovers([...others, handover]);
    const { plan, changes } = await this.pool.run('compareWork', {
      now: withHandovers(others),
      then,
    });
    const { from, to } = handover;
    return {
      sheet: await this.pool.run('sheet', { ...then, handover, plan }),
      moved: changes,
      careGaps: plan.careGaps.filter((gap) => gap.from <= to && from <= gap.to),
    };
  }
}
