import { RequestMethod } from '@nestjs/common';
import { HTTP_CODE_METADATA, METHOD_METADATA } from '@nestjs/common/constants.js';
import { ApiExtraModels, ApiResponse, ApiSchema, getSchemaPath } from '@nestjs/swagger';
import type { OneOfField, RowDescription } from '../../shared/farm/field.js';
import { answerOf } from './dto-of.js';
import { schemaOf, type Schema } from './schema-of.js';

type Class = new () => object;

/** What an operation answers: a row, one of several kinds of row, or something by its name. */
type Answer = RowDescription | OneOfField | Class;

/**
 * Says in the API document what an operation answers. It stands above the decorator that names the
 * method of the request, whose status it takes.
 */
export const Answers = (answer: Answer): MethodDecorator => answering(answer, (one) => one);

/** The same for an operation that answers a list of them. */
export const AnswersList = (answer: Answer): MethodDecorator =>
  answering(answer, (items) => ({ type: 'array', items }));

/** A plan, a table or another answer that no row describes, by its name in the API document. */
export function named(name: string, description: string): Class {
  const made = { [name]: class {} }[name]!;
  ApiSchema({ description })(made);
  return made;
}

function answering(answer: Answer, around: (one: SchemaOrRef) => SchemaOrRef): MethodDecorator {
  const { classes, one } = shapeOf(answer);
  const schema = around(one);
  return (target, key, descriptor) => {
    ApiExtraModels(...classes)(target, key, descriptor);
    ApiResponse({ status: statusOf(descriptor.value as object), description: '', schema })(
      target,
      key,
      descriptor,
    );
  };
}

type SchemaOrRef = Schema | { readonly $ref: string };

function shapeOf(answer: Answer): { classes: readonly Class[]; one: SchemaOrRef } {
  if (typeof answer !== 'function' && 'kind' in answer) {
    const classes = Object.values(answer.rows).map(answerOf);
    return { classes, one: schemaOf(answer, ({ name }) => name) };
  }
  const made = typeof answer === 'function' ? answer : answerOf(answer);
  return { classes: [made], one: { $ref: getSchemaPath(made) } };
}

/** The status that a method of a controller answers with. */
const statusOf = (method: object): number =>
  (Reflect.getMetadata(HTTP_CODE_METADATA, method) as number | undefined) ??
  (Reflect.getMetadata(METHOD_METADATA, method) === RequestMethod.POST ? 201 : 200);
