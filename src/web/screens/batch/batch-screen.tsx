import { Alert, Button, Card, Group, Stack, Text, Title } from '@mantine/core';
import { useMediaQuery } from '@mantine/hooks';
import { memo, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { Link, Redirect, useLocation } from 'wouter';
import { assumedAfter } from '../../../../shared/farm/assumed.js';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { Batch } from '../../../../shared/farm/batch.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import {
  usePicture,
  useRemove,
  useSave,
  type SavedBatch,
  type SavedFarm,
} from '../../api/queries.js';
import { useTell } from '../../api/told-queries.js';
import { MarkAssumed } from '../../fields/assumed.js';
import {
  draftKey,
  dropDraft,
  readDraft,
  UnsavedNote,
  writeDraft,
} from '../../fields/kept-draft.js';
import { FittedTasksOf } from '../../tick/fitted-tasks.js';
import { Failure, useAll } from '../../shell/states.js';
import { useAfterDrawn } from '../../shell/use-after-drawn.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { BatchForm } from './batch-form.js';
import { feedsAfter } from './feed-choice.js';
import type { GoneBatch } from '../batches/gone-batch.js';
import { batchWords } from './batch-labels.js';
import { bestWeek, firstArrival, todayOf, type BestWeek } from './best-week.js';
import { OwnFigures, useOwnFigures } from './own-figures.js';
import { forPurpose, namedByDate } from './purpose.js';
import { LifeLine } from './life-line.js';
import { Story } from './story.js';
import {
  otherNames,
  usePlan,
  withoutBlanks,
  type BatchDraft,
  type Planned,
  type Setting,
} from './use-plan.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  /** Undefined for a new batch. */
  readonly batchId: string | undefined;
}

/** Drawn anew with a new plan alone, and not with each letter or step of a slider. */
const KeptStory = memo(Story);
const KeptLifeLine = memo(LifeLine);

export default function BatchScreen({ farm, tables, batchId }: Props) {
  const all = useAll(usePicture(farm.id));
  const seen = useRef<string>(undefined);
  if ('waiting' in all) return all.waiting;
  const [picture] = all.data;
  const saved = picture.batches.find((b) => b.id === batchId);
  // Deleted here or by somebody else: the list says so, in the words of the batch if it was seen.
  if (saved) seen.current = saved.name;
  if (batchId !== undefined && !saved) {
    const state: GoneBatch = { gone: seen.current ?? '' };
    return <Redirect to={`/farm/${farm.id}/batches`} state={state} replace />;
  }
  return <Editor farm={farm} tables={tables} picture={picture} saved={saved} />;
}

function Editor({ saved, ...parts }: Setting & { saved: SavedBatch | undefined }) {
  const { farm, tables, picture } = parts;
  const setting = useMemo<Setting>(() => ({ farm, tables, picture }), [farm, tables, picture]);
  const key = draftKey(farm.id, 'batch', saved?.id ?? 'new');
  const [kept] = useState(() => readDraft<BatchDraft>(key));
  const [isRestored, setRestored] = useState(kept !== undefined);
  // A new batch is unsaved from the start; it is worth keeping once something was typed.
  const [isTouched, setTouched] = useState(kept !== undefined);
  const [fresh] = useState(() => (saved ? undefined : newBatch(setting)));
  const [best, setBest] = useState<BestWeek | undefined>(fresh?.best);
  const [draft, setDraft] = useState<BatchDraft>(() => kept ?? saved ?? fresh!.draft);
  const [slideFrom, setSlideFrom] = useState(
    () => draft.arrivalDate ?? saved?.arrivalDate ?? todayOf(setting),
  );
  const today = todayOf(setting);
  // A day that is past is one on which they came only where the household says so.
  const [isHere, setHere] = useState(isPast(saved?.arrivalDate, addDays(today, 1)));
  const ownFigures = useOwnFigures(farm.id, draft, { isNew: saved === undefined, setDraft });
  const asksIfHere = !isHere && isPast(draft.arrivalDate, today);
  const drawn = useAfterDrawn(draft);
  const ofDraft = usePlan(setting, drawn, saved?.arrivalDate);
  const planned = asksIfHere ? PAST : ofDraft;
  const [, go] = useLocation();
  const words = batchWords(draft.purpose ?? 'meat', farm);
  const save = useSave<Batch, SavedBatch>(farm.id, 'batches', words);
  const told = useTell<'arrived'>(farm.id);
  const remove = useRemove(farm, 'batches');
  const isWide = useMediaQuery('(min-width: 62em)', true, { getInitialValueInEffect: false });
  const [isEditing, setEditing] = useState(saved === undefined);
  const errors = 'errors' in planned ? planned.errors : {};
  const isChanged = !isLike(draft, saved);
  const isPlanOfSaved = isLike(drawn, saved);
  const base = `/farm/${farm.id}/batches`;

  // What came is ordered no more.
  const isAtHand = saved !== undefined && saved.arrivalDate <= today;
  const isUnsaved = isTouched && isChanged;
  useEffect(() => {
    if (isUnsaved) writeDraft(key, draft);
    else dropDraft(key);
  }, [isUnsaved, key, draft]);

  const others = otherNames(setting, draft);
  const change = (typed: BatchDraft) => {
    setTouched(true);
    const fed = { ...typed, ...feedsAfter(draft, typed, tables) };
    const more = { ...fed, ...assumedAfter(draft, Object.keys(typed)) };
    // While nobody chose a date, it is that of the best week for what is ordered.
    const isOfBest = best !== undefined && draft.arrivalDate === best.arrivalDate;
    const next =
      isOfBest && (more.strainId !== undefined || 'origin' in more || 'arrivalAgeWeeks' in more)
        ? bestWeek(setting, { ...draft, ...more })
        : undefined;
    if (next) {
      setBest(next);
      setSlideFrom(next.arrivalDate);
      setDraft((old) => ({ ...old, ...more, arrivalDate: next.arrivalDate }));
    } else setDraft((old) => ({ ...old, ...more }));
    const arrivalDate = next?.arrivalDate ?? typed.arrivalDate;
    if (saved === undefined && arrivalDate !== undefined && typed.name === undefined)
      setDraft((old) => ({
        ...old,
        ...namedByDate({ ...old, arrivalDate: draft.arrivalDate }, arrivalDate, others),
      }));
  };
  const startFrom = (start: BatchDraft) => {
    dropDraft(key);
    setTouched(false);
    setRestored(false);
    setDraft(start);
    setSlideFrom(start.arrivalDate!);
    setHere(isPast(start.arrivalDate, addDays(today, 1)));
  };
  const pickWeek = (more: BatchDraft) => {
    change(more);
    if (more.arrivalDate !== undefined) setSlideFrom(more.arrivalDate);
  };
  const picked = useRef(pickWeek);
  useEffect(() => {
    picked.current = pickWeek;
  });
  // Always the same, so that what is typed is drawn before the plan that follows from it.
  const onPicked = useCallback((more: BatchDraft) => picked.current(more), []);
  const saveDraft = () =>
    save.mutate(withoutBlanks(draft), {
      onSuccess: (batch) => {
        // Those that are here were counted just now: no usual losses are taken off them.
        if (saved === undefined && isHere && batch.orderedBirds !== undefined)
          told.mutate(cameAs(batch.id, { ...batch, orderedBirds: batch.orderedBirds }));
        startFrom(batch);
        setEditing(false);
        if (saved === undefined) go(`${base}/${batch.id}`, { replace: true });
      },
    });

  return (
    <FittedTasksOf farmId={farm.id} isSaved={isPlanOfSaved}>
      <Stack>
        <Group justify="space-between" className={isUnsaved ? 'batch-unsaved' : ''}>
          <Title order={1}>{draft.name || 'New batch'}</Title>
          <Group gap="xs" className="no-print">
            {!isWide && (
              <Button
                variant="default"
                onClick={() => setEditing(!isEditing)}
                aria-expanded={isEditing}
              >
                {isEditing ? 'See the plan' : isAtHand ? 'Change the batch' : 'Change the order'}
              </Button>
            )}
            <Button
              onClick={saveDraft}
              loading={save.isPending}
              disabled={!isChanged || 'errors' in planned}
            >
              {isChanged ? 'Save the batch' : 'Saved'}
            </Button>
          </Group>
        </Group>
        {isUnsaved && (
          <UnsavedNote isRestored={isRestored} onDiscard={() => startFrom(saved ?? fresh!.draft)} />
        )}
        <Failure error={save.error ?? remove.error} words={words} />
        {'plan' in planned && (isWide || !isEditing) && (
          <KeptLifeLine plan={planned.plan} batch={planned.asked.batch} />
        )}
        <div className="batch-frame">
          {(isWide || isEditing) && (
            <div className="batch-order no-print">
              <Card withBorder component="section" aria-label="The order">
                <MarkAssumed start={saved ?? {}} draft={draft} words={words}>
                  <BatchForm
                    setting={setting}
                    draft={draft}
                    errors={errors}
                    slideFrom={slideFrom}
                    best={best}
                    isHere={isHere}
                    isNew={saved === undefined}
                    onHere={setHere}
                    onChange={change}
                    own={<OwnFigures {...ownFigures} />}
                  />
                </MarkAssumed>
              </Card>
            </div>
          )}
          {(isWide || !isEditing) &&
            ('errors' in planned ? (
              <Alert className="batch-first" color="warn" title="No plan yet: first put this right">
                {Object.values(planned.errors).map((text) => (
                  <Text key={text}>{text}</Text>
                ))}
              </Alert>
            ) : (
              <KeptStory
                plan={planned.plan}
                asked={planned.asked}
                onChange={onPicked}
                printBase={saved && isPlanOfSaved ? `${base}/${saved.id}/print` : undefined}
              />
            ))}
        </div>
        <Group justify="space-between" className="no-print">
          <Text component={Link} href={base} c="dimmed" py="sm">
            All batches
          </Text>
          {saved && (
            <ConfirmButton
              label="Delete this batch"
              question={`Delete ${saved.name}? This cannot be undone.`}
              onConfirm={() =>
                remove.mutate(saved, { onSuccess: (isGone) => isGone && dropDraft(key) })
              }
            >
              Delete this batch
            </ConfirmButton>
          )}
        </Group>
      </Stack>
    </FittedTasksOf>
  );
}

const cameAs = (
  id: string,
  { arrivalDate, orderedBirds }: Pick<Batch, 'arrivalDate'> & { readonly orderedBirds: number },
) => ({
  kind: 'arrived' as const,
  about: id,
  on: arrivalDate,
  details: { birds: orderedBirds },
});

const isLike = (draft: BatchDraft, saved: SavedBatch | undefined): boolean =>
  saved !== undefined && JSON.stringify(withoutBlanks(draft)) === JSON.stringify(saved);

const isPast = (date: string | undefined, today: string): boolean =>
  date !== undefined && date < today;

const PAST: Planned = { errors: { arrivalDate: 'That day is past. Are they here already?' } };

/** A new batch is first set to the best week within a year, ordered as long ahead as is usual. */
function newBatch(setting: Setting): {
  readonly draft: BatchDraft;
  readonly best: BestWeek | undefined;
} {
  const others = otherNames(setting, {});
  const first = (kind: string) => setting.picture.facilities.find((f) => f.kind === kind)?.id;
  const order: BatchDraft = {
    ...forPurpose('meat', setting.tables.strains, {
      name: undefined,
      arrivalDate: undefined,
      others,
    }),
    wantedBirds: 50,
  };
  const draft: BatchDraft = {
    ...order,
    ...feedsAfter(order, order, setting.tables),
    arrivalDate: firstArrival(setting),
    hatchToArrivalDays: 1,
    brooderId: first('brooder'),
    penId: first('field-pen'),
    coopId: first('coop'),
    freezerId: first('freezer'),
    feedStoreId: first('feed-store'),
  };
  const best = bestWeek(setting, draft);
  const dated = { ...draft, ...(best && { arrivalDate: best.arrivalDate }) };
  return { draft: { ...dated, ...namedByDate(order, dated.arrivalDate, others) }, best };
}
