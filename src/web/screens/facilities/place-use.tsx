import './place-use.css';
import { Text } from '@mantine/core';
import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { GearUse } from '../../../../shared/plan/gear-use.js';
import { listed } from '../../../../shared/units/listed.js';
import { useSayDate } from '../../explain/say-date.js';

/** Who is in a place from when to when, when it is free, and who wants it on the same days. */
export function PlaceUse({ use, today }: { use: GearUse; today: PlainDate }) {
  const sayDate = useSayDate();
  const { uses, freeFrom, freeUntil } = use;
  const free = `${freeFrom === today ? 'Free now' : `Free from ${sayDate(freeFrom)}`}${
    freeUntil === undefined ? '' : `, until ${sayDate(freeUntil)}`
  }`;
  return (
    <>
      <ul className="place-uses">
        {uses.map(({ batchName, from, to, clashesWith }) => (
          <li key={`${batchName} ${from}`}>
            {batchName}: {from <= today ? 'until' : `${sayDate(from)} to`} {sayDate(to)}
            {0 < clashesWith.length && (
              <b className="place-clash"> · at the same time as {listed(clashesWith)}</b>
            )}
          </li>
        ))}
      </ul>
      <Text size="sm" fw={600}>
        {free}
      </Text>
    </>
  );
}
