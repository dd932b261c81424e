import { Body, Controller, Get, Header, HttpCode, Param, Post } from '@nestjs/common';
import { ApiBody, ApiTags } from '@nestjs/swagger';
import type { ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import { ArrivalSearchDto, OrderDto } from './order.dto.js';
import { OrderPipe, type CheckedOrder } from './order.pipe.js';
import { PlansService } from './plans.service.js';

const JSON_TYPE = 'application/json; charset=utf-8';

@ApiTags('plans')
@Controller()
export class PlansController {
  constructor(private readonly plans: PlansService) {}

  /** Plans an order without saving anything. */
  @Post('plans/preview')
  @HttpCode(200)
  @Header('Content-Type', JSON_TYPE)
  @ApiBody({ type: OrderDto })
  preview(@Body(OrderPipe) checked: CheckedOrder): Promise<string> {
    return this.plans.preview(checked);
  }

  /** Opens every number of an order's plan, in the farm's units. */
  @Post('plans/explain')
  @HttpCode(200)
  @Header('Content-Type', JSON_TYPE)
  explain(@Body() order: OrderDto): Promise<string> {
    return this.plans.explanations(order);
  }

  /** Scores every arrival week of a span, with reasons. */
  @Post('plans/arrivals')
  @HttpCode(200)
  arrivals(@Body() search: ArrivalSearchDto): Promise<ArrivalWeek[]> {
    return this.plans.arrivals(search);
  }

  @Get('farms/:farmId/batches/:id/plan')
  @Header('Content-Type', JSON_TYPE)
  planOf(@Param('farmId') farmId: string, @Param('id') id: string): Promise<string> {
    return this.plans.planOf(farmId, id);
  }
}
