import { Body, Controller, Get, HttpCode, Param, Post, Res } from '@nestjs/common';
import { ApiBody, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import type { PlainDate } from '../../shared/calendar/plain-date.js';
import type { ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import { ArrivalSearchDto, ComparisonDto, OrderDto, ReadyByDto } from '../documents/order.dto.js';
import type { ReadyBy } from '../../shared/plan/ready-by.js';
import { OrderPipe, type CheckedOrder } from './order.pipe.js';
import { sendJson } from '../common/send-json.js';
import { PlansService } from './plans.service.js';
import { Answers, AnswersList } from '../common/answers.js';
import {
  ARRIVAL_WEEK,
  BATCH_COMPARISON,
  BATCH_COST,
  BATCH_ENDS,
  BATCH_PLAN,
  EXPLANATION,
  READY_BY,
} from '../common/plan-answers.js';

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
    sendJson(response, await this.plans.preview(checked));
  }

  /** Opens every number of an order's plan, in the farm's units. */
  @AnswersList(EXPLANATION)
  @Post('plans/explain')
  @HttpCode(200)
  async explain(@Body() order: OrderDto, @Res() response: Response): Promise<void> {
    sendJson(response, await this.plans.explanations(order));
  }

  /** Scores every arrival week of a span, with reasons. */
  @AnswersList(ARRIVAL_WEEK)
  @Post('plans/arrivals')
  @HttpCode(200)
  arrivals(@Body() search: ArrivalSearchDto): Promise<ArrivalWeek[]> {
    return this.plans.arrivals(search);
  }

  /** Plans from the end: when chicks must come, what speaks against it, and how many at most. */
  @Answers(READY_BY)
  @Post('plans/ready-by')
  @HttpCode(200)
  readyBy(@Body() asked: ReadyByDto): Promise<ReadyBy> {
    return this.plans.readyBy(asked);
  }

  /** When each saved batch is processed or lays its first eggs, by its id, as its plan says it. */
  @Answers(BATCH_ENDS)
  @Get('farms/:farmId/batch-ends')
  endsOf(@Param('farmId') farmId: string): Promise<Record<string, PlainDate>> {
    return this.plans.endsOf(farmId);
  }

  @Answers(BATCH_PLAN)
  @Get('farms/:farmId/batches/:id/plan')
  async planOf(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Res() response: Response,
  ): Promise<void> {
    sendJson(response, await this.plans.planOf(farmId, id));
  }

  /** What it must bring, and when to stop feeding it: a line a week, or a quarter of lay. */
  @Answers(BATCH_COST)
  @Get('farms/:farmId/batches/:id/cost')
  async costOf(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Res() response: Response,
  ): Promise<void> {
    sendJson(response, await this.plans.costOf(farmId, id));
  }

  /** A saved batch beside up to three other ways to raise it. */
  @Answers(BATCH_COMPARISON)
  @Post('farms/:farmId/batches/:id/compare')
  @HttpCode(200)
  async compare(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() { choices }: ComparisonDto,
    @Res() response: Response,
  ): Promise<void> {
    sendJson(response, await this.plans.compare(farmId, id, choices));
  }
}
