import { Injectable } from '@nestjs/common';
import type { FeedSpent } from '../../shared/plan/feed-spent/feed-spent.js';
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

  private readonly spent = new SharedAnswers<{ spent?: FeedSpent }>(50);

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

  /** Where the feed money of the year up to today went; nothing is in it before a receipt is told. */
  async spentOf(farmId: string): Promise<{ spent?: FeedSpent }> {
    const saved = await this.pictures.of(farmId);
    const bought = await this.told.factsOf(farmId, 'bought');
    return this.spent.of(`${saved.key}/${signatureOf(bought)}`, async () => {
      const asked = await this.pasture.planned(saved);
      const spent = await this.pool.run('feedSpent', { ...asked, bought });
      return spent ? { spent } : {};
    });
  }

  /** What is to be bought, as comma-separated values. */
  async listOf(farmId: string): Promise<string> {
    const { farm } = (await this.pictures.of(farmId)).picture;
    return buyingListCsv(await this.of(farmId), farm);
  }
}
