import { Injectable } from '@nestjs/common';
import type { YearPlan } from '../../shared/plan/year/year-plan.js';
import { PastureService } from '../pasture/pasture.service.js';
import { PicturesService } from '../picture/pictures.service.js';
import { WeatherService } from '../weather/weather.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { WorkService } from '../work/work.service.js';

@Injectable()
export class YearService {
  /** Years by farm, revision and day: nothing is put together again that did not change. */
  private readonly years = new SharedAnswers<YearPlan>(50);

  constructor(
    private readonly pictures: PicturesService,
    private readonly pasture: PastureService,
    private readonly work: WorkService,
    private readonly weather: WeatherService,
    private readonly pool: WorkPool,
  ) {}

  /** The year of a farm out of the plans that are kept of it. */
  async of(farmId: string): Promise<YearPlan> {
    const saved = await this.pictures.of(farmId);
    return this.years.of(saved.key, async () => {
      const asked = await this.pasture.planned(saved);
      const work = await this.work.planOf(farmId);
      const history = await this.weather.historyOf(farmId);
      return this.pool.run('yearOfFarm', { ...asked, work, history });
    });
  }
}
