import { Injectable } from '@nestjs/common';
import type { FeedYear } from '../../shared/plan/feed-year/feed-year.js';
import { buyingListCsv } from '../documents/buying-list.js';
import { PastureService } from '../pasture/pasture.service.js';
import { PicturesService } from '../picture/pictures.service.js';
import { ToldService } from '../told/told.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import { signatureOf } from '../work-pool/signature.js';
import { WorkPool } from '../work-pool/work-pool.service.js';

@Injectable()
export class FeedService {
  /** Years of feed by farm, revision, day, and what was bought, which moves no other plan. */
  private readonly years = new SharedAnswers<FeedYear>(50);

  constructor(
    private readonly pictures: PicturesService,
    private readonly pasture: PastureService,
    private readonly told: ToldService,
    private readonly pool: WorkPool,
  ) {}

  async of(farmId: string): Promise<FeedYear> {
    const saved = await this.pictures.of(farmId);
    const bought = await this.told.factsOf(farmId, 'bought');
    return this.years.of(`${saved.key}/${signatureOf(bought)}`, async () => {
      const asked = await this.pasture.planned(saved);
      return this.pool.run('feedYear', { ...asked, bought });
    });
  }

  /** What is to be bought, as comma-separated values. */
  async listOf(farmId: string): Promise<string> {
    const { farm } = (await this.pictures.of(farmId)).picture;
    return buyingListCsv(await this.of(farmId), farm);
  }
}
