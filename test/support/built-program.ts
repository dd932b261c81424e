import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';

/** The program as `npm run build` made it, started as a user starts it, on a store of its own. */
export interface BuiltProgram {
  readonly url: string;
  /** Kills it where it stands, as when the power fails, and starts it again on what it stored. */
  readonly kill: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

/** @param clockFile the program's clock is so many milliseconds ahead as the file says */
export async function startBuilt(clockFile?: string): Promise<BuiltProgram> {
  const dataDir = mkdtempSync(join(tmpdir(), 'broodfold-page-'));
  const { DATABASE_URL: _database, ...env } = process.env;
  const clock =
    clockFile === undefined
      ? {}
      : {
          CLOCK_SHIFT_FILE: clockFile,
          NODE_OPTIONS: '--import=./test/support/shifted-clock.mjs',
        };
  const start = (port: string) => started({ ...env, ...clock, DATA_DIR: dataDir, PORT: port });
  const first = await start('0');
  const { url } = first;
  let { child } = first;
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    const gone = once(child, 'exit');
    child.kill(signal);
    await gone;
  };
  return {
    url,
    kill: async () => {
      await end('SIGKILL');
      ({ child } = await start(new URL(url).port));
    },
    stop: async () => {
      await end('SIGTERM');
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

/** It is there once it has said where. */
async function started(env: NodeJS.ProcessEnv): Promise<{ child: ChildProcess; url: string }> {
  const child = spawn(process.execPath, ['dist/src/main.js'], {
    cwd: PROJECT_ROOT,
    env,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const url = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const found = /http:\/\/\S+/.exec(said)?.[0];
      if (found) resolve(found.replace(/\/$/, ''));
    });
    child.once('exit', (code) =>
      reject(new Error(`The program ended with ${code} before it was ready: ${said}`)),
    );
  });
  return { child, url };
}
