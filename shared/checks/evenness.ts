import { bothSexesCv, nearShare, spreadOf, type Spread } from '../poultry/evenness.js';
import { birdsToWeigh } from '../poultry/weighings.js';
import type { Given, Topic } from './given.js';

/** The birds of a row: bird1, bird2 and so on, kg. */
function spreadIn({ numberOr }: Given): Spread {
  const eachKg: number[] = [];
  for (let k = 1; ; k++) {
    const kg = numberOr(`bird${k}`, undefined);
    if (kg === undefined) return spreadOf(eachKg);
    eachKg.push(kg);
  }
}

/** More birds than a farm has: as if there were no end of them. */
const NO_END = 1e9;

/** Single weights and how many to weigh, as a plan with weighings reckons with them. */
export const evennessChecks: Topic = {
  title: 'How alike birds are, and how many to weigh',
  by: {
    average: (given) => spreadIn(given).meanKg,
    differ: (given) => spreadIn(given).cv!,
    near: (given) => spreadIn(given).near,
    'near-share': ({ number }) => nearShare(number('cv')),
    'to-weigh': ({ number, numberOr }) =>
      birdsToWeigh({ cv: number('cv') }, numberOr('flock', NO_END), number('within')),
    'both-sexes': ({ number, tables }) =>
      bothSexesCv(number('cv'), tables.judgements.birds.sexesApart.value),
  },
};
