import { Button, Group, Stack, Text } from '@mantine/core';
import { useMemo, useState } from 'react';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import { assumedAfter } from '../../../shared/farm/assumed.js';
import { batchFields } from '../../../shared/farm/batch.js';
import type { FarmPicture, NamedBatch } from '../../../shared/farm/picture.js';
import { boxLate } from '../../../shared/plan/mishap/box-late.js';
import { waysWhenOtherwise } from '../../../shared/plan/mishap/came-otherwise.js';
import { cautionsSaid } from '../../../shared/plan/mishap/cautions-said.js';
import { cameTooEarly } from '../../../shared/plan/came-too-early.js';
import { leavingOn } from '../../../shared/plan/leaving-on.js';
import { whatChanged } from '../../../shared/plan/what-changed.js';
import { putBack } from '../../../shared/farm/put-back.js';
import type { Tables } from '../../../shared/tables/tables.js';
import { usePicture, useSave, useTables, type SavedFarm } from '../api/queries.js';
import { useOpener } from '../explain/explain-panel.js';
import { DescribedField } from '../fields/described-field.js';
import { messagesByField } from '../fields/field-words.js';
import { CautionSaid, Follows, Ways } from '../mishap/mishap-parts.js';
import { batchWords } from '../screens/batch/batch-labels.js';
import { planDraft } from '../screens/batch/use-plan.js';
import { Failure, useAll } from '../shell/states.js';
import type { Otherwise } from './what-to-tell.js';

interface Props {
  readonly farm: SavedFarm;
  readonly batchId: string;
  readonly field: Otherwise['field'];
  /** Kept, in words, with the row that undoes it. */
  readonly onKept: (words: string, was: NamedBatch) => void;
  readonly onBack: () => void;
}

/** What follows when something of a batch comes otherwise, before it is kept. */
export default function WhatIf(props: Props) {
  const all = useAll(usePicture(props.farm.id), useTables());
  if ('waiting' in all) return all.waiting;
  const [picture, tables] = all.data;
  const batch = picture.batches.find(({ id }) => id === props.batchId);
  return batch ? <Asked {...props} {...{ picture, tables, batch }} /> : null;
}

function Asked({
  farm,
  field,
  picture,
  tables,
  batch,
  onKept,
  onBack,
}: Props & {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly batch: NamedBatch;
}) {
  const { reader, sayDate } = useOpener();
  const setting = useMemo(() => ({ farm, picture, tables }), [farm, picture, tables]);
  const before = useMemo(() => planDraft(setting, batch, batch.arrivalDate), [setting, batch]);
  // Only what was typed: a batch that is read anew meanwhile says what stands there else.
  const [typed, setTyped] = useState<{ readonly value: unknown }>();
  const start = batch[field] ?? ('plan' in before ? startOf(before.plan)[field] : undefined);
  const value = typed ? typed.value : start;
  const isAtHome = field === 'slotDate' && batch.processing === 'home';
  const changed = useMemo((): NamedBatch => {
    const row = { ...batch, ...assumedAfter(batch, [field]) };
    return isAtHome && 'plan' in before && typeof value === 'string'
      ? leavingOn(row, before.plan, value)
      : { ...row, [field]: value };
  }, [batch, before, field, isAtHome, value]);
  const after = useMemo(
    () => planDraft(setting, changed, batch.arrivalDate),
    [setting, changed, batch],
  );
  const asked = isAtHome ? HOME_DAY : field === 'orderedBirds' ? COMING : batchFields.fields[field];
  const words = batchWords(batch.purpose, reader);
  const save = useSave<NamedBatch>(farm.id, 'batches', words);
  const isOther = typed?.value !== undefined && value !== (isAtHome ? start : batch[field]);
  const tooEarly =
    field === 'arrivalDate' && !picture.headChanges.some(({ batchId }) => batchId === batch.id)
      ? cameTooEarly({ to: value, from: batch.arrivalDate, today: picture.today })
      : undefined;
  const error = tooEarly
    ? messagesByField([tooEarly], words)[field]
    : 'errors' in after
      ? (after.errors[field] ?? Object.values(after.errors)[0])
      : undefined;
  const changes =
    'plan' in before && 'plan' in after
      ? whatChanged(before.plan, after.plan, { reader, judged: tables.judgements.birds })
      : [];
  const ways = useMemo(
    () =>
      isOther && 'plan' in before && 'plan' in after
        ? waysWhenOtherwise({
            ...{ picture: after.asked.picture, tables, field },
            before: { batch, plan: before.plan },
            after: { batch: after.asked.batch as NamedBatch, plan: after.plan },
          })
        : [],
    [isOther, before, after, batch, field, tables],
  );
  const late =
    field === 'arrivalDate' && typeof value === 'string' && isOther
      ? boxLate({ was: batch, to: value, today: picture.today }, farm)
      : [];
  const solved = changes.filter(({ id }) => id === 'solved');
  const keep = (kept: NamedBatch, way?: string): void =>
    save.mutate(kept, {
      onSuccess: (saved) =>
        onKept(
          [saidKept(field, value, sayDate), ...(way === undefined ? [] : [lower(way)])].join('; '),
          putBack<NamedBatch>(batch, kept, saved),
        ),
    });
  return (
    <Stack gap="sm">
      <DescribedField
        field={asked}
        reader={farm}
        isFirst
        value={value}
        error={error}
        onChange={(now) => setTyped({ value: now })}
      />
      {isOther && error === undefined && (
        <div role="status">
          {0 < late.length && (
            <>
              <Text fw={700}>First:</Text>
              <Follows label="What to do for them now" lines={late} />
              {cautionsSaid(tables, farm, ['post']).map((each) => (
                <CautionSaid key={each.title} of={each} />
              ))}
            </>
          )}
          <Text fw={700}>{changes.length === 0 ? 'Nothing else changes.' : 'Then:'}</Text>
          <ul aria-label="What would change in the plan">
            {changes
              .filter(({ id }) => id !== 'solved')
              .map(({ id, words }) => (
                <li key={id + words}>{words}</li>
              ))}
          </ul>
          {0 < solved.length && (
            // Dates of the plan before, under those that hold, are read for them.
            <details>
              <summary>What the plan said before: {solved.length}</summary>
              <Follows label="What the plan said before" lines={solved.map(({ words }) => words)} />
            </details>
          )}
        </div>
      )}
      <Failure error={save.error} />
      <Group>
        <Button
          size="md"
          disabled={!isOther || error !== undefined}
          loading={save.isPending}
          onClick={() => keep(changed)}
        >
          Keep it
        </Button>
        <Button variant="subtle" onClick={onBack}>
          Leave it as it was
        </Button>
      </Group>
      {0 < ways.length && error === undefined && (
        <section aria-label="Or another way">
          <Text fw={700}>Or:</Text>
          <Ways
            of={ways}
            label="Other ways to go on"
            isOff={save.isPending}
            onKeep={(way) => way.batch && keep(way.batch, way.words)}
          />
        </section>
      )}
    </Stack>
  );
}

/** What was kept, with its day or number: who reads it knows what they will find. */
const saidKept = (
  field: Otherwise['field'],
  value: unknown,
  sayDate: (on: PlainDate) => string,
): string =>
  field === 'orderedBirds'
    ? `${String(value)} will come`
    : `${field === 'arrivalDate' ? 'They come' : 'Processing is'} on ${sayDate(String(value))}`;

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** What is done at home has no slot. */
const HOME_DAY = { ...batchFields.fields.slotDate, label: 'Processing' };
/** The order stands; the box holds fewer. */
const COMING = { ...batchFields.fields.orderedBirds, label: 'How many come' };

/** What stands in the plan where the batch says nothing. */
const startOf = ({
  birds,
  leaving,
}: {
  readonly birds: { readonly chicksPlaced: { readonly value: number } };
  readonly leaving?: { readonly on: { readonly value: unknown } };
}): Readonly<Record<Otherwise['field'], unknown>> => ({
  arrivalDate: undefined,
  orderedBirds: birds.chicksPlaced.value,
  slotDate: leaving?.on.value,
});
