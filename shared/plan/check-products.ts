import type { Product } from '../farm/product.js';
import { FieldError, type FieldProblem } from '../problems/field-problem.js';
import type { Tables } from '../tables/tables.js';

type ProductTables = Pick<Tables, 'feedPrograms' | 'ingredients' | 'strains'>;

/** Throws when a product names a feed phase, a breed or an ingredient that no table has. */
export function checkProduct(product: Product, tables: ProductTables, path = ''): void {
  const problems = problemsOf(product, tables, path);
  if (0 < problems.length) throw new FieldError(problems);
}

function problemsOf(product: Product, tables: ProductTables, path: string): FieldProblem[] {
  const among = (field: string, given: string, allowed: readonly string[]): FieldProblem[] =>
    allowed.includes(given)
      ? []
      : [
          {
            field: `${path}${field}`,
            code: 'not-allowed',
            given,
            allowed,
            fix: 'Choose one of the table.',
          },
        ];
  if (product.kind === 'feed') {
    const phases = phaseIdsOf(tables);
    return product.phaseIds.flatMap((given, i) => among(`phaseIds.${i}`, given, phases));
  }
  if (product.kind === 'ingredient') {
    const known = tables.ingredients.map((each) => each.id);
    return among('ingredientId', product.ingredientId, known);
  }
  const isOfBreed = product.kind === 'chicks' || product.kind === 'meat';
  if (!isOfBreed || product.strainId === undefined) return [];
  return among(
    'strainId',
    product.strainId,
    tables.strains.map(({ id }) => id),
  );
}

/** Every feed phase there is, each once, in the order of the programs. */
export const phaseIdsOf = ({ feedPrograms }: Pick<Tables, 'feedPrograms'>): string[] => [
  ...new Set(feedPrograms.flatMap(({ phases }) => phases.map(({ id }) => id))),
];
