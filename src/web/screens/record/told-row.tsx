import { Button, Group, Text } from '@mantine/core';
import { plainDateAt } from '../../../../shared/calendar/plain-date.js';
import { sayFact } from '../../../../shared/farm/say-fact.js';
import type { ToldFact } from '../../../../shared/farm/told-fact.js';
import { photosIn } from '../../api/photos.js';
import type { SavedFarm } from '../../api/queries.js';
import { useTakeBack, useTell } from '../../api/told-queries.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Failure } from '../../shell/states.js';
import { Photos } from '../../tell/photos.js';
import { CHANGED_HERE } from './kind-words.js';
import { sayWhose } from './names-of.js';

interface Props {
  readonly fact: ToldFact;
  readonly farm: SavedFarm;
  /** What it was before, the newest first. */
  readonly before: readonly ToldFact[];
  readonly nameOf: (id: string) => string | undefined;
  readonly isReplaced: boolean;
  /** It was taken back on this screen: that can be undone. */
  readonly isJustBack: boolean;
  readonly onBack: (isBack: boolean) => void;
  readonly onChange: () => void;
}

/** One thing that was told: what, who and when, what it was before. */
export function ToldRow(props: Props) {
  const { fact, farm, before, nameOf, isReplaced, isJustBack, onBack, onChange } = props;
  const { reader, sayDate } = useOpener();
  const takeBack = useTakeBack(farm.id);
  const tell = useTell(farm.id);
  const isBack = fact.takenBackAt !== undefined;
  const said = (of: ToldFact): string => sayFact(of, reader, nameOf);
  const name = sayWhose(fact, nameOf);
  const by = ({ saidBy }: ToldFact): string => (saidBy === undefined ? '' : `, told by ${saidBy}`);
  const onDay = (of: ToldFact): string => (of.on === fact.on ? '' : ` on ${sayDate(of.on)}`);
  return (
    <li className="record-row">
      <div>
        <Text {...(isBack || isReplaced ? { td: 'line-through', c: 'dimmed' } : {})}>
          <strong>{name}</strong> {said(fact)}
        </Text>
        <Text size="sm" c="dimmed">
          {isBack && `Taken back ${momentOf(fact.takenBackAt!)}. `}
          {isReplaced && 'Changed since. '}
          {before.map((each) => `Was: ${said(each)}${onDay(each)}${by(each)}. `).join('')}
          Told{fact.saidBy === undefined ? '' : ` by ${fact.saidBy}`} {momentOf(fact.toldAt)}
        </Text>
        <Photos farmId={farm.id} ids={photosIn(fact.details)} of={said(fact)} />
        <Failure error={takeBack.error ?? tell.error} />
      </div>
      <Group gap="xs" className="no-print" wrap="nowrap">
        {!isBack && !isReplaced && CHANGED_HERE.has(fact.kind) && (
          <Button variant="subtle" aria-label={`Change: ${name}, ${said(fact)}`} onClick={onChange}>
            Change
          </Button>
        )}
        {!isBack && !isReplaced && fact.kind !== 'row-changed' && (
          <Button
            variant="subtle"
            aria-label={`Take back: ${name}, ${said(fact)}`}
            loading={takeBack.isPending}
            onClick={() => takeBack.mutate(fact.id, { onSuccess: () => onBack(true) })}
          >
            Take back
          </Button>
        )}
        {isBack && isJustBack && (
          <Button
            variant="subtle"
            loading={tell.isPending}
            onClick={() => tell.mutate(asTold(fact), { onSuccess: () => onBack(false) })}
          >
            Undo
          </Button>
        )}
      </Group>
    </li>
  );

  /** A moment on the farm's clock; the day only where it is another than that of the fact. */
  function momentOf(instant: string): string {
    const day = plainDateAt(Date.parse(instant), farm.timeZone);
    const time = new Intl.DateTimeFormat(farm.units === 'us' ? 'en-US' : 'en-GB', {
      ...{ hour: 'numeric', minute: '2-digit', timeZone: farm.timeZone },
    }).format(new Date(instant));
    return day === fact.on ? `at ${time}` : `${sayDate(day)}, ${time}`;
  }
}

/** The same told again: what was taken back stays in the record. */
function asTold({ kind, about, on, details, replaces }: ToldFact) {
  return {
    kind,
    about,
    on,
    details,
    ...(replaces === undefined ? {} : { replaces }),
  } as Parameters<ReturnType<typeof useTell>['mutate']>[0];
}
