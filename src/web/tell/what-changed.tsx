import { useState } from 'react';
import type { ToldFact } from '../../../shared/farm/told-fact.js';
import { batchOfFact } from '../../../shared/farm/without-fact.js';
import type { LeavingChoice } from '../../../shared/plan/record/weight-follows.js';
import type { SavedFarm } from '../api/queries.js';
import { useChangedBy } from '../api/record-queries.js';
import { KeptSaid, type Kept } from '../shell/kept-said.js';
import { ProcessOn } from '../tick/process-on.js';

/** What follows from what was just told; nothing while it is not sent, or changes nothing that matters. */
export function WhatChanged({ farm, fact }: { farm: SavedFarm; fact: ToldFact }) {
  // What is not sent yet goes by its own key.
  const isSent = fact.id !== fact.key && batchOfFact(fact) !== undefined;
  const { data } = useChangedBy(farm.id, fact.id, isSent);
  // What an earlier plan said is left out: it is read for what holds.
  const changes = data?.changes.filter(({ id }) => id !== 'solved') ?? [];
  if (changes.length === 0) return null;
  return (
    <>
      <ul className="tell-changed" aria-label="What changed in the plan">
        {changes.map(({ id, words }) => (
          <li key={id + words}>{words}</li>
        ))}
      </ul>
      {data?.choice && <Choice key={fact.id} farm={farm} first={data.choice} on={fact.on} />}
    </>
  );
}

/** The other day stays as it was offered: once it is kept there is nothing more to choose but to undo it. */
function Choice({ farm, first, on }: { farm: SavedFarm; first: LeavingChoice; on: string }) {
  const [leaving] = useState(first);
  const [kept, setKept] = useState<Kept>();
  if (kept) return <KeptSaid of={kept} onUndone={() => setKept(undefined)} />;
  return (
    <p>
      <ProcessOn {...{ farm, leaving, today: on }} onKept={setKept} />
    </p>
  );
}
