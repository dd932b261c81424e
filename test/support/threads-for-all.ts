import { Piscina as Threads } from 'piscina';

const pools = new Map<unknown, Threads>();

/**
 * Stands for Piscina in what `compile-program.mjs` makes: services that start one after the other in a
 * process have their threads in common, as each new thread compiles what it runs anew. What a process
 * no longer needs ends with it: threads without work don't keep it.
 */
export class Piscina {
  private readonly threads: Threads;

  constructor(options: ConstructorParameters<typeof Threads>[0]) {
    const key = options?.filename;
    this.threads = pools.get(key) ?? new Threads(options);
    pools.set(key, this.threads);
  }

  run(...given: Parameters<Threads['run']>): ReturnType<Threads['run']> {
    return this.threads.run(...given);
  }

  destroy(): Promise<void> {
    return Promise.resolve();
  }
}
