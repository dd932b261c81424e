import { Body, Controller, Get, Header, HttpCode, Param, Post } from '@nestjs/common';
import { ApiBody, ApiTags } from '@nestjs/swagger';
import type { ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import { ArrivalSearchDto, OrderDto } from '../documents/order.dto.js';
import { OrderPipe, type CheckedOrder } from './order.pipe.js';
import { PlansService } from './plans.service.js';
import { Answers, AnswersList } from '../common/answers.js';
import { ARRIVAL_WEEK, BATCH_PLAN, EXPLANATION } from '../common/plan-answers.js';

const JSON_TYPE = 'application/json; charset=utf-8';

@ApiTags('plans')
@Controller()
export class PlansController {
  constructor(private readonly plans: PlansService) {}

  /** Plans an order without saving anything. */
  @Answers(BATCH_PLAN)
  @Post('plans/preview')
  @HttpCode(200)
  @Header('Content-Type', JSON_TYPE)
  @ApiBody({ type: OrderDto })
  preview(@Body(OrderPipe) checked: CheckedOrder): Promise<string> {
    return this.plans.preview(checked);
  }

  /** Opens every number of an order's plan, in the farm's units. */
  @AnswersList(EXPLANATION)
  @Post('plans/explain')
  @HttpCode(200)
  @Header('Content-Type', JSON_TYPE)
  explain(@Body() order: OrderDto): Promise<string> {
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
  @Header('Content-Type', JSON_TYPE)
  planOf(@Param('farmId') farmId: string, @Param('id') id: string): Promise<string> {
    return this.plans.planOf(farmId, id);
  }
}
