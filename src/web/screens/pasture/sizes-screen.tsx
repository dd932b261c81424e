import { Button, Stack, Table, Text, Title } from '@mantine/core';
import { useMemo } from 'react';
import { Link } from 'wouter';
import { aboutGrass } from '../../../../shared/plan/pasture/about-grass.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { NumbersOf } from '../../explain/about-numbers.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { Section } from '../../shell/section.js';
import { Empty } from '../../shell/empty.js';
import { useAll, Working } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';
import { PastureNav } from './pasture-nav.js';
import { usePasturePlan } from './use-pasture.js';

/** Sizes: need, animal units, water, paddock numbers, fence, manure. */
export default function SizesScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePicture(farm.id));
  const picture = 'waiting' in all ? undefined : all.data[0];
  const { plan, isWorking } = usePasturePlan(picture, tables);
  const about = useMemo(
    () => (plan && picture ? aboutGrass(picture, plan, tables) : undefined),
    [plan, picture, tables],
  );
  if ('waiting' in all) return all.waiting;
  const content = (
    <Stack maw={1000}>
      <Title order={1}>Stocking and water</Title>
      <PastureNav farmId={farm.id} />
      {(all.data[0].paddocks.length === 0 || all.data[0].herds.length === 0) && (
        <Empty text="Add paddocks and a herd. What they need stands here then.">
          <Button component={Link} href={`/farm/${farm.id}/pasture/land`}>
            Paddocks and herds
          </Button>
        </Empty>
      )}
      {!plan && isWorking && <Working label="Planning the season" />}
      {plan?.stocking.herds.map((herd) => (
        <Section
          key={herd.herdId}
          title={plan.herds.find((h) => h.id === herd.herdId)?.name ?? 'Herd'}
        >
          <Facts>
            <Fact of={herd.head} />
            <Fact of={herd.demand} />
            {herd.each.map((one, k) => (
              <Fact key={k} of={one} />
            ))}
            <Fact of={herd.shareOfWeight} />
            <Fact of={herd.animalUnits} />
            <Fact of={herd.water} />
            <Fact of={herd.hotDay} />
            <Fact of={herd.tank} />
            <Fact of={herd.refill} />
            <Fact of={herd.lasts} />
            <Fact of={herd.troughEdge} />
            <Fact of={herd.paddocks} />
            <Fact of={herd.paddockArea} />
            <Fact of={herd.heat} said={herd.heat && String(Math.round(herd.heat.value))} />
          </Facts>
        </Section>
      ))}
      {plan && (
        <>
          <Section title="The land">
            <Facts>
              <Fact of={plan.stocking.stockingRate} />
              <Fact of={plan.stocking.capacity} />
              <Fact of={plan.stocking.fence} />
              <Fact of={plan.stocking.split} />
              <Fact of={plan.stocking.lane} />
              <Fact of={plan.stocking.allFence} />
              <Fact of={plan.stocking.energizer} />
              <Fact of={plan.stocking.shade} />
            </Facts>
          </Section>
          {0 < plan.beds.length && (
            <Section title="Garden in the grass">
              <Facts>
                {plan.beds.flatMap(({ paddockId, lastDay, freeFrom }) => [
                  <Fact key={`${paddockId}-last`} of={lastDay} />,
                  <Fact key={`${paddockId}-free`} of={freeFrom} />,
                ])}
              </Facts>
            </Section>
          )}
          {0 < plan.pens.length && (
            <Section title="Ground under birds">
              <Facts>
                {plan.pens.map(({ batchId, cattleFrom }) => (
                  <Fact key={batchId} of={cattleFrom} />
                ))}
              </Facts>
            </Section>
          )}
          <Section title="Paddock by paddock">
            <WideTable label="Paddocks with area, height and manure">
              <Table className="stacks">
                <Table.Thead>
                  <Table.Tr>
                    <Table.Th>Paddock</Table.Th>
                    <Table.Th>Area</Table.Th>
                    <Table.Th>Height</Table.Th>
                    <Table.Th>Grass on hand</Table.Th>
                    <Table.Th>Clover, alfalfa</Table.Th>
                    <Table.Th>Manure nitrogen</Table.Th>
                    <Table.Th>Phosphorus</Table.Th>
                  </Table.Tr>
                </Table.Thead>
                <Table.Tbody>
                  {plan.paddocks.map((p) => (
                    <Table.Tr key={p.id}>
                      <Table.Th scope="row">{p.name}</Table.Th>
                      <Table.Td data-label="Area">
                        <Num of={p.area} />
                      </Table.Td>
                      <Table.Td data-label="Height">
                        <Num of={p.height} />
                      </Table.Td>
                      <Table.Td data-label="On hand">
                        <Num of={p.mass} />
                      </Table.Td>
                      <Table.Td data-label="Clover, alfalfa">
                        <Num of={p.legumes} />
                      </Table.Td>
                      <Table.Td data-label="Manure nitrogen">
                        <Num of={p.nitrogen} />
                      </Table.Td>
                      <Table.Td data-label="Phosphorus">
                        <Num of={p.phosphorus} />
                      </Table.Td>
                    </Table.Tr>
                  ))}
                </Table.Tbody>
              </Table>
            </WideTable>
            <Text size="sm">Heights and grass on hand are those of the first day of the plan.</Text>
          </Section>
        </>
      )}
    </Stack>
  );
  return about ? <NumbersOf about={about}>{content}</NumbersOf> : content;
}
