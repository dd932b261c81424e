import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import type { IngredientProduct } from '../../../../shared/farm/mix-ingredient.js';
import type { Product } from '../../../../shared/farm/product.js';
import { BATCH_KG } from '../../../../shared/farm/ration-asked.js';
import { problemsOfNumber } from '../../../../shared/farm/bounds.js';
import type { BirdsOfAge } from '../../../../shared/ration/birds-for.js';
import { rationOf, type Ration } from '../../../../shared/ration/ration.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import type { SavedFarm } from '../../api/queries.js';

interface Asked extends BirdsOfAge {
  readonly alsoFor: readonly BirdsOfAge[];
  readonly batchKg: number | undefined;
  readonly ingredients: readonly IngredientProduct[];
}

/** The ration that is asked for, worked out here; the solver is fetched when there is something to mix. */
export function useRation(
  { birdsId, stageId, alsoFor, batchKg, ingredients }: Asked,
  { farm, tables, products }: { farm: SavedFarm; tables: Tables; products: readonly Product[] },
): { readonly ration?: Ration | undefined; readonly isLoading: boolean; readonly error?: Error } {
  const solver = useQuery({
    queryKey: ['solver'],
    queryFn: async () => (await import('./load-solver.js')).loadSolver(),
    staleTime: Infinity,
    gcTime: Infinity,
    // A function is no answer of the service: nothing else reads it.
    structuralSharing: false,
    enabled: 0 < ingredients.length,
  });
  const solve = solver.data;
  const ration = useMemo(() => {
    const isAmount = problemsOfNumber('', batchKg, BATCH_KG.bounds).length === 0;
    if (!solve || !isAmount || batchKg === undefined || ingredients.length === 0) return undefined;
    const asked = { birdsId, stageId, alsoFor, batchKg, ingredients, products, farm };
    return rationOf(asked, tables, solve);
  }, [solve, birdsId, stageId, alsoFor, batchKg, ingredients, products, farm, tables]);
  return {
    ration,
    isLoading: solver.isLoading,
    ...(solver.error ? { error: solver.error } : {}),
  };
}
