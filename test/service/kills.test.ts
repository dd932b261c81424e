import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { once } from 'node:events';
import { seededRandom } from '../../shared/schedule/random.js';
import { databases, type EmptyDatabase } from '../support/databases.js';
import { newFarm } from '../support/factories.js';
import { startProgram } from '../support/program.js';

/** KILLS asks for more. */
const KILLS = Number(process.env['KILLS'] ?? 3);
const WRITERS = 4;
const TIME_MS = 60_000 + KILLS * 20_000;

describe.each(databases())('a program that is killed while it writes on $name', (database) => {
  let place: EmptyDatabase;
  beforeAll(async () => {
    place = await database.empty();
  });
  afterAll(() => place.remove());

  it(
    'has kept every write that it acknowledged, whole',
    async () => {
      const random = seededRandom(20261126);
      const acknowledged = new Map<string, string>();
      for (let kill = 0; kill < KILLS; kill++) {
        const program = await startProgram(place.env);
        let isKilled = false;
        const write = async (writer: number): Promise<void> => {
          for (let k = 0; !isKilled; k++) {
            const name = `Farm ${kill}/${writer}/${k}`;
            try {
              const response = await fetch(`${program.url}/api/farms`, {
                method: 'POST',
                headers: { 'content-type': 'application/json' },
                body: JSON.stringify(newFarm({ name })),
              });
              const { id } = (await response.json()) as { id: string };
              if (response.status === 201) acknowledged.set(id, name);
            } catch {
              // It was killed before it answered: whether this was kept is open.
            }
          }
        };
        const before = acknowledged.size;
        const writing = Array.from({ length: WRITERS }, (_, writer) => write(writer));
        // On a busy machine it is killed later, but never before it has written anything.
        do await new Promise((resolve) => setTimeout(resolve, 100 + 400 * random()));
        while (acknowledged.size === before);
        program.child.kill('SIGKILL');
        isKilled = true;
        await once(program.child, 'close');
        await Promise.all(writing);
      }
      expect(acknowledged.size).toBeGreaterThan(KILLS);
      const program = await startProgram(place.env);
      for (const [id, name] of acknowledged) {
        const response = await fetch(`${program.url}/api/farms/${id}`);
        expect(response.status).toBe(200);
        expect(await response.json()).toMatchObject(newFarm({ name }));
      }
      await program.stop();
    },
    TIME_MS,
  );
});
