import {
  Anchor,
  Button,
  Card,
  Container,
  Group,
  SimpleGrid,
  Stack,
  Text,
  Title,
} from '@mantine/core';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useCreateFarm, useCreateSample, useFarms } from '../../api/queries.js';
import { Failure, useAll } from '../../shell/states.js';
import { emptyFarm, FarmForm } from '../farm/farm-form.js';
import { ReadFarm } from './read-farm.js';

/** The first screen: choose a farm, start an empty one, or look at the sample. */
export function FirstRun() {
  const [, go] = useLocation();
  const [isTyping, setTyping] = useState(false);
  const sample = useCreateSample();
  const create = useCreateFarm();
  const all = useAll(useFarms());
  if ('waiting' in all) return all.waiting;
  const [farms] = all.data;

  if (isTyping) {
    return (
      <Container component="main" size="md" py="lg">
        <Title order={1} mb="md">
          A farm of your own
        </Title>
        <FarmForm
          farm={emptyFarm()}
          submitLabel="Create the farm"
          error={create.error}
          onCancel={() => setTyping(false)}
          onSubmit={async (farm) => go(`/farm/${(await create.mutateAsync(farm)).id}/facilities`)}
        />
      </Container>
    );
  }
  return (
    <Container component="main" size="md" py="xl">
      <Stack gap="lg">
        <div>
          <Title order={1}>Broodfold</Title>
          <Text fz="lg">
            Chicks come on a fixed date. See what must be ready before they do, what they eat and
            cost, and when they leave.
          </Text>
        </div>
        {0 < farms.length && (
          <Card withBorder component="section">
            <Title order={2} size="h3" mb="sm">
              Your farms
            </Title>
            <Stack gap="xs">
              {farms.map((farm) => (
                <Anchor
                  key={farm.id}
                  component={Link}
                  href={`/farm/${farm.id}/today`}
                  fz="lg"
                  py="xs"
                >
                  {farm.name}
                </Anchor>
              ))}
            </Stack>
          </Card>
        )}
        <SimpleGrid cols={{ base: 1, sm: 2 }}>
          <Card withBorder component="section">
            <Title order={2} size="h3">
              Start empty
            </Title>
            <Text my="sm">
              Type where your farm is, then add a brooder and plan your first batch. Takes about
              five minutes.
            </Text>
            <Button mt="auto" onClick={() => setTyping(true)}>
              Start an empty farm
            </Button>
          </Card>
          <Card withBorder component="section">
            <Title order={2} size="h3">
              Look around first
            </Title>
            <Text my="sm">
              An invented farm in cool hill country, with a meat batch and a laying batch. Delete it
              whenever you like.
            </Text>
            <Button
              mt="auto"
              variant="light"
              loading={sample.isPending}
              onClick={() =>
                sample.mutate(undefined, { onSuccess: (farm) => go(`/farm/${farm.id}/today`) })
              }
            >
              Open the sample farm
            </Button>
          </Card>
        </SimpleGrid>
        <ReadFarm />
        <Failure error={sample.error} />
        <Group>
          <Anchor component={Link} href="/trust" py="xs">
            Use it on a phone
          </Anchor>
          <Text size="sm" c="dimmed">
            Everything stays on this computer. Every number opens to its formula and source.
          </Text>
        </Group>
      </Stack>
    </Container>
  );
}
