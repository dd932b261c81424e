import { HttpException, ValidationPipe, type ArgumentMetadata } from '@nestjs/common';
import { FieldError } from '../../shared/problems/field-problem.js';
import { unreadable, VALIDATION } from './check-dto.js';
import { fieldErrorOf } from './problem.js';

/** Checks every body against its DTO. A body that the libraries stumble over is refused, not a 500. */
export class BodyPipe extends ValidationPipe {
  constructor() {
    super({ ...VALIDATION, transform: true, exceptionFactory: (errors) => fieldErrorOf(errors) });
  }

  override async transform(value: unknown, metadata: ArgumentMetadata): Promise<unknown> {
    try {
      return (await super.transform(value, metadata)) as unknown;
    } catch (error) {
      if (error instanceof FieldError || error instanceof HttpException) throw error;
      throw unreadable('body');
    }
  }
}
