import { Injectable, type OnModuleDestroy, type OnModuleInit } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import type { Client } from 'pg';
import { DataSource } from 'typeorm';

/** One lock for each schema, as each holds a database of its own. */
const LOCK = `(hashtext('broodfold'), hashtext(current_schema()))`;
const SERVICE_LOCK = `SELECT pg_try_advisory_lock_shared${LOCK} AS "held"`;
/** Held while a copy is brought back; refused while a service runs. */
export const RESTORE_LOCK = `SELECT pg_try_advisory_lock${LOCK} AS "held"`;

/** How long to wait before a lost connection is made again. */
const AGAIN_MS = 5000;

/**
 * Tells others on PostgreSQL that a service uses the tables, so that no copy is brought back under
 * it: a lock of the session, which goes with the program however it ends. On SQLite the open file
 * says the same.
 */
@Injectable()
export class DatabaseHold implements OnModuleInit, OnModuleDestroy {
  private client: Client | undefined;
  private timer: NodeJS.Timeout | undefined;
  private isOver = false;

  constructor(@InjectDataSource() private readonly source: DataSource) {}

  async onModuleInit(): Promise<void> {
    if (await this.take()) return;
    throw new Error('A copy is being brought back into the database. Start again when it is done.');
  }

  async onModuleDestroy(): Promise<void> {
    this.isOver = true;
    clearTimeout(this.timer);
    await this.client?.end();
  }

  private async take(): Promise<boolean> {
    const { options } = this.source;
    if (options.type !== 'postgres') return true;
    // Loaded only here: on SQLite nobody needs it.
    const { Client } = await import('pg');
    const client = new Client({ connectionString: options.url, keepAlive: true });
    client.on('error', () => this.takeAgain());
    await client.connect();
    this.client = client;
    const { rows } = await client.query<{ held: boolean }>(SERVICE_LOCK);
    return rows[0]!.held;
  }

  /** The pool finds the server again by itself; so does this. */
  private takeAgain(): void {
    clearTimeout(this.timer);
    if (this.isOver) return;
    const again = (): void => {
      this.take().then(
        (isHeld) => void (isHeld || this.takeAgain()),
        () => this.takeAgain(),
      );
    };
    this.timer = setTimeout(again, AGAIN_MS).unref();
  }
}
