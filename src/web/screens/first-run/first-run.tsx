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
import { Link, useLocation } from 'wouter';
import { useCreateSample, useFarms } from '../../api/queries.js';
import { Failure, useAll } from '../../shell/states.js';
import { ReadFarm } from './read-farm.js';

/** The first screen: choose a farm, start one, or look at the sample. */
export default function FirstRun() {
  const [, go] = useLocation();
  const sample = useCreateSample();
  const all = useAll(useFarms());
  if ('waiting' in all) return all.waiting;
  const [farms] = all.data;

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
              Your own farm
            </Title>
            <Text my="sm">
              Say where it is, who is there and what is coming. The plan stands in a minute.
            </Text>
            <Button mt="auto" component={Link} href="/start">
              Start with three things
            </Button>
          </Card>
          <Card withBorder component="section">
            <Title order={2} size="h3">
              Look around first
            </Title>
            <Text my="sm">
              An invented farm in cool hill country, with meat birds, hens and cows. Delete it
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
