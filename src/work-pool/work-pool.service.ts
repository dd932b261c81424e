import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import { Piscina } from 'piscina';
import { askerNow } from '../common/asker.js';
import { TablesService } from '../reference/tables.service.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { TaskInput, TaskName, TaskOutput } from './tasks.js';
import { Turns } from './turns.js';
import { WORKER_FILE } from './worker-file.js';
import type { Answered, Asked } from './worker.js';

/**
 * One thread is left to answer requests; more than four plans at once no household asks for. Two
 * there are always, so that one farm's long plan does not keep another's from being begun.
 */
const THREADS = Math.min(4, Math.max(2, availableParallelism() - 1));
const IDLE_MS = 60_000;
/** Room for what is soon thrown away: with less of it plans spend a quarter of their time on it. */
const YOUNG_MB = 96;
/** Work that is done within this is not ended: to start another thread would take longer. */
const SOON_DONE_MS = 50;
/**
 * How much code runs before the machine's own code is made of what runs often. As it comes it is
 * 132 KB, and a plan in a new thread takes twice as long as one in an old thread: most of that goes
 * into code that is not needed again. Ten farms' plans one after another take a fourteenth less time
 * than by half of this, chances, which run for seconds, a twentieth more.
 */
setFlagsFromString('--interrupt-budget=1000000');
/**
 * Threads for long computations, so that other requests are answered meanwhile. Farms take turns,
 * and work whose asker has gone is taken out of the line or, when it runs, ended with its thread.
 */
@Injectable()
export class WorkPool implements OnModuleDestroy {
  private readonly threads: Piscina<Asked, Answered>;
  private readonly turns = new Turns(THREADS);

  constructor({ tables }: TablesService) {
    this.threads = new Piscina<Asked, Answered>({
      ...WORKER_FILE,
      minThreads: 0,
      maxThreads: THREADS,
      idleTimeout: IDLE_MS,
      workerData: tables,
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB },
    });
  }

  /**
   * Does a task in a thread, for whoever asks now.
   *
   * @throws FieldError with the problems that the task found in its input
   * @throws AskerGone when nobody waits for the answer any more
   */
  async run<Name extends TaskName>(
    task: Name,
    input: TaskInput<Name>,
    { signal, turn } = askerNow(),
  ): Promise<TaskOutput<Name>> {
    const answered = await this.turns.take(
      turn,
      () => this.inThread({ task, input }, signal),
      signal,
    );
    if ('problems' in answered) throw new FieldError(answered.problems);
    return answered.output as TaskOutput<Name>;
  }

  private async inThread(asked: Asked, signal: AbortSignal): Promise<Answered> {
    const end = new AbortController();
    let timer: NodeJS.Timeout | undefined;
    const endSoon = (): void => {
      timer = setTimeout(() => end.abort(), SOON_DONE_MS);
    };
    if (signal.aborted) endSoon();
    else signal.addEventListener('abort', endSoon, { once: true });
    try {
      return await this.threads.run(asked, { signal: end.signal });
    } catch (error) {
      // The pool's own word for it says nothing of why.
      throw end.signal.aborted ? signal.reason : error;
    } finally {
      clearTimeout(timer);
      signal.removeEventListener('abort', endSoon);
    }
  }

  async onModuleDestroy(): Promise<void> {
    await this.threads.destroy();
  }
}
