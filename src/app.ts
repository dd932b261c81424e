import { constants } from 'node:zlib';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import compression from 'compression';
import type { NextFunction, Request, Response } from 'express';
import helmet from 'helmet';
import { AppModule } from './app.module.js';
import { tlsOf } from './certificates/tls.js';
import { serveApiDocument } from './common/api-document.js';
import { askedAhead } from './common/asked-ahead.js';
import { requestsAsAskers } from './common/asker.js';
import { beforeReading } from './common/fields-in-text.js';
import { hostsOf } from './common/allowed-hosts.js';
import { sameOrigin } from './common/same-origin.js';
import { BodyPipe } from './work-pool/body.pipe.js';
import { ProblemFilter } from './common/problem.filter.js';
import { WorkPool } from './work-pool/work-pool.service.js';
import { readSettings, type Settings } from './settings/settings.js';

/**
 * Builds the application, ready to listen. It logs nothing until it is given a logger.
 *
 * @throws what keeps it from being built, for `whyNotStarted` to put into words
 */
export async function createApp(
  settings: Settings = readSettings(),
): Promise<NestExpressApplication> {
  const tls = tlsOf(settings);
  const app = await NestFactory.create<NestExpressApplication>(AppModule, {
    // The framework would print the stack of what keeps it from starting, and end the process.
    logger: false,
    abortOnError: false,
    bodyParser: false,
    ...(tls ? { httpsOptions: tls } : {}),
  });
  app.set('etag', false);
  app.disable('x-powered-by');
  app.use(sameOrigin(hostsOf(settings.allowedHosts)));
  app.useBodyParser('json', { limit: '1mb', ...beforeReading });
  app.useBodyParser('text', { limit: '12mb', type: 'text/csv' });
  app.use(requestsAsAskers);
  app.use(
    pagesOnly(
      helmet({
        contentSecurityPolicy: {
          directives: {
            // The page's solver of feed mixes is WebAssembly.
            'script-src': ["'self'", "'wasm-unsafe-eval'"],
            'style-src': ["'self'", "'unsafe-inline'"],
            // A photo that was not sent yet is shown from the phone.
            'img-src': ["'self'", 'data:', 'blob:'],
            'upgrade-insecure-requests': null,
          },
        },
        strictTransportSecurity: false,
      }),
    ),
  );
  app.use(askedAhead);
  app.use(exceptPlans(packed));
  app.setGlobalPrefix('api');
  app.useGlobalPipes(new BodyPipe(app.get(WorkPool)));
  app.useGlobalFilters(new ProblemFilter());
  app.enableShutdownHooks();
  serveApiDocument(app);
  return app;
}

type Middleware = (request: Request, response: Response, next: NextFunction) => void;

/**
 * Security headers of documents mean nothing for JSON, which is only told not to be sniffed, and when
 * it was asked for.
 */
const pagesOnly =
  (middleware: Middleware): Middleware =>
  (request, response, next) => {
    if (!request.url.startsWith('/api/')) return middleware(request, response, next);
    response.setHeader('X-Content-Type-Options', 'nosniff');
    response.setHeader('Cross-Origin-Resource-Policy', 'same-origin');
    // What is answered holds all that was told up to then, whatever time the asker's clock shows.
    response.setHeader('Asked-At', new Date().toISOString());
    next();
  };

const page = compression();
/** An answer is packed anew each time it is given: the quickest way is nearly as small. */
const answers = compression({
  level: 1,
  brotli: { params: { [constants.BROTLI_PARAM_QUALITY]: 1 } },
});
const packed: Middleware = (request, response, next) =>
  (request.url.startsWith('/api/') ? answers : page)(request, response, next);

/** Plans go to scripts on this machine: compressing them costs more than it saves. */
const exceptPlans =
  (middleware: Middleware): Middleware =>
  (request, response, next) =>
    request.url.startsWith('/api/plans/') ? next() : middleware(request, response, next);
