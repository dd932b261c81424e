import { Button, List, Text } from '@mantine/core';
import { useState } from 'react';
import type { WorkChange } from '../../../../shared/plan/work/work-changes.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';

/** So many are read at a glance; the rest are asked for. */
const SHOWN = 8;

/** What moved from one plan to another, and why. */
export function ChangeList({ changes, none }: { changes: readonly WorkChange[]; none: string }) {
  const sayDate = useSayDate();
  const [isWhole, setWhole] = useState(false);
  if (changes.length === 0) return <Text>{none}</Text>;
  return (
    <>
      <List>
        {changes.slice(0, isWhole ? undefined : SHOWN).map((change) => (
          <List.Item key={change.key}>
            <b>{change.name}</b>
            {change.belongsTo && ` · ${change.belongsTo}`}: {whatBecame(change, sayDate)}.{' '}
            {change.why}
          </List.Item>
        ))}
      </List>
      {!isWhole && SHOWN < changes.length && (
        <Button variant="default" mt="xs" onClick={() => setWhole(true)}>
          All {changes.length} changes
        </Button>
      )}
    </>
  );
}

function whatBecame({ kind, from, to }: WorkChange, sayDate: SayDate): string {
  const was = from && sayDate(from);
  const is = to && sayDate(to);
  switch (kind) {
    case 'new':
      return is ? `new, on ${is}` : 'new, and there is no time for it';
    case 'gone':
      return was ? `removed (was ${was})` : 'removed';
    case 'fits-no-more':
      return `no time for it any more (was ${was})`;
    case 'fits-in-part':
      return `there is time for a part of it only, from ${is} on`;
    case 'fits-now':
      return `there is time for it now, on ${is}`;
    case 'moved':
      return was === is ? `its days changed from ${is} on` : `moved from ${was} to ${is}`;
  }
}
