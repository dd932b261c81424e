import { Controller, Get, Header, Param } from '@nestjs/common';
import { ApiOkResponse, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { FeedSpent } from '../../shared/plan/feed-spent/feed-spent.js';
import type { FeedYear } from '../../shared/plan/feed-year/feed-year.js';
import { Answers } from '../common/answers.js';
import { FEED_SPENT, FEED_YEAR } from '../common/plan-answers.js';
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

  /** Where the feed money of the year up to today went, as told, and how it could have been less. */
  @Answers(FEED_SPENT)
  @Get('spent')
  spent(@Param('farmId') farmId: string): Promise<{ spent?: FeedSpent }> {
    return this.feed.spentOf(farmId);
  }

  /** The shopping list of the year for a spreadsheet: a line a feed and trip. */
  @Get('list.csv')
  @Header('Content-Type', 'text/csv; charset=utf-8')
  @Header('Content-Disposition', 'attachment; filename="feed-to-buy.csv"')
  @ApiProduces('text/csv')
  @ApiOkResponse({ schema: { type: 'string', description: 'Comma-separated values' } })
  list(@Param('farmId') farmId: string): Promise<string> {
    return this.feed.listOf(farmId);
  }
}
