import { Injectable } from '@nestjs/common';
import type { Handover } from '../../shared/farm/handover.js';
import { handoverProblems } from '../../shared/plan/handover/check-handover.js';
import { caretakerSheet, type CaretakerSheet } from '../../shared/plan/handover/caretaker-sheet.js';
import { stopsOn, type SheetStop } from '../../shared/plan/handover/sheet-stops.js';
import type { SeasonChange } from '../../shared/plan/season/season-changes.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { FacilitiesService } from '../facilities/facilities.service.js';
import { SeasonRequests, type SeasonOnFarm } from '../season/season-requests.service.js';
import { SeasonService } from '../season/season.service.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import type { HandoverDto } from '../handovers/handover.dto.js';
import { HandoversService } from '../handovers/handovers.service.js';

/** A sheet before it is saved, and what it would move. */
export interface SheetPreview {
  readonly sheet: CaretakerSheet;
  readonly moved: readonly SeasonChange[];
}

/** Makes caretakers' sheets out of a farm's plans. */
@Injectable()
export class SheetsService {
  constructor(
    private readonly handovers: HandoversService,
    private readonly season: SeasonService,
    private readonly requests: SeasonRequests,
    private readonly facilities: FacilitiesService,
    private readonly pool: WorkPool,
  ) {}

  async sheetOf(farmId: string, id: string): Promise<CaretakerSheet> {
    const handover = await this.handovers.findOne(farmId, id);
    const [plan, onFarm] = await Promise.all([
      this.season.planOf(farmId),
      this.requests.onFarm(farmId),
    ]);
    return caretakerSheet(handover, plan, await this.stopsOf(farmId, onFarm));
  }

  /** The sheet of days that are not handed over yet, or are to be handed over otherwise. */
  async preview(farmId: string, { id = 'new', ...dto }: HandoverDto): Promise<SheetPreview> {
    const handover: Handover = { ...dto, id };
    const onFarm = await this.requests.onFarm(farmId);
    const { people, handovers } = onFarm.request;
    const problems = handoverProblems(handover, { people, others: handovers });
    if (0 < problems.length) throw new FieldError(problems);
    const others = handovers.filter((each) => each.id !== id);
    const { kept: _kept, ...then } = onFarm.request;
    const { plan, changes } = await this.pool.run('compareSeasons', {
      now: { ...onFarm.request, handovers: others },
      then: { ...then, handovers: [...others, handover] },
    });
    return {
      sheet: caretakerSheet(handover, plan, await this.stopsOf(farmId, onFarm)),
      moved: changes,
    };
  }

  private async stopsOf(
    farmId: string,
    onFarm: SeasonOnFarm,
  ): Promise<(date: string) => SheetStop[]> {
    return stopsOn({ ...onFarm, facilities: await this.facilities.findAll(farmId) });
  }
}
