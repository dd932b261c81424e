import { Button, Group, Stack, Text, Title } from '@mantine/core';
import { lazy, Suspense, useState } from 'react';
import type { ToldFact, ToldKind } from '../../../../shared/farm/told-fact.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { farmDay, useCows, type SavedFarm, type SavedPicture } from '../../api/queries.js';
import { FACTS_AT_ONCE, useTold, type ToldPage } from '../../api/record-queries.js';
import { useJobs } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Select } from '../../fields/select.js';
import { useAll } from '../../shell/states.js';
import { KIND_WORDS } from './kind-words.js';
import { namesOf } from './names-of.js';
import { ToldRow } from './told-row.js';

const ChangeDialog = lazy(() => import('./change-dialog.js'));

interface Props {
  readonly farm: SavedFarm;
  readonly picture: SavedPicture;
  readonly tables: Tables;
  /** What is seen first. */
  readonly of: string | undefined;
}

/** Everything that was told, the newest first, by its day. */
export function ToldList({ farm, picture, tables, of }: Props) {
  const [about, setAbout] = useState(of);
  const [kind, setKind] = useState<ToldKind>();
  const [skip, setSkip] = useState(0);
  const { batches, herds, paddocks } = picture;
  return (
    <Stack gap="sm">
      <Group className="no-print" align="end">
        <Select
          label="Of"
          value={about}
          none="Everything"
          options={[
            ...[...batches, ...herds, ...paddocks].map(({ id, name }) => ({ id: id!, name })),
            { id: 'farm', name: 'The place' },
          ]}
          onChange={(id) => {
            setAbout(id);
            setSkip(0);
          }}
        />
        <Select
          label="What"
          value={kind}
          none="All of it"
          options={Object.entries(KIND_WORDS).map(([id, name]) => ({ id: id as ToldKind, name }))}
          onChange={(id) => {
            setKind(id);
            setSkip(0);
          }}
        />
      </Group>
      <Facts {...{ farm, picture, tables, skip }} filter={{ about, kind }} onSkip={setSkip} />
    </Stack>
  );
}

interface FactsProps extends Pick<Props, 'farm' | 'picture' | 'tables'> {
  readonly filter: { readonly about: string | undefined; readonly kind: ToldKind | undefined };
  readonly skip: number;
  readonly onSkip: (skip: number) => void;
}

function Facts({ farm, picture, tables, filter, skip, onSkip }: FactsProps) {
  const all = useAll(useTold(farm.id, filter, skip), useJobs(farm.id), useCows(farm.id));
  const sayDate = useSayDate();
  const [taken, setTaken] = useState<ReadonlySet<string>>(new Set());
  const [changed, setChanged] = useState<ToldFact>();
  if ('waiting' in all) return all.waiting;
  const [page, jobs, cows] = all.data;
  const nameOf = namesOf({ ...picture, cows }, jobs, tables);
  const days = byDay(page);
  if (page.total === 0)
    return <Text>Nothing was told yet. What happens is told on Today, with the Tell buttons.</Text>;
  return (
    <>
      {days.map(([day, facts]) => (
        <section key={day} className="avoid-break">
          <Title order={3} size="h4">
            {sayDate(day)}
          </Title>
          <ul className="record-list">
            {facts.map(({ fact, before }) => (
              <ToldRow
                key={fact.id}
                {...{ fact, farm, before, nameOf }}
                isReplaced={page.replaced.includes(fact.id)}
                isJustBack={taken.has(fact.id)}
                onBack={(isBack) => setTaken(withOrWithout(taken, fact.id, isBack))}
                onChange={() => setChanged(fact)}
              />
            ))}
          </ul>
        </section>
      ))}
      <Pages total={page.total} skip={skip} onSkip={onSkip} />
      {changed && (
        <Suspense>
          <ChangeDialog
            farm={farm}
            today={farmDay(farm)}
            fact={changed}
            onDone={() => setChanged(undefined)}
          />
        </Suspense>
      )}
    </>
  );
}

function Pages({
  total,
  skip,
  onSkip,
}: {
  total: number;
  skip: number;
  onSkip: (skip: number) => void;
}) {
  if (total <= FACTS_AT_ONCE) return null;
  const last = Math.min(total, skip + FACTS_AT_ONCE);
  return (
    <Group className="no-print">
      <Button
        variant="default"
        disabled={skip === 0}
        onClick={() => onSkip(Math.max(0, skip - FACTS_AT_ONCE))}
      >
        Newer
      </Button>
      <Text>
        {skip + 1} to {last} of {total}
      </Text>
      <Button variant="default" disabled={total <= last} onClick={() => onSkip(last)}>
        Older
      </Button>
    </Group>
  );
}

interface Shown {
  readonly fact: ToldFact;
  readonly before: readonly ToldFact[];
}

/** What one took the place of stands with it, where that is on the same page. */
function byDay({ facts }: ToldPage): [string, Shown[]][] {
  const byId = new Map(facts.map((fact) => [fact.id, fact]));
  const inside = new Set(
    facts.flatMap(({ takenBackAt, replaces }) => (takenBackAt ? [] : replaces)),
  );
  const days = new Map<string, Shown[]>();
  for (const fact of facts) {
    if (inside.has(fact.id)) continue;
    const before: ToldFact[] = [];
    for (let id = fact.replaces; id !== undefined;) {
      const earlier = byId.get(id);
      if (earlier) before.push(earlier);
      id = earlier?.replaces;
    }
    days.set(fact.on, [...(days.get(fact.on) ?? []), { fact, before }]);
  }
  return [...days];
}

function withOrWithout(ids: ReadonlySet<string>, id: string, isIn: boolean): ReadonlySet<string> {
  const next = new Set(ids);
  if (isIn) next.add(id);
  else next.delete(id);
  return next;
}
