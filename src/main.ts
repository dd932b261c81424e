import 'reflect-metadata';
import { ConsoleLogger } from '@nestjs/common';
import { createApp } from './app.js';
import { tlsOf } from './certificates/tls.js';
import { readSettings } from './settings.js';
import { whyNotStarted } from './why-not-started.js';

try {
  const settings = readSettings();
  const app = await createApp(settings);
  await app.listen(settings.port, settings.host);
  app.useLogger(new ConsoleLogger({ logLevels: ['error', 'warn'] }));
  const { host } = settings;
  const shown = host === '0.0.0.0' || host === '::' ? 'localhost' : host;
  const scheme = tlsOf(settings) ? 'https' : 'http';
  const { port } = app.getHttpServer().address() as { port: number };
  console.log(
    `Broodfold is ready at ${scheme}://${shown.includes(':') ? `[${shown}]` : shown}:${port}/`,
  );
} catch (error) {
  console.error(whyNotStarted(error));
  process.exit(1);
}
