import { Injectable, type ArgumentMetadata, type PipeTransform } from '@nestjs/common';
import { checkDto } from './check-dto.js';

/** Checks every body that has a DTO class by its rules, just as the terminal checks an order. */
@Injectable()
export class BodyPipe implements PipeTransform<unknown, unknown> {
  transform(value: unknown, { type, metatype }: ArgumentMetadata): unknown {
    return type === 'body' && metatype && !PLAIN.includes(metatype)
      ? checkDto(metatype as new () => object, value)
      : value;
  }
}

/** Types that carry no rules: those bodies are checked where they are used. */
const PLAIN: readonly unknown[] = [Object, String, Number, Boolean, Array];
