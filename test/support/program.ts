import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';

/** The program in a process of its own, as `compile-program.mjs` compiled it before all tests. */
export interface Program {
  readonly url: string;
  readonly child: ChildProcess;
  /** All that it has printed so far. */
  readonly said: () => string;
  readonly stop: () => Promise<void>;
}

export interface Ended {
  readonly exitCode: number | null;
  readonly said: string;
  readonly ms: number;
}

export interface ProgramOptions {
  /** Largest file the program may write, in blocks of 512 bytes (POSIX `ulimit -f`). */
  readonly mostBlocks?: number;
  /** Run by a user who may not do everything, when the tests themselves are run by one who may. */
  readonly isPlainUser?: boolean;
}

type Env = Readonly<Record<string, string | undefined>>;

/** A user without rights of any kind. */
const NOBODY = 65534;

function startProcess(env: Env, { mostBlocks, isPlainUser }: ProgramOptions): ChildProcess {
  const node = [process.execPath, 'test-output/program/main.js'];
  const [command, ...args] =
    mostBlocks === undefined
      ? node
      : ['sh', '-c', `ulimit -f ${mostBlocks}; exec "$@"`, 'sh', ...node];
  const isRoot = process.getuid?.() === 0;
  return spawn(command!, args, {
    cwd: PROJECT_ROOT,
    env: { ...process.env, NODE_OPTIONS: '', HOST: '', DATABASE_URL: '', PORT: '0', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
    ...(isPlainUser && isRoot ? { uid: NOBODY, gid: NOBODY } : {}),
  });
}

function collect(child: ChildProcess): () => string {
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream!.setEncoding('utf8').on('data', (text: string) => (said += text));
  }
  return () => said;
}

/** Starts the program and waits for its end, as when something keeps it from starting. */
export async function programThatEnds(env: Env, options: ProgramOptions = {}): Promise<Ended> {
  const start = performance.now();
  const child = startProcess(env, options);
  const said = collect(child);
  const [exitCode] = (await once(child, 'close')) as [number | null];
  return { exitCode, said: said(), ms: performance.now() - start };
}

/** Starts the program and waits until it says its address. */
export async function startProgram(env: Env, options: ProgramOptions = {}): Promise<Program> {
  const child = startProcess(env, options);
  const said = collect(child);
  const url = await new Promise<string>((resolve, reject) => {
    child.stdout!.on('data', () => {
      const found = /ready at (https?:\/\/[^\s/]+)/.exec(said())?.[1];
      if (found) resolve(found);
    });
    child.once('close', () => reject(new Error(`The program ended: ${said()}`)));
  });
  return {
    url,
    child,
    said,
    stop: async () => {
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill();
      await once(child, 'close');
    },
  };
}
