import { Button } from '@mantine/core';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import { sayFact } from '../../../shared/farm/say-fact.js';
import { holding, type FactOf } from '../../../shared/farm/told-fact.js';
import { TOLD_KINDS } from '../../../shared/farm/told-kinds.js';
import type { SavedFarm } from '../api/queries.js';
import { seenName } from '../api/seen-rows.js';
import { useTakeBack } from '../api/told-queries.js';
import { useOpener } from '../explain/explain-panel.js';
import { FormDialog } from '../fields/form-dialog.js';
import { Failure } from '../shell/states.js';
import { TellForm } from './tell-form.js';

interface Props {
  readonly farm: SavedFarm;
  readonly today: PlainDate;
  /** As the plan of the trip had it, until it is put right; with what was told of it before. */
  readonly facts: readonly FactOf<'bought'>[];
}

/** What a trip that was ticked off is taken to have brought: the shelf may have held something else. */
export default function BoughtWith({ farm, today, facts }: Props) {
  const { reader } = useOpener();
  const [changing, change] = useState<FactOf<'bought'>>();
  const done = (): void => change(undefined);
  return (
    <>
      {holding(facts).map((fact) => {
        const said = sayFact(fact, reader, seenName);
        return (
          <p key={fact.id} className="today-words">
            {said}{' '}
            <button
              type="button"
              className="today-button"
              aria-label={`Put it right: ${said}`}
              onClick={() => change(fact)}
            >
              Put it right
            </button>
          </p>
        );
      })}
      {changing && (
        <FormDialog title="What was bought" size="md" onClose={done}>
          <TellForm
            farm={farm}
            today={today}
            what={{
              ...{ kind: 'bought', about: changing.about, words: 'Bought' },
              start: changing.details as Readonly<Record<string, unknown>>,
              fields: TOLD_KINDS.bought.details,
            }}
            changes={changing}
            onTold={done}
            onBack={done}
          />
          <NotBought farm={farm} ids={asToldBefore(changing, facts)} onDone={done} />
        </FormDialog>
      )}
    </>
  );
}

/** A fact after all that it took the place of: what is taken back would else let one of them hold again. */
function asToldBefore(fact: FactOf<'bought'>, facts: readonly FactOf<'bought'>[]): string[] {
  const before = facts.find(({ id }) => id === fact.replaces);
  return [...(before ? asToldBefore(before, facts) : []), fact.id];
}

function NotBought({
  farm,
  ids,
  onDone,
}: {
  readonly farm: SavedFarm;
  readonly ids: readonly string[];
  readonly onDone: () => void;
}) {
  const one = useTakeBack(farm.id);
  const takeBack = useMutation({
    mutationFn: async (): Promise<void> => {
      for (const id of ids) await one.mutateAsync(id);
    },
  });
  return (
    <>
      <Button
        mt="sm"
        variant="default"
        loading={takeBack.isPending}
        onClick={() => takeBack.mutate(undefined, { onSuccess: onDone })}
      >
        None of it was bought
      </Button>
      <Failure error={takeBack.error} />
    </>
  );
}
