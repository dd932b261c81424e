import './waiting.css';
import { useIsFetching } from '@tanstack/react-query';
import { lazy, Suspense, useEffect, useState, useSyncExternalStore } from 'react';
import { formatDate } from '../../../shared/units/dates.js';
import { useAsOf } from '../api/kept-reads.js';
import { useUnsent } from '../api/told-queries.js';
import { browserUnits } from '../api/browser-units.js';
import type { SavedFarm } from '../api/queries.js';
import { serviceNowMs } from '../kept/clock.js';
import type { Entry } from '../kept/entry.js';
import { signal } from '../kept/signal.js';
import { dayOf, sayMoment, todayAt, type Place } from './say-moment.js';

const WaitingDialog = lazy(() => import('./waiting-dialog.js'));

/** Whether there is signal, of when what is shown is, and what waits to be sent; else nothing. */
export function SignalLine({ farm }: { farm: SavedFarm }) {
  const hasSignal = useSyncExternalStore(signal.subscribe, signal.get);
  const asOf = useAsOf(farm.id);
  const isOld = useOldPlan(farm.id);
  return (
    <Line
      place={farm}
      farm={farm}
      entries={useUnsent(farm.id)}
      words={signalWords(hasSignal, asOf, farm) ?? (isOld ? OLD_PLAN : undefined)}
    />
  );
}

const OLD_PLAN = 'Being planned anew: until then this is the plan from before your change.';

/** A new plan mostly comes sooner than anybody reads that the old one is shown, ms. */
const OLD_SEEN_MS = 800;

/** Whether what is shown is from before a change, and has been for longer than it mostly takes. */
function useOldPlan(farmId: string): boolean {
  const isAsked =
    0 <
    useIsFetching({
      queryKey: ['farm', farmId],
      predicate: ({ state }) => state.isInvalidated && state.data !== undefined,
    });
  const [isOld, setOld] = useState(false);
  useEffect(() => {
    if (!isAsked) return setOld(false);
    const timer = setTimeout(() => setOld(true), OLD_SEEN_MS);
    return () => clearTimeout(timer);
  }, [isAsked]);
  return isOld;
}

/** What waits of any farm, on the page that lists them: of one that is gone it is seen only there. */
export function WaitingOfAll() {
  const entries = useUnsent();
  const place = {
    units: browserUnits(),
    currency: 'USD',
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  };
  return <Line place={place} entries={entries} words={undefined} />;
}

function Line({
  place,
  farm,
  entries,
  words,
}: {
  place: Place;
  farm?: SavedFarm;
  entries: readonly Entry[];
  words: string | undefined;
}) {
  const [isOpen, setOpen] = useState(false);
  const late = useLate(entries);
  if (words === undefined && late.length === 0 && !isOpen) return null;
  const isAsking = entries.some(({ state }) => state !== 'waiting');
  return (
    <div className={isAsking ? 'signal-line signal-line-asks' : 'signal-line'} role="status">
      {words !== undefined && <span>{words}</span>}
      {0 < late.length && (
        <button type="button" onClick={() => setOpen(true)}>
          {waitingWords(late)}
        </button>
      )}
      {isOpen && (
        <Suspense>
          <WaitingDialog
            place={place}
            {...(farm ? { farmId: farm.id } : {})}
            entries={entries}
            onClose={() => setOpen(false)}
          />
        </Suspense>
      )}
    </div>
  );
}

/** With signal an entry is sent in a moment: it waits only after so long, ms. */
const A_MOMENT_MS = 3000;

/** Entries that wait, and not only for the moment that sending takes. */
function useLate(entries: readonly Entry[]): readonly Entry[] {
  const hasSignal = useSyncExternalStore(signal.subscribe, signal.get);
  const [now, setNow] = useState(serviceNowMs);
  const isLate = ({ state, madeAt }: Entry): boolean =>
    !hasSignal || state !== 'waiting' || A_MOMENT_MS <= now - Date.parse(madeAt);
  const isSoon = entries.some((entry) => !isLate(entry));
  useEffect(() => {
    if (!isSoon) return;
    const timer = setInterval(() => setNow(serviceNowMs()), A_MOMENT_MS / 3);
    return () => clearInterval(timer);
  }, [isSoon]);
  return entries.filter(isLate);
}

function signalWords(hasSignal: boolean, asOf: string | undefined, farm: SavedFarm) {
  if (asOf === undefined) return hasSignal ? undefined : 'No signal.';
  const why = hasSignal ? 'Waiting for an answer' : 'No signal';
  const today = todayAt(farm);
  const turned = dayOf(asOf, farm) === today ? '' : ` Today is ${formatDate(today, farm)}.`;
  return `${why}: this is as of ${sayMoment(asOf, farm)}, and so are its numbers.${turned}`;
}

function waitingWords(entries: readonly Entry[]): string {
  const asked = entries.filter(({ state }) => state === 'asked').length;
  const refused = entries.filter(({ state }) => state === 'refused').length;
  const waiting = entries.length - asked - refused;
  return [
    asked === 0 ? undefined : `${asked === 1 ? '1 question' : `${asked} questions`}: which holds?`,
    refused === 0 ? undefined : `${refused} not taken`,
    waiting === 0 ? undefined : `${waiting} waiting to be sent`,
  ]
    .filter((part) => part !== undefined)
    .join(' · ');
}
