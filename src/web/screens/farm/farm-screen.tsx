import { Alert, Button, Card, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { useLocation } from 'wouter';
import {
  useDeleteFarm,
  usePeople,
  useProducts,
  useUpdateFarm,
  useWeather,
  type SavedFarm,
} from '../../api/queries.js';
import { useAll } from '../../shell/states.js';
import { DownloadFarm } from './download-farm.js';
import { FarmForm } from './farm-form.js';
import { wordsOf } from './farm-labels.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { PricesCard } from './prices-card.js';
import { PeopleCard } from './people-card.js';
import { SuppliersCard } from './suppliers-card.js';
import { WeatherCard } from './weather-card.js';

export default function FarmScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const update = useUpdateFarm(farm.id, wordsOf(farm));
  const all = useAll(useWeather(farm.id), usePeople(farm.id), useProducts(farm.id));
  const { id: _id, isSample: _isSample, ...values } = farm;
  const { revision: _revision, ...ownValues } = values as typeof values & { revision?: number };
  if ('waiting' in all) return all.waiting;
  const [weather, people, products] = all.data;
  return (
    <Stack maw={900}>
      <Title order={1}>Your place</Title>
      {farm.isSample && (
        <Alert title="This is the sample farm">
          Everything in it is invented. Change it as you like, or delete it below.
        </Alert>
      )}
      <WeatherCard farm={farm} weather={weather} />
      <PeopleCard farm={farm} people={people} />
      <PricesCard farm={farm} tables={tables} products={products} />
      <SuppliersCard farm={farm} />
      <FarmForm
        key={JSON.stringify(ownValues)}
        farmId={farm.id}
        farm={ownValues}
        submitLabel="Save the farm"
        error={update.error}
        onSubmit={(next) => update.mutateAsync(next)}
      />
      {update.isSuccess && <Alert color="accent">Saved.</Alert>}
      <DownloadFarm farmId={farm.id} />
      <DeleteFarm farm={farm} />
    </Stack>
  );
}

function DeleteFarm({ farm }: { farm: SavedFarm }) {
  const [isAsking, setAsking] = useState(false);
  const [, go] = useLocation();
  const remove = useDeleteFarm();
  // This page may be gone with the farm before it is told so: what follows must not hang on it.
  const leave = (): void => {
    remove.mutateAsync(farm).then(
      (isGone) => isGone && go('/'),
      () => undefined,
    );
  };
  return (
    <Card withBorder component="section" className="no-print">
      <Title order={2} size="h3">
        Delete this farm
      </Title>
      <Text my="xs">
        Its buildings and gear, people, weather and batches go with it. This cannot be undone.
      </Text>
      {isAsking ? (
        <Button.Group>
          <Button color="stop" loading={remove.isPending} onClick={leave}>
            Yes, delete {farm.name}
          </Button>
          <Button variant="default" onClick={() => setAsking(false)}>
            Keep it
          </Button>
        </Button.Group>
      ) : (
        <Button
          color="stop"
          variant="outline"
          onClick={() => setAsking(true)}
          style={{ alignSelf: 'start' }}
        >
          Delete {farm.name}
        </Button>
      )}
    </Card>
  );
}
