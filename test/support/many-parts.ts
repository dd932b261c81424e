import type { TestApp } from './app.js';

/** Splits paddocks of a farm into twenty parts each: land whose plan takes a while. */
export async function inManyParts({ api }: TestApp, path: string, paddocks = 8): Promise<void> {
  const { body } = await api.get(`${path}/paddocks`).expect(200);
  for (const { id } of (body as { id: string }[]).slice(0, paddocks))
    await api.post(`${path}/paddocks/${id}/split`).send({ parts: 20 }).expect(201);
}
