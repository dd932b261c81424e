import { Injectable, type PipeTransform } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { BatchDto } from '../batches/batch.dto.js';
import { checkDto } from '../common/check-dto.js';
import { OrderDto } from '../documents/order.dto.js';

/** An order that passed its rules, with a key that no order of other content has. */
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
  private readonly orders = new LRUCache<string, CheckedOrder>({ max: 60 });
  private readonly around = new LRUCache<string, OrderDto>({ max: 60 });
  private checked = 0;

  transform(body: unknown): CheckedOrder {
    if (typeof body !== 'object' || body === null || !('batch' in body)) {
      return { order: checkDto(OrderDto, body), key: '' };
    }
    const text = JSON.stringify(body);
    let same = this.orders.get(text);
    if (!same) this.orders.set(text, (same = this.check(body)));
    return same;
  }

  private check(body: { batch: unknown }): CheckedOrder {
    const key = `${++this.checked}`;
    const { batch, ...rest } = body;
    const aroundKey = JSON.stringify(rest);
    const around = this.around.get(aroundKey);
    if (around) {
      const own = { batch: checkDto(BatchDto, batch, 'batch') };
      return { order: Object.assign(new OrderDto(), around, own), key };
    }
    const order = checkDto(OrderDto, body);
    this.around.set(aroundKey, order);
    return { order, key };
  }
}
