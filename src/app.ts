import type { LogLevel } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import compression from 'compression';
import type { NextFunction, Request, Response } from 'express';
import helmet from 'helmet';
import { AppModule } from './app.module.js';
import { serveApiDocument } from './common/api-document.js';
import { sameOrigin } from './common/same-origin.js';
import { BodyPipe } from './common/body.pipe.js';
import { ProblemFilter } from './common/problem.filter.js';

/** Builds the application, ready to listen. */
export async function createApp(
  logger: LogLevel[] | false = ['error', 'warn'],
): Promise<NestExpressApplication> {
  const app = await NestFactory.create<NestExpressApplication>(AppModule, {
    logger,
    bodyParser: false,
  });
  app.set('etag', false);
  app.disable('x-powered-by');
  app.use(sameOrigin(isLoopback(process.env['HOST'])));
  app.useBodyParser('json', { limit: '1mb' });
  app.useBodyParser('text', { limit: '12mb', type: 'text/csv' });
  app.use(
    pagesOnly(
      helmet({
        contentSecurityPolicy: {
          directives: {
            'style-src': ["'self'", "'unsafe-inline'"],
            'upgrade-insecure-requests': null,
          },
        },
        strictTransportSecurity: false,
      }),
    ),
  );
  app.use(exceptPlans(compression()));
  app.setGlobalPrefix('api');
  app.useGlobalPipes(new BodyPipe());
  app.useGlobalFilters(new ProblemFilter());
  app.enableShutdownHooks();
  serveApiDocument(app);
  return app;
}

const isLoopback = (host: string | undefined): boolean =>
  host === undefined || host === 'localhost' || host === '::1' || host.startsWith('127.');

type Middleware = (request: Request, response: Response, next: NextFunction) => void;

/** Security headers of documents mean nothing for JSON, which is only told not to be sniffed. */
const pagesOnly =
  (middleware: Middleware): Middleware =>
  (request, response, next) => {
    if (!request.url.startsWith('/api/')) return middleware(request, response, next);
    response.setHeader('X-Content-Type-Options', 'nosniff');
    next();
  };

/** Plans go to scripts on this machine: compressing them costs more than it saves. */
const exceptPlans =
  (middleware: Middleware): Middleware =>
  (request, response, next) =>
    request.url.startsWith('/api/plans/') ? next() : middleware(request, response, next);
