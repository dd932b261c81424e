import { useMutation } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import { FARM_GROUND } from '../../../shared/farm/told-fact.js';
import type { TripToBuy } from '../../../shared/plan/tasks/task.js';
import { isUnsent } from '../kept/entry.js';
import { outbox } from '../kept/outbox-store.js';
import { takeBackBought, tellBought } from './bought-with-work.js';
import { takeOut } from './outbox.js';
import { useMessage } from './told-queries.js';
import { isNewer, messageOfWork, takenOut } from './today-queries.js';
import type { Said } from './work-queries.js';

/** What is said of work, with what was bought on it. */
export type SaidOrBought = Said & { readonly buys?: TripToBuy | undefined };

/** Ticks work off, puts it off, strikes it out, gives it other hours or days, or takes that back. */
export function useMark(farmId: string) {
  const { mutateAsync } = useMessage(farmId);
  return useMutation({
    mutationFn: async ({ buys, ...told }: SaidOrBought): Promise<void> => {
      await takeBackBought(farmId, told);
      if (await takenOut(farmId, { is: 'job', key: told.key, told })) return;
      await tellBought(farmId, told, buys);
      await mutateAsync({ message: messageOfWork(told) });
    },
  });
}

/** What was said of the ground and is not read back yet; empty when it was taken back. */
export function useGroundSaid(farmId: string): { readonly isWorkable?: boolean } | undefined {
  const all = useSyncExternalStore(outbox.subscribe, outbox.get);
  for (const entry of [...all].reverse()) {
    const { message } = entry;
    if (message.does === 'work' || !isNewer(entry, farmId)) continue;
    const fact = message.does === 'tell' ? message.facts[0]! : message.of;
    if (!('kind' in fact) || fact.kind !== 'ground-check') continue;
    return 'details' in fact ? (fact.details as { isWorkable: boolean }) : {};
  }
  return undefined;
}

/** Writes down what was found when the ground was looked at; without an answer it is forgotten. */
export function useLook(farmId: string) {
  const { mutateAsync } = useMessage(farmId);
  return useMutation({
    mutationFn: async ({ date: on, isWorkable }: { date: string; isWorkable?: boolean }) => {
      const of = { kind: 'ground-check', about: FARM_GROUND, on } as const;
      if (isWorkable === undefined && (await takenOutOfDay(farmId, of))) return;
      await mutateAsync({
        message:
          isWorkable === undefined
            ? { does: 'take-back', of }
            : { does: 'tell', facts: [{ ...of, details: { isWorkable } }] },
      });
    },
  });
}

/** Takes out what was told of a day and is not with the service. */
async function takenOutOfDay(farmId: string, of: { kind: string; on: string }): Promise<boolean> {
  const own = outbox
    .get()
    .filter(({ message }) => message.does === 'tell')
    .filter((entry) => entry.farmId === farmId && isUnsent(entry))
    .filter(({ message }) => {
      const fact = message.does === 'tell' ? message.facts[0]! : undefined;
      return fact?.kind === of.kind && fact.on === of.on;
    });
  const last = own.at(-1);
  return last !== undefined && takeOut(last);
}
