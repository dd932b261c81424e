import { Injectable, type PipeTransform } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { BatchDto } from '../batches/batch.dto.js';
import { checkDto } from '../common/check-dto.js';
import { OrderDto } from '../documents/order.dto.js';

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
  private readonly orders = new LRUCache<string, OrderDto>({ max: 200 });
  private readonly around = new LRUCache<string, OrderDto>({ max: 100 });

  transform(body: unknown): CheckedOrder {
    if (typeof body !== 'object' || body === null || !('batch' in body)) {
      return { order: checkDto(OrderDto, body), key: '' };
    }
    const { batch, ...rest } = body;
    const aroundKey = JSON.stringify(rest);
    const key = aroundKey + JSON.stringify(batch);
    const same = this.orders.get(key);
    if (same) return { order: same, key };
    const around = this.around.get(aroundKey);
    const order = around
      ? Object.assign(new OrderDto(), around, { batch: checkDto(BatchDto, batch, 'batch') })
      : checkDto(OrderDto, body);
    if (!around) this.around.set(aroundKey, order);
    this.orders.set(key, order);
    return { order, key };
  }
}
