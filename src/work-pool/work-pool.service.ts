import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { TaskInput, TaskName, TaskOutput } from './tasks.js';
import type { Answered, Asked } from './worker.js';

/** One thread is left to answer requests; more than four plans at once no household asks for. */
const MOST_THREADS = Math.min(4, Math.max(1, availableParallelism() - 1));
const IDLE_MS = 60_000;

/** Source is run by the tests and has to be compiled in the thread as well. */
const isSource = import.meta.url.endsWith('.ts');

/** Threads for long computations, so that other requests are answered meanwhile. */
@Injectable()
export class WorkPool implements OnModuleDestroy {
  private readonly threads = new Piscina<Asked, Answered>({
    filename: fileURLToPath(new URL(isSource ? './worker.ts' : './worker.js', import.meta.url)),
    minThreads: 0,
    maxThreads: MOST_THREADS,
    idleTimeout: IDLE_MS,
    ...(isSource ? { execArgv: ['--import', '@swc-node/register/esm-register'] } : {}),
  });

  /**
   * Does a task in a thread.
   *
   * @throws FieldError with the problems that the task found in its input
   */
  async run<Name extends TaskName>(task: Name, input: TaskInput<Name>): Promise<TaskOutput<Name>> {
    const answered = await this.threads.run({ task, input });
    if ('problems' in answered) throw new FieldError(answered.problems);
    return answered.output as TaskOutput<Name>;
  }

  async onModuleDestroy(): Promise<void> {
    await this.threads.destroy();
  }
}
