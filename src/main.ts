import 'reflect-metadata';
import { createApp } from './app.js';

const port = Number(process.env['PORT'] ?? 3210);
const host = process.env['HOST'] ?? '127.0.0.1';

if (!Number.isInteger(port) || port < 0 || 65535 < port) {
  console.error(`PORT is "${process.env['PORT']}", but must be a whole number from 0 to 65535.`);
  process.exit(1);
}
try {
  const app = await createApp();
  await app.listen(port, host);
  const shown = host === '0.0.0.0' || host === '::' ? 'localhost' : host;
  const { port: bound } = app.getHttpServer().address() as { port: number };
  console.log(
    `Broodfold is ready at http://${shown.includes(':') ? `[${shown}]` : shown}:${bound}/`,
  );
} catch (error) {
  const code = (error as NodeJS.ErrnoException).code;
  console.error(
    code === 'EADDRINUSE'
      ? `Port ${port} is taken. Stop the other program, or start with another: PORT=3211 npm start`
      : `Broodfold could not start: ${error instanceof Error ? error.message : String(error)}`,
  );
  process.exit(1);
}
