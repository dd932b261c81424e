import { Injectable, type PipeTransform } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { BatchDto } from '../batches/batch.dto.js';
import { checkDto } from '../common/check-dto.js';
import { OrderDto } from './order.dto.js';

/** An order that passed its rules, with its content as text: equal orders have equal keys. */
export interface CheckedOrder {
  readonly order: OrderDto;
  readonly key: string;
}

/**
 * Checks the body of a preview. What lies around the batch is kept by its content, because a
 * household that slides a date sends the same farm again and again.
 */
@Injectable()
export class OrderPipe implements PipeTransform<unknown, CheckedOrder> {
  private readonly around = new LRUCache<string, OrderDto>({ max: 100 });

  transform(body: unknown): CheckedOrder {
    if (typeof body !== 'object' || body === null || !('batch' in body)) {
      return { order: checkDto(OrderDto, body), key: '' };
    }
    const { batch, ...rest } = body;
    const aroundKey = JSON.stringify(rest);
    const key = aroundKey + JSON.stringify(batch);
    const known = this.around.get(aroundKey);
    if (known)
      return {
        order: Object.assign(new OrderDto(), known, { batch: checkDto(BatchDto, batch, 'batch') }),
        key,
      };
    const order = checkDto(OrderDto, body);
    this.around.set(aroundKey, order);
    return { order, key };
  }
}
