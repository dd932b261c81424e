import { birdGrowth } from '../poultry/growth.js';
import type { BirdSex } from '../tables/bird-tables.js';
import { rowById } from '../tables/tables.js';
import type { Given, Topic } from './given.js';

type Column = 'weightKg' | 'cumulativeFeedKg';

/** A column of one day, of one sex or of both together. */
function at({ tables, text, textOr }: Given, column: Column, day: number): number {
  const table = rowById(tables.growthTables, text('table'));
  const sex = textOr('sex', 'mixed');
  const sexes: readonly BirdSex[] = sex === 'mixed' ? ['male', 'female'] : [sex as BirdSex];
  const values = sexes.map((each) => birdGrowth(table, each)[column][day]!);
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Growth tables as the plan reads them, against trials that they were not made from. */
export const growthTableChecks: Topic = {
  title: 'Growth tables against other trials',
  by: {
    weight: (given) => at(given, 'weightKg', given.number('day')),
    'feed-between': (given) =>
      at(given, 'cumulativeFeedKg', given.number('day')) -
      at(given, 'cumulativeFeedKg', given.numberOr('fromDay', 0)),
    conversion: (given) => {
      const [from, to] = [given.numberOr('fromDay', 0), given.number('day')];
      const gain = at(given, 'weightKg', to) - at(given, 'weightKg', from);
      return (at(given, 'cumulativeFeedKg', to) - at(given, 'cumulativeFeedKg', from)) / gain;
    },
  },
};
