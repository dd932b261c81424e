/** A ration of 20 ingredients, once the solver is loaded. */
const dist = (path) => new URL(`../../dist/${path}`, import.meta.url).href;
const { limitsFor } = await import(dist('shared/ration/nutrient-limits.js'));
const { rationOf } = await import(dist('shared/ration/ration.js'));
const { loadSolver } = await import(dist('src/rations/solver.js'));
const { loadTables } = await import(dist('src/reference/load-tables.js'));

const INGREDIENTS = 20;
/** Invented prices a kg, by what an ingredient is. */
const PRICES = { grain: 0.6, protein: 1.1, fat: 2.4, mineral: 0.5, additive: 12, premix: 4 };

export async function benchRation(print) {
  const tables = loadTables();
  const begun = performance.now();
  const solve = await loadSolver();
  print('ration, the solver loaded', performance.now() - begun, 'ms', 1);
  // Minerals and what else every mix needs stand at the end of the table: they are taken first.
  const ingredients = [...tables.ingredients]
    .reverse()
    .slice(0, INGREDIENTS - 1)
    .concat(tables.ingredients[0])
    .map(({ id, name, what }, k) => {
      const price = (PRICES[what] * (1 + 0.02 * k)).toFixed(3);
      return { kind: 'ingredient', id, name, ingredientId: id, bagKg: 1, price };
    });
  const asked = {
    ...{ birdsId: 'meat-chickens', stageId: 'starter', batchKg: 50, products: [], ingredients },
    farm: { units: 'us', currency: 'USD' },
  };
  const { stages } = tables.rationNeeds.find(({ id }) => id === asked.birdsId);
  const limits = limitsFor(stages[0], tables.judgements.rations).length;
  const run = (name, ask) => {
    const times = Array.from({ length: 60 }, () => {
      const start = performance.now();
      rationOf(ask, tables, solve);
      return performance.now() - start;
    }).slice(20);
    print(name, times.sort((a, b) => a - b)[times.length >> 1], 'ms', times.length);
  };
  run(`ration, ${INGREDIENTS} ingredients, ${limits} requirements`, asked);
  run('ration that cannot be, with what would help', {
    ...asked,
    ingredients: ingredients.slice(-1),
  });
}
