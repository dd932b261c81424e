import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { FeedYear } from '../../shared/plan/feed-year/feed-year.js';
import { Answers } from '../common/answers.js';
import { FEED_YEAR } from '../common/plan-answers.js';
import { FeedService } from './feed.service.js';

@ApiTags('feed')
@Controller('farms/:farmId/feed')
export class FeedController {
  constructor(private readonly feed: FeedService) {}

  /** The feed of a farm's year: what to buy on which trip, the money by month, the store by day. */
  @Answers(FEED_YEAR)
  @Get()
  of(@Param('farmId') farmId: string): Promise<FeedYear> {
    return this.feed.of(farmId);
  }
}
