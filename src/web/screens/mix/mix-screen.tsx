import './mix.css';
import { Alert, Group, SimpleGrid, Stack, Text, Title } from '@mantine/core';
import { useMemo, useState } from 'react';
import { useSearchParams } from 'wouter';
import type { Purpose } from '../../../../shared/farm/batch.js';
import type { IngredientProduct } from '../../../../shared/farm/mix-ingredient.js';
import { BATCH_KG } from '../../../../shared/farm/ration-asked.js';
import { birdsFor, type BirdsOfAge } from '../../../../shared/ration/birds-for.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { fromShown } from '../../../../shared/units/unit.js';
import { useProducts, type SavedFarm } from '../../api/queries.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { PrintButton } from '../../shell/print-button.js';
import { useAll, Working } from '../../shell/states.js';
import { AlsoFor, BirdsFields } from './birds-fields.js';
import { IngredientList } from './ingredient-list.js';
import { MixHolds } from './mix-holds.js';
import { MixReasons } from './mix-reasons.js';
import { MixSheet } from './mix-sheet.js';
import { MixSquare } from './mix-square.js';
import { useRation } from './use-ration.js';

/** What is mixed at once where nothing is typed: a hundredweight, or 50 kg. */
const usualBatchKg = ({ units }: SavedFarm): number =>
  units === 'us' ? fromShown(100, 'kg', 'us') : 50;

/** Feed of the household's own mixing: for whom, of what, and the sheet to mix it by. */
export default function MixScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(useProducts(farm.id));
  if ('waiting' in all) return all.waiting;
  return <Mixer farm={farm} tables={tables} products={all.data[0]} />;
}

function Mixer({
  farm,
  tables,
  products,
}: {
  farm: SavedFarm;
  tables: Tables;
  products: NonNullable<ReturnType<typeof useProducts>['data']>;
}) {
  const [birds, setBirds] = useBirds(tables);
  const [alsoFor, setAlsoFor] = useState<readonly BirdsOfAge[]>([]);
  const [batchKg, setBatchKg] = useState<number | undefined>(() => usualBatchKg(farm));
  const [leftOut, setLeftOut] = useState<ReadonlySet<string>>(new Set());
  const own = useMemo(
    () => products.filter((each): each is IngredientProduct => each.kind === 'ingredient'),
    [products],
  );
  const ingredients = useMemo(() => own.filter(({ id }) => !leftOut.has(id)), [own, leftOut]);
  const { ration, isLoading, error } = useRation(
    { ...birds, alsoFor, batchKg, ingredients },
    { farm, tables, products },
  );
  const mix = ration?.mix;
  return (
    <Stack maw={1000}>
      <Group justify="space-between">
        <Title order={1}>Mix your own feed</Title>
        {mix && <PrintButton />}
      </Group>
      <SimpleGrid cols={{ base: 1, sm: 3 }} className="no-print">
        <BirdsFields tables={tables} birds={birds} onChange={setBirds} />
        <QuantityInput field={BATCH_KG} units={farm.units} value={batchKg} onChange={setBatchKg} />
      </SimpleGrid>
      <AlsoFor tables={tables} first={birds} flocks={alsoFor} onChange={setAlsoFor} />
      {isLoading && <Working label="Getting the mixer ready" />}
      {error && (
        <Alert color="stop" title="The mixer could not be fetched">
          It is fetched once, and needs a signal for that. Try again where there is one.
        </Alert>
      )}
      {ration && <MixSheet farm={farm} tables={tables} ration={ration} />}
      <IngredientList
        farm={farm}
        tables={tables}
        ingredients={own}
        leftOut={leftOut}
        onLeaveOut={setLeftOut}
      />
      {mix && (
        <>
          <MixHolds mix={mix} />
          <MixReasons mix={mix} />
          {mix.square && <MixSquare farm={farm} square={mix.square} />}
        </>
      )}
      <Text size="sm">
        What feeds hold and birds need is from tables that were remembered, not read again. What
        your bag or a laboratory says goes before them. The label and your veterinarian decide.
      </Text>
    </Stack>
  );
}

/** Who is mixed for: at first whom the link here named. */
function useBirds(tables: Tables) {
  const [search] = useSearchParams();
  return useState<BirdsOfAge>(() =>
    birdsFor(tables, {
      strainId: search.get('breed') ?? undefined,
      purpose: (search.get('for') as Purpose | null) ?? undefined,
      phaseId: search.get('phase') ?? undefined,
    }),
  );
}
