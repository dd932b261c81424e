import { Injectable, type ArgumentMetadata, type PipeTransform } from '@nestjs/common';
import { mayBeLarge } from '../work-pool/large-bodies.js';
import type { WorkPool } from '../work-pool/work-pool.service.js';
import { LARGE, LIGHT, weightOf } from './body-weight.js';
import { checkDto } from './check-dto.js';

/**
 * Checks every body that has a DTO class by its rules, just as the terminal checks an order. Large
 * bodies are checked in a thread, so that nobody waits for them but who sent them.
 */
@Injectable()
export class BodyPipe implements PipeTransform<unknown, unknown> {
  constructor(private readonly pool: WorkPool) {}

  transform(value: unknown, { type, metatype }: ArgumentMetadata): unknown {
    if (type !== 'body' || !metatype || PLAIN.includes(metatype)) return value;
    const dto = metatype as new () => object;
    return mayBeLarge(dto) && LIGHT.fields < weightOf(value, LARGE)
      ? this.checkInThread(dto, value)
      : checkDto(dto, value);
  }

  private async checkInThread(dto: new () => object, body: unknown): Promise<unknown> {
    await this.pool.run('checkLargeBody', { name: dto.name, body });
    return body;
  }
}

/** Types that carry no rules: those bodies are checked where they are used. */
const PLAIN: readonly unknown[] = [Object, String, Number, Boolean, Array];
