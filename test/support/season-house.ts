import { once } from 'node:events';
import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { EmptyDatabase } from './databases.js';
import { startProgram, type Program } from './program.js';

/** Noon on the farm of the tests. */
const NOON = 'T16:00:00Z';

/** What a phone has to send: it has its own key, by which it is one fact however often it is sent. */
export interface PhoneFact {
  readonly key: string;
  readonly kind: string;
  readonly about: string;
  readonly on: string;
  readonly details: object;
}

/** The program over the days of a season that is over in seconds: killed and started at will. */
export class SeasonHouse {
  readonly acknowledged = new Set<string>();
  kills = 0;

  private constructor(
    private readonly place: EmptyDatabase,
    private readonly clock: Clock,
    private program: Program,
    public today: string,
  ) {}

  static async open(place: EmptyDatabase, today: string): Promise<SeasonHouse> {
    const clock = new Clock();
    clock.set(today);
    return new SeasonHouse(place, clock, await start(place, clock), today);
  }

  /** A connection of its own each time: the program closes idle ones when its clock jumps. */
  private get api() {
    return request(this.program.url);
  }

  async nextDay(): Promise<void> {
    this.today = addDays(this.today, 1);
    this.clock.set(this.today);
    // The clock of the program is read back: it looks at the file again and again.
    for (;;) {
      const { headers } = await this.api.get('/api/farms').expect(200);
      if (String(headers['asked-at']).startsWith(this.today)) return;
    }
  }

  /** Kills it in the middle of what is being sent, and starts it again. */
  async killWhile(sending: Promise<unknown>): Promise<void> {
    this.program.child.kill('SIGKILL');
    this.kills += 1;
    await once(this.program.child, 'close');
    await sending;
    this.program = await start(this.place, this.clock);
  }

  async get<T>(path: string): Promise<T> {
    return (await this.api.get(`/api${path}`).expect(200)).body as T;
  }

  async put(path: string, body: object): Promise<void> {
    await this.api.put(`/api${path}`).send(body).expect(200);
  }

  async post<T>(path: string, body: object): Promise<T> {
    return (await this.api.post(`/api${path}`).send(body).expect(201)).body as T;
  }

  /** Tells a fact as a phone does; whether it was acknowledged. A program that is killed answers nothing. */
  async tell(farmId: string, fact: PhoneFact): Promise<boolean> {
    const telling = this.api.post(`/api/farms/${farmId}/told`).send({ facts: [fact] });
    const answer = await telling.then(
      ({ status, text }) => ({ status, text }),
      // Whether this was kept is open.
      () => undefined,
    );
    if (!answer) return false;
    if (answer.status !== 201) throw new Error(`${fact.key}: ${answer.text}`);
    this.acknowledged.add(fact.key);
    return true;
  }

  async stop(): Promise<void> {
    await this.program.stop();
    this.clock.remove();
  }
}

/** The file that a program started by a test takes its day from. */
class Clock {
  private readonly folder = mkdtempSync(join(tmpdir(), 'broodfold-clock-'));
  readonly file = join(this.folder, 'shift');

  /** It is noon of a day. Written aside first, so that nobody reads half a number. */
  set(day: string): void {
    writeFileSync(`${this.file}.new`, String(Date.parse(`${day}${NOON}`) - Date.now()));
    renameSync(`${this.file}.new`, this.file);
  }

  remove(): void {
    rmSync(this.folder, { recursive: true });
  }
}

const start = (place: EmptyDatabase, { file }: Clock): Promise<Program> =>
  startProgram({
    ...place.env,
    NODE_OPTIONS: '--import=./test/support/shifted-clock.mjs',
    CLOCK_SHIFT_FILE: file,
  });
