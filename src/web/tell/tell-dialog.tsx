import { Button, Stack, Text } from '@mantine/core';
import { lazy, Suspense, useState, type ComponentProps } from 'react';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import type { CattleGroup } from '../../../shared/farm/herd.js';
import type { NamedBatch } from '../../../shared/farm/picture.js';
import type { ToldFact, ToldKind } from '../../../shared/farm/told-fact.js';
import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import { usePicture, useTables, type SavedFarm } from '../api/queries.js';
import type { FirstTold } from '../mishap/mishap-props.js';
import { useToday } from '../api/today-queries.js';
import { Caution } from '../explain/caution.js';
import { FormDialog } from '../fields/form-dialog.js';
import type { Known } from './proposed.js';
import { TellForm } from './tell-form.js';
import { notInCalfTold, ofAnimal, ofPlace, otherwiseOf, type Otherwise } from './what-to-tell.js';

/** It plans, which the page of the day does not. */
const WhatIf = lazy(() => import('./what-if.js'));

interface Props {
  readonly farm: SavedFarm;
  readonly today: PlainDate;
  /** Left out, it is told of the place. */
  readonly line: AnimalLine | undefined;
  /** What it was is known: its numbers are asked at once. */
  readonly first: FirstTold | undefined;
  readonly onTold: (fact: ToldFact) => void;
  /** Something comes otherwise now: in words, and the batch as it was. */
  readonly onOtherwise: (words: string, was: NamedBatch) => void;
  readonly onClose: () => void;
}

/** What happened: a choice, then its numbers. */
export default function TellDialog({
  farm,
  today,
  line,
  first,
  onTold,
  onOtherwise,
  onClose,
}: Props) {
  const isOfNone = first?.asks === 'notInCalf';
  const all = line
    ? [...(isOfNone ? [notInCalfTold(line)] : []), ...ofAnimal(line, farm.units)]
    : ofPlace();
  // Of two ways to tell a kind the first is meant.
  const meant = all.find(({ kind }) => kind === first?.kind);
  const choices = all.map((each) =>
    each === meant
      ? {
          ...each,
          ...(first?.on === undefined ? {} : { on: first.on }),
          start: { ...each.start, ...first?.start },
        }
      : each,
  );
  const [chosen, choose] = useState(choices.find(({ kind }) => kind === first?.kind));
  const [otherwise, setOtherwise] = useState<Otherwise>();
  const what =
    choices.find((each) => each.kind === chosen?.kind && each.words === chosen.words) ?? chosen;
  const day = useToday(farm.id).data;
  const known: Known = {
    line,
    rainTodayMm: day?.date === today ? day.weather.rainTodayMm : undefined,
  };
  const name = line?.name ?? farm.name;
  const asked = what ?? otherwise;
  const Form = line?.kind === 'herd' ? HerdTellForm : TellForm;
  return (
    <FormDialog
      onClose={onClose}
      title={asked ? `${name}: ${lower(asked.words)}` : `What happened: ${name}`}
      size="md"
    >
      {what ? (
        <>
          <Known kind={what.kind} line={line} />
          <Form
            key={what.words}
            farm={farm}
            today={today}
            what={what}
            known={known}
            onTold={onTold}
            onBack={() => choose(undefined)}
          />
        </>
      ) : otherwise && line ? (
        <Suspense>
          <WhatIf
            farm={farm}
            batchId={line.id}
            field={otherwise.field}
            onKept={onOtherwise}
            onBack={() => setOtherwise(undefined)}
          />
        </Suspense>
      ) : (
        <Stack gap="xs">
          {choices.map((each, k) => (
            <Button
              key={each.words}
              variant="default"
              size="md"
              justify="start"
              data-autofocus={k === 0 || undefined}
              onClick={() => choose(each)}
            >
              {each.words}
            </Button>
          ))}
          {otherwiseOf(line).map((each) => (
            <Button
              key={each.field}
              variant="default"
              size="md"
              justify="start"
              onClick={() => setOtherwise(each)}
            >
              {each.words}
            </Button>
          ))}
        </Stack>
      )}
    </FormDialog>
  );
}

/** What is told of a herd names one of its paddocks, cows or classes; of a single class nobody is asked. */
function HerdTellForm(props: Omit<ComponentProps<typeof TellForm>, 'rows'>) {
  const picture = usePicture(props.farm.id).data;
  const tables = useTables().data;
  const { kind, about } = props.what;
  const groups = picture?.herds.find(({ id }) => id === about)?.groups ?? [];
  const ids = new Set(groups.filter(isThere).map(({ classId }) => classId));
  const classes = tables?.cattle.classes.filter(({ id }) => ids.has(id)) ?? [];
  const cows = picture?.cows.filter(({ herdId }) => herdId === about) ?? [];
  const rows = {
    ...(kind === 'herd-move' ? { paddockId: picture?.paddocks ?? [] } : {}),
    cowId: cows,
    classId: 1 < classes.length ? classes : [],
  };
  return <TellForm {...props} rows={rows} />;
}

/** What can hurt whoever eats of it, before the hand that tells: medicines that run, and their caution. */
function Known({ kind, line }: { kind: ToldKind; line: AnimalLine | undefined }) {
  const caution = useTables().data?.cautions[CAUTION_OF[kind] ?? ''];
  const medicines = EATEN.has(kind) ? (line?.medicines ?? []) : [];
  return (
    <>
      {medicines.map(({ said }) => (
        <Text key={said} mb="sm" fw={700}>
          {said}
        </Text>
      ))}
      {caution && <Caution line={caution.line ?? caution.title}>{caution.text}</Caution>}
    </>
  );
}

const CAUTION_OF: Readonly<Partial<Record<ToldKind, string>>> = {
  'cattle-left': 'cattle-leaving',
  treated: 'treated',
};
/** What somebody may eat of it. */
const EATEN: ReadonlySet<ToldKind> = new Set<ToldKind>([
  ...(['processed', 'gone', 'cattle-left', 'milked', 'eggs-counted', 'eggs-gone'] as const),
]);

const isThere = ({ leftAs }: CattleGroup): boolean => leftAs === undefined;

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
