import type { Judgement, Judgements } from '../tables/judgements.js';
import type { Formula } from '../explain/formula.js';
import { quantity, type NumberQuantity } from '../explain/quantity.js';

export const judgementFormulas = {
  judged: {
    id: 'judgement',
    title: 'A judgment',
    words:
      'No publication decides this. It is what the plans go by; a household could well see it otherwise.',
    symbols: 'as it stands',
    sources: [],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** A judgment with what it decides, its value to be opened. */
export interface ShownJudgement {
  readonly words: string;
  readonly value: NumberQuantity;
}

/** Every judgment that plans go by, by group, for reading. */
export const shownJudgements = (
  judgements: Judgements,
): Readonly<Record<keyof Judgements, readonly ShownJudgement[]>> => ({
  arrival: shown(judgements.arrival),
  birds: shown(judgements.birds),
  grazing: shown(judgements.grazing),
  grass: shown(judgements.grass),
  rations: shown(judgements.rations),
  work: shown(judgements.work),
  buying: shown(judgements.buying),
  alarms: shown(judgements.alarms),
});

const shown = (group: Readonly<Record<string, Judgement>>): ShownJudgement[] =>
  Object.values(group).map((row) => ({
    words: row.words,
    value: quantity(row.name, row.value, row.unit, judgementFormulas.judged, [], { rows: [row] }),
  }));
