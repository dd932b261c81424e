import { Injectable } from '@nestjs/common';
import { animalPicture } from '../../shared/farm/picture.js';
import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import { hasGrass } from '../../shared/plan/farm/has-grass.js';
import { checkPasture } from '../../shared/plan/pasture/check-pasture.js';
import { pastureOfFarm } from '../../shared/plan/pasture/pasture-of-farm.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { Database } from '../database/database.js';
import { FarmEntity } from '../farms/farm.entity.js';
import type { FarmDocumentDto } from '../documents/farm-document.dto.js';
import { refuseOutdated, type Expected } from '../common/expected-version.js';
import { pictureOfDocument } from '../picture/farm-document.js';
import { choicesOf, PicturesService, type SavedPicture } from '../picture/pictures.service.js';
import { TablesService } from '../reference/tables.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import type { PlannedPicture } from '../work-pool/tasks.js';
import { signatureOf } from '../work-pool/signature.js';
import { WorkPool } from '../work-pool/work-pool.service.js';

@Injectable()
export class PastureService {
  /** Plans by what they rest on: nothing is planned again that did not change. */
  private readonly plans = new SharedAnswers<PasturePlan>(50);

  constructor(
    private readonly database: Database,
    private readonly pictures: PicturesService,
    private readonly tables: TablesService,
    private readonly work: WorkPool,
  ) {}

  async preview(document: FarmDocumentDto): Promise<PasturePlan> {
    return this.work.run('planPasture', this.pictureOf(document));
  }

  /** Every number of a pasture's plan, opened to its formula, inputs and sources. */
  async explanations(document: FarmDocumentDto): Promise<Uint8Array> {
    return this.work.run('explainPasture', this.pictureOf(document));
  }

  async planOf(farmId: string): Promise<PasturePlan> {
    return this.planIn(await this.pictures.of(farmId));
  }

  /** A farm's picture with the plan of its pasture, where it has one that can be planned. */
  async planned(saved: SavedPicture): Promise<PlannedPicture> {
    const { picture } = saved;
    if (!hasGrass(picture)) return { picture };
    try {
      return { picture, pasture: await this.planIn(saved) };
    } catch (error) {
      if (error instanceof FieldError) return { picture };
      throw error;
    }
  }

  /**
   * Work that goes by the plan of a farm's pasture as well. Where that is not there yet, both are made
   * in one go, as they rest on the same batches, and the pasture's is kept for the next who asks.
   */
  async together<Made extends { readonly pasture?: PasturePlan | undefined }>(
    saved: SavedPicture,
    make: (asked: PlannedPicture) => Promise<Made>,
  ): Promise<Made> {
    const { picture } = saved;
    const key = signatureOf(animalPicture(picture));
    if (!hasGrass(picture) || this.plans.has(key)) return make(await this.planned(saved));
    const made = await make({ picture });
    if (made.pasture) this.plans.keep(key, made.pasture);
    return made;
  }

  async choose(
    farmId: string,
    { version: _version, ...choices }: PastureChoices,
    expected: Expected = {},
  ): Promise<PastureChoices> {
    // Not within the write: what is read there must not be kept under a revision yet to come.
    const { picture } = await this.pictures.of(farmId);
    checkPasture(pastureOfFarm({ ...picture, pastureChoices: choices }, this.tables.tables));
    return this.database.write(farmId, async (manager) => {
      const before = await manager.findOneByOrFail(FarmEntity, { id: farmId });
      await refuseOutdated(before.pastureVersion, expected, () =>
        choicesOf(before, picture.paddocks, picture.today),
      );
      const version = before.pastureVersion + 1;
      await manager.update(
        FarmEntity,
        { id: farmId },
        { pasture: { ...choices }, pastureVersion: version },
      );
      return { ...choices, version };
    });
  }

  private planIn({ picture }: SavedPicture): Promise<PasturePlan> {
    const animals = animalPicture(picture);
    return this.plans.of(signatureOf(animals), () => this.work.run('planPasture', animals));
  }

  private pictureOf(document: FarmDocumentDto) {
    return pictureOfDocument(document, this.tables.tables, Date.now());
  }
}
