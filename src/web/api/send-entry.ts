import type { ToldFact, WorkProgress } from '../../../shared/farm/told-fact.js';
import { isUnseen } from '../../../shared/farm/told-seen.js';
import { undoneFacts } from '../../../shared/farm/work-undo.js';
import { outbox } from '../kept/outbox-store.js';
import type { Entry, Refusal, TakenBack } from '../kept/entry.js';
import { ApiError, getJson, NOT_REACHED, postJson, putJson, remove } from './client.js';
import { sendPhotos } from './photos.js';

/** What became of sending an entry. */
export type Outcome =
  | { readonly is: 'sent'; readonly facts: readonly ToldFact[] }
  | { readonly is: 'asked'; readonly theirs: readonly ToldFact[] }
  | { readonly is: 'refused'; readonly refusal: Refusal }
  /** No signal, or the service cannot keep anything just now: it is sent later. */
  | { readonly is: 'later' };

/** Statuses that say nothing against what was sent: who asks too early, too often, or not allowed in. */
const NOT_NOW = [NOT_REACHED, 401, 403, 408, 425, 429];

/** Sends an entry. Sent twice, because an answer was lost, it is kept once. */
export async function sendEntry(entry: Entry): Promise<Outcome> {
  try {
    return await send(entry);
  } catch (error) {
    // What cannot be read is no answer of the service: a guest network asks to sign in.
    if (!(error instanceof ApiError)) return { is: 'later' };
    const { problem } = error;
    if (NOT_NOW.includes(problem.status) || 500 <= problem.status) return { is: 'later' };
    const { current } = problem;
    if (problem.status === 409 && Array.isArray(current)) {
      return { is: 'asked', theirs: current as ToldFact[] };
    }
    return { is: 'refused', refusal: problem };
  }
}

async function send(entry: Entry): Promise<Outcome> {
  const { farmId, key, message, seen, saidBy } = entry;
  const from = { ...(seen ? { seen } : {}), ...(saidBy === undefined ? {} : { saidBy }) };
  if (message.does === 'tell') {
    const facts = message.facts.map((fact, k) => ({
      ...fact,
      ...from,
      key: k === 0 ? key : `${key}-${k}`,
    }));
    await sendPhotos(entry);
    return { is: 'sent', facts: await postJson<ToldFact[]>(`/farms/${farmId}/told`, { facts }) };
  }
  if (message.does === 'work') {
    const said = { ...message.said, ...from, tellKey: key };
    await putJson(`/farms/${farmId}/work/progress`, said);
    return { is: 'sent', facts: [] };
  }
  return takeBack(entry, message.of);
}

/** Takes back what was known when it was pressed; taken back already, nothing is left to do. */
async function takeBack(entry: Entry, of: TakenBack): Promise<Outcome> {
  const { farmId, seen } = entry;
  const meant = 'id' in of ? [] : await factsOf(farmId, of);
  const unseen = meant.filter((fact) => isUnseen(fact, seen));
  if (0 < unseen.length) return { is: 'asked', theirs: unseen };
  const ids = 'id' in of ? [idOf(farmId, of.id)] : meant.map(({ id }) => id);
  for (const id of ids) await remove(`/farms/${farmId}/told/${id}`);
  return { is: 'sent', facts: [] };
}

/** A fact that was told from here is known by the key of its entry until the service named it. */
const idOf = (farmId: string, id: string): string =>
  outbox.get().find((entry) => entry.farmId === farmId && entry.key === id)?.ids?.[0] ?? id;

/**
 * What is taken back of something: all that was told of a day, all that its tick told as bought, else
 * the last that was said.
 */
async function factsOf(
  farmId: string,
  { kind, about, on }: Exclude<TakenBack, { id: string }>,
): Promise<readonly ToldFact[]> {
  const query = new URLSearchParams({ kind, about, history: 'true', take: '200' });
  if (on !== undefined) query.set('from', on);
  const page = await getJson<{ facts: readonly ToldFact[] }>(
    `/farms/${farmId}/told?${query.toString()}`,
  );
  const facts = page.facts.filter(({ takenBackAt }) => takenBackAt === undefined);
  if (kind === 'bought' && on === undefined) return facts.filter(isOfTick);
  return on === undefined
    ? undoneFacts(facts as readonly WorkProgress[])
    : facts.filter((fact) => fact.on === on);
}

const isOfTick = ({ kind, about, details }: ToldFact): boolean =>
  kind === 'bought' && details.work === about;
