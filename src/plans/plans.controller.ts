import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import { ApiBody, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import type { Explanation } from '../../shared/explain/explanation.js';
import { type Occupancy, occupancyFields } from '../../shared/farm/batch.js';
import type { ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { ArrivalSearchDto, OrderDto } from './order.dto.js';
import { OrderPipe, type CheckedOrder } from './order.pipe.js';
import { PlansService } from './plans.service.js';
import { Answers, AnswersList } from '../common/answers.js';
import { ARRIVAL_WEEK, BATCH_PLAN, EXPLANATION } from './plan-answers.js';

@ApiTags('plans')
@Controller()
export class PlansController {
  constructor(private readonly plans: PlansService) {}

  /** Plans an order without saving anything. */
  @Answers(BATCH_PLAN)
  @Post('plans/preview')
  @HttpCode(200)
  @ApiBody({ type: OrderDto })
  async preview(@Body(OrderPipe) checked: CheckedOrder, @Res() response: Response): Promise<void> {
    response.type('json').send(await this.plans.preview(checked));
  }

  /** Opens every number of an order's plan, in the farm's units. */
  @AnswersList(EXPLANATION)
  @Post('plans/explain')
  @HttpCode(200)
  explain(@Body() order: OrderDto): Promise<Explanation[]> {
    return this.plans.explanations(order);
  }

  /** Scores every arrival week of a span, with reasons. */
  @AnswersList(ARRIVAL_WEEK)
  @Post('plans/arrivals')
  @HttpCode(200)
  arrivals(@Body() search: ArrivalSearchDto): Promise<ArrivalWeek[]> {
    return this.plans.arrivals(search);
  }

  @Answers(BATCH_PLAN)
  @Get('farms/:farmId/batches/:id/plan')
  planOf(@Param('farmId') farmId: string, @Param('id') id: string): Promise<BatchPlan> {
    return this.plans.planOf(farmId, id);
  }

  /** What the farm's batches hold on to, and when. */
  @AnswersList(occupancyFields)
  @Get('farms/:farmId/occupied')
  occupied(
    @Param('farmId') farmId: string,
    @Query('except') except?: string,
  ): Promise<readonly Occupancy[]> {
    return this.plans.occupied(farmId, except);
  }
}
