import { Button, Radio, Stack } from '@mantine/core';
import { useState } from 'react';
import type { ToldFact } from '../../../shared/farm/told-fact.js';
import { formatDate } from '../../../shared/units/dates.js';
import type { Entry } from '../kept/entry.js';
import { canBothHold, decide, mineBeside, type Holds } from './decide.js';
import { sayDetails, sayEntry, sayFact, sayTeller } from './say-entry.js';
import type { Place } from './say-moment.js';

/** Two people told different things of the same: which holds, or do both? */
export function ClashQuestion({ entry, place }: { entry: Entry; place: Place }) {
  const { theirs = [], name } = entry;
  const [answers, setAnswers] = useState<readonly (Holds | undefined)[]>([]);
  const given = theirs.map((_, k) => answers[k]);
  const isDecided = given.every((each) => each !== undefined);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (isDecided) void decide(entry, given as Holds[]);
      }}
    >
      <Stack gap="sm">
        {theirs.map((fact, k) => (
          <Radio.Group
            key={fact.id}
            label={questionOf(entry, fact, place)}
            value={given[k] ?? ''}
            onChange={(holds) =>
              setAnswers(given.map((old, j) => (j === k ? (holds as Holds) : old)))
            }
          >
            <Stack gap="xs" mt="xs">
              <Radio
                value="theirs"
                label={`${sayTeller(fact, place)}: ${theirWords(fact, place, name)}`}
              />
              <Radio value="mine" label={`You: ${myWords(entry, fact, place)}`} />
              {canBothHold(entry, fact) && <Radio value="both" label="Both are so" />}
            </Stack>
          </Radio.Group>
        ))}
        <Button type="submit" disabled={!isDecided} style={{ alignSelf: 'start' }}>
          Save
        </Button>
      </Stack>
    </form>
  );
}

const questionOf = ({ message, name }: Entry, fact: ToldFact, place: Place): string => {
  const { kind, about, on } = fact;
  const what = sayFact({ kind, about, on, details: {} }, place, name);
  return message.does === 'take-back' ? `${what}: told since. What holds?` : `${what}: what holds?`;
};

const theirWords = ({ kind, details }: ToldFact, place: Place, name?: string): string =>
  sayDetails(kind, details, place) || (name ?? 'done');

function myWords(entry: Entry, fact: ToldFact, place: Place): string {
  const { message } = entry;
  if (message.does === 'take-back') return 'take it back';
  if (message.does === 'work') {
    const { key: _key, ...said } = message.said;
    return sayDetails('work-progress', said, place);
  }
  const mine = mineBeside(entry, fact);
  if (!mine) return sayEntry(entry, place);
  const words = sayDetails(mine.kind, mine.details, place) || 'done';
  return mine.on === fact.on ? words : `${words}, ${formatDate(mine.on, place)}`;
}
