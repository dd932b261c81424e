import { WHOLE_FARM } from '../../../shared/farm/told-fact.js';
import { isFetch } from '../../../shared/plan/tasks/fetches.js';
import type { TripToBuy } from '../../../shared/plan/tasks/task.js';
import { isUnsent, type Entry } from '../kept/entry.js';
import { outbox } from '../kept/outbox-store.js';
import { takeOut, tellService } from './outbox.js';
import type { Said } from './work-queries.js';

/** What was bought on a trip that is ticked off, told before the tick; about it, so that undo finds it. */
export async function tellBought(
  farmId: string,
  { key, doneOn: on, hours }: Said,
  buys: TripToBuy | undefined,
): Promise<void> {
  // Hours that are told after a tick are no second trip.
  if (!buys || on === undefined || hours !== undefined) return;
  const { from, lines } = buys;
  const facts = lines.map(
    (line) =>
      ({
        ...({ kind: 'bought', about: key, on } as const),
        details: { ...line, ...(from === undefined ? {} : { from }), work: key },
      }) as const,
  );
  if (0 < facts.length) await tellService(farmId, { does: 'tell', facts });
}

/** With the undo of a trip, what was told as bought on it is taken back. */
export async function takeBackBought(farmId: string, { key, undo }: Said): Promise<void> {
  if (!undo || !isFetch(key)) return;
  const told = outbox.get().findLast((entry) => entry.farmId === farmId && isBought(entry, key));
  if (told && isUnsent(told) && (await takeOut(told))) return;
  await tellService(farmId, { does: 'take-back', of: { kind: 'bought', about: key } });
}

/** Whether an entry says what was bought with a piece of work. */
export const isBought = ({ message }: Pick<Entry, 'message'>, key: string): boolean =>
  key !== WHOLE_FARM &&
  message.does === 'tell' &&
  message.facts.some(({ kind, about }) => kind === 'bought' && about === key);
