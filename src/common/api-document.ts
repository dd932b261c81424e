import type { NestExpressApplication } from '@nestjs/platform-express';
import {
  ApiProperty,
  DocumentBuilder,
  SwaggerModule,
  getSchemaPath,
  type OpenAPIObject,
} from '@nestjs/swagger';

/** One thing that is wrong with one field, as it is answered. */
class FieldProblem {
  @ApiProperty({ description: 'Path of the field, such as batch.wantedBirds' }) field!: string;
  @ApiProperty({
    enum: [
      'out-of-bounds',
      'not-a-number',
      'not-a-date',
      'not-allowed',
      'missing',
      'conflict',
      'unreadable',
    ],
  })
  code!: string;
  @ApiProperty({
    description: 'What was given',
    nullable: true,
    type: 'object',
    additionalProperties: true,
  })
  given!: unknown;
  @ApiProperty({ required: false, oneOf: [{ type: 'number' }, { type: 'string' }] }) min?: unknown;
  @ApiProperty({ required: false, oneOf: [{ type: 'number' }, { type: 'string' }] }) max?: unknown;
  @ApiProperty({ required: false, type: [String] }) allowed?: string[];
  @ApiProperty({ required: false, description: 'SI unit of min, max and given' }) unit?: string;
  @ApiProperty({ required: false, description: 'Path of the field that is the bound' })
  boundBy?: string;
  @ApiProperty({ description: 'What to do' }) fix!: string;
  @ApiProperty({ description: 'All of it in words' }) text!: string;
}

/** Every error of the service (RFC 9457). */
class ProblemDocument {
  @ApiProperty() type!: string;
  @ApiProperty() title!: string;
  @ApiProperty({ type: 'integer' }) status!: number;
  @ApiProperty() detail!: string;
  @ApiProperty() instance!: string;
  @ApiProperty({ required: false, type: [FieldProblem] }) problems?: FieldProblem[];
  @ApiProperty({
    required: false,
    description: 'The row as it is now, when it was changed meanwhile',
  })
  current?: object;
  @ApiProperty({ required: false, description: 'What was sent then' }) yours?: object;
}

/** Serves the API document: every operation with what it takes, answers and refuses. */
export function serveApiDocument(app: NestExpressApplication): void {
  const config = new DocumentBuilder()
    .setTitle('Broodfold')
    .setDescription(
      'Plans for the animals of a small farm. Every value is SI; money is in minor units.',
    )
    .setVersion('0.1')
    .addGlobalResponse({
      status: 'default',
      description: 'What was wrong, and what to do about it',
      content: { 'application/problem+json': { schema: { $ref: getSchemaPath(ProblemDocument) } } },
    })
    .build();
  SwaggerModule.setup(
    'api',
    app,
    () =>
      withSuccess(SwaggerModule.createDocument(app, config, { extraModels: [ProblemDocument] })),
    { ui: false, jsonDocumentUrl: 'api/openapi.json', raw: ['json'] },
  );
}

/** An operation that only says when it refuses a newer row answers nothing when it succeeds. */
function withSuccess(document: OpenAPIObject): OpenAPIObject {
  for (const methods of Object.values(document.paths)) {
    for (const { responses } of Object.values(methods) as { responses?: object }[]) {
      if (!responses || Object.keys(responses).some((status) => status.startsWith('2'))) continue;
      Object.assign(responses, { 204: { description: 'Done' } });
    }
  }
  return document;
}
