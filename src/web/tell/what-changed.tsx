import type { ToldFact } from '../../../shared/farm/told-fact.js';
import { batchOfFact } from '../../../shared/farm/without-fact.js';
import { useChangedBy } from '../api/record-queries.js';

/** What follows from what was just told; nothing while it is not sent, or changes nothing that matters. */
export function WhatChanged({ farmId, fact }: { farmId: string; fact: ToldFact }) {
  // What is not sent yet goes by its own key.
  const isSent = fact.id !== fact.key && batchOfFact(fact) !== undefined;
  const { data } = useChangedBy(farmId, fact.id, isSent);
  // What an earlier plan said is left out: it is read for what holds.
  const changes = data?.changes.filter(({ id }) => id !== 'solved') ?? [];
  if (changes.length === 0) return null;
  return (
    <ul className="tell-changed" aria-label="What changed in the plan">
      {changes.map(({ id, words }) => (
        <li key={id + words}>{words}</li>
      ))}
    </ul>
  );
}
