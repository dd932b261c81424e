import { lazy, Suspense, useState } from 'react';
import { Link } from 'wouter';
import type { Attention, Place } from '../../../../shared/plan/today/looked-at.js';
import type { ComingDate } from '../../../../shared/plan/today/coming-date.js';
import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { SavedFarm } from '../../api/queries.js';
import { useTell } from '../../api/told-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import type { Kept } from '../../shell/kept-said.js';
import type { Telling } from '../../tell/use-telling.js';
import { AsPlanned, StillThere } from './moved-as-planned.js';
import { Ordered } from './ordered.js';
import { MoveLater } from '../../tick/move-later.js';
import { ProcessOn } from '../../tick/process-on.js';

// Seldom asked, and more than a page needs to be shown.
const CalvingTouches = lazy(() => import('./calving-touches.js'));
const CameAsPlanned = lazy(() => import('./came-as-planned.js'));

/** So many are read at a glance; the rest are asked for. */
const SHOWN = 4;

const hrefOf = (farmId: string, place: Place): string => {
  const base = `/farm/${farmId}`;
  if (place.kind === 'batch') return `${base}/batches/${place.id}`;
  return `${base}/${place.kind === 'away' ? 'work/away' : place.kind}`;
};

/** What wants a decision within two weeks, the whole of it behind a touch. */
export function TodayAttention({
  farm,
  attention,
  today,
  telling,
  onKept,
  isNow = false,
}: {
  farm: SavedFarm;
  attention: readonly Attention[];
  today: PlainDate;
  telling: Telling;
  onKept: (kept: Kept) => void;
  /** It cannot wait: all of it is shown. */
  isNow?: boolean;
}) {
  const [isWhole, setWhole] = useState(isNow);
  const more = attention.length - SHOWN;
  return (
    <>
      <ul className="today-list">
        {attention.slice(0, isWhole ? undefined : SHOWN).map((each) => (
          <AttentionRow key={each.key} of={each} {...{ farm, today, telling, onKept, isNow }} />
        ))}
      </ul>
      {!isWhole && 0 < more && (
        <button type="button" className="today-button today-more" onClick={() => setWhole(true)}>
          {more} more
        </button>
      )}
    </>
  );
}

function AttentionRow({
  of: each,
  farm,
  today,
  telling,
  onKept,
  isNow,
}: {
  of: Attention;
  farm: SavedFarm;
  today: PlainDate;
  telling: Telling;
  onKept: (kept: Kept) => void;
  isNow: boolean;
}) {
  const farmId = farm.id;
  const sayDate = useSayDate();
  const seen = useTell<'alarm-seen'>(farmId);
  const markSeen = (): void =>
    seen.mutate({ kind: 'alarm-seen', about: each.key, on: today, details: {} });
  return (
    <li className={each.level === 'stop' ? 'today-stop' : undefined}>
      <details className="today-why" open={isNow}>
        <summary>
          <span>
            {each.of && <b>{each.of}: </b>}
            {each.words}
            {each.by && `, by ${sayDate(each.by)}`}
          </span>
        </summary>
        {each.text !== undefined && <p>{each.text}</p>}
        <Link href={hrefOf(farmId, each.place)}>Go there</Link>{' '}
        {each.moves && <AsPlanned farmId={farmId} moves={each.moves} />}
        {each.stillIn && (
          <StillThere farmId={farmId} today={today} of={each.stillIn}>
            {each.moves ? 'No, still in' : 'Still in'}
          </StillThere>
        )}
        <Suspense>
          {each.calving && (
            <CalvingTouches
              {...{ farmId, today, of: each.calving }}
              onBirth={telling.askOf}
              onTold={(fact) => telling.wasTold(each.calving!.herdId, fact)}
            />
          )}
          {each.came && <CameAsPlanned farm={farm} came={each.came} />}
        </Suspense>
        {each.out && <OutSince of={each.out} onTell={telling.askOf} />}
        {each.uncounted && (
          <button
            type="button"
            className="today-button"
            onClick={() =>
              telling.ask(each.uncounted!.line, { kind: 'processed', on: each.uncounted!.on })
            }
          >
            Count them …
          </button>
        )}
        {each.ordered !== undefined && <Ordered farmId={farmId} of={each.ordered} today={today} />}
        {each.later && <MoveLater key={each.later.to} {...{ farm, onKept }} later={each.later} />}
        {each.leaving && <ProcessOn {...{ farm, today, onKept }} leaving={each.leaving} />}
        {each.isAlarm && (
          <button
            type="button"
            className="today-button"
            disabled={seen.isPending}
            onClick={markSeen}
          >
            {seenWords(each)}
          </button>
        )}
      </details>
    </li>
  );
}

/** They went out, today or before: the paddock is filled in as planned, the day can be another. */
const OutSince = ({
  of: { herdId, paddockId },
  onTell,
}: {
  of: NonNullable<Attention['out']>;
  onTell: Telling['askOf'];
}) => (
  <button
    type="button"
    className="today-button"
    onClick={() =>
      onTell(herdId, {
        kind: 'herd-move',
        ...(paddockId === undefined ? {} : { start: { paddockId } }),
      })
    }
  >
    They are out since …
  </button>
);

function seenWords({ stillIn, leaving, againDays }: Attention): string {
  if (againDays !== undefined)
    return `Ask again in ${againDays === 7 ? 'a week' : `${againDays} days`}`;
  if (stillIn) return 'Ask me later';
  return leaving ? 'Leave the day as it is' : 'I have seen it';
}

/** The next key dates. */
export function TodayDates({ farmId, dates }: { farmId: string; dates: readonly ComingDate[] }) {
  const sayDate = useSayDate();
  return (
    <ul className="today-list today-dates">
      {dates.map(({ key, on, text, place }) => (
        <li key={key}>
          <b>{sayDate(on)}</b> <Link href={hrefOf(farmId, place)}>{text}</Link>
        </li>
      ))}
    </ul>
  );
}
