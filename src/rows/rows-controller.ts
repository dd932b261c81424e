import { Body, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiBody } from '@nestjs/swagger';
import type { OneOfField, RowDescription } from '../../shared/farm/field.js';
import { Answers, AnswersList } from '../common/answers.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import type { Schema } from '../common/schema-of.js';

/** What keeps the rows of one kind that belong to a farm. */
interface RowsService<Sent> {
  create(farmId: string, sent: Sent): Promise<unknown>;
  findAll(farmId: string): Promise<unknown[]>;
  findOne(farmId: string, id: string): Promise<unknown>;
  update(farmId: string, id: string, sent: Sent, expected?: Expected): Promise<unknown>;
  remove(farmId: string, id: string, expected?: Expected): Promise<void>;
}

/** What is sent: a class with its rules, or what the API document says of a body with none. */
type SentAs<Sent> = (new () => Sent) | { readonly schema: Schema };

type RowsController<Sent> = new (service: RowsService<Sent>) => object;

/**
 * A controller with the operations that every kind of row has: to add, list, read, change and
 * delete. The controller of a kind extends it, and adds its path and what else there is to do.
 *
 * @param answer the row as it is answered
 */
export function rowsController<Sent extends object>(
  answer: RowDescription | OneOfField,
  sentAs: SentAs<Sent>,
): RowsController<Sent> {
  class Rows {
    constructor(private readonly service: RowsService<Sent>) {}

    @Answers(answer)
    @Post()
    create(@Param('farmId') farmId: string, @Body() sent: Sent): Promise<unknown> {
      return this.service.create(farmId, sent);
    }

    @AnswersList(answer)
    @Get()
    findAll(@Param('farmId') farmId: string): Promise<unknown[]> {
      return this.service.findAll(farmId);
    }

    @Answers(answer)
    @Get(':id')
    findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<unknown> {
      return this.service.findOne(farmId, id);
    }

    @Answers(answer)
    @Put(':id')
    @TakesVersion()
    update(
      @Param('farmId') farmId: string,
      @Param('id') id: string,
      @Body() sent: Sent,
      @ExpectedVersion() expected: Expected,
    ): Promise<unknown> {
      return this.service.update(farmId, id, sent, expected);
    }

    @Delete(':id')
    @TakesVersion()
    @HttpCode(204)
    remove(
      @Param('farmId') farmId: string,
      @Param('id') id: string,
      @ExpectedVersion() expected: Expected,
    ): Promise<void> {
      return this.service.remove(farmId, id, expected);
    }
  }
  takes(Rows.prototype, 'create', sentAs);
  takes(Rows.prototype, 'update', sentAs);
  return Rows;
}

/** Where the compiler writes down the types of a method's parameters. */
const TYPES = 'design:paramtypes';

/** Says what the body of a method is; the compiler cannot, where it knows a type by a name only. */
function takes(target: object, method: string, sentAs: SentAs<object>): void {
  if ('schema' in sentAs) {
    const descriptor = Object.getOwnPropertyDescriptor(target, method)!;
    ApiBody({ schema: sentAs.schema })(target, method, descriptor);
    return;
  }
  const types = Reflect.getMetadata(TYPES, target, method) as unknown[];
  const body = method === 'create' ? 1 : 2;
  Reflect.defineMetadata(
    TYPES,
    types.map((type, k) => (k === body ? sentAs : type)),
    target,
    method,
  );
}
