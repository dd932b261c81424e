import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { listed } from '../../units/listed.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { PlannedBatch } from '../work/dated-work.js';
import { batchLine, type BatchLine } from './batch-line.js';
import { herdLines, type HerdLine } from './herd-line.js';
import type { WorkPlan } from '../work/planned-work.js';

export type AnimalLine = BatchLine | HerdLine;

/** Plans of a farm's animals: those that could be made. */
export interface PlannedAnimals {
  readonly batches: readonly PlannedBatch[];
  readonly pasture?: PasturePlan;
}

/** Every batch and herd in one line: chicks in the brooder first, those still to come last. */
export function animalLines(
  picture: FarmPicture,
  tables: Tables,
  { batches, pasture }: PlannedAnimals,
  eventsToMove: WorkPlan['eventsToMove'] = [],
): AnimalLine[] {
  const lines = [
    ...batches.flatMap((batch) => batchLine(picture, tables, batch) ?? []),
    ...herdLines(
      picture,
      tables,
      pasture,
      eventsToMove.filter(({ isPutOff }) => isPutOff),
    ),
  ];
  return cautionsOnce(lines.sort((a, b) => rank(a) - rank(b) || firstDate(a, b)));
}

/** What is the same of several batches stands at the first of them, which names the others. */
function cautionsOnce(lines: readonly AnimalLine[]): AnimalLine[] {
  const heldBy = (title: string): BatchLine[] =>
    lines.filter(
      (line): line is BatchLine =>
        line.kind === 'batch' && line.cautions.some((each) => each.title === title),
    );
  return lines.map((line) => {
    if (line.kind === 'herd') return line;
    const cautions = line.cautions.flatMap((caution) => {
      const [first, ...others] = heldBy(caution.title);
      if (first !== line) return [];
      const names = listed(others.map(({ name }) => name));
      return { ...caution, title: names ? `${caution.title} (${names} too)` : caution.title };
    });
    return { ...line, cautions };
  });
}

const RANKS = { brooder: 0, eggs: 1, out: 2, coming: 4 } as const;
const rank = (line: AnimalLine): number => (line.kind === 'herd' ? 3 : RANKS[line.stage]);

const firstDate = (a: AnimalLine, b: AnimalLine): number =>
  a.next && b.next && a.next.on !== b.next.on ? (a.next.on < b.next.on ? -1 : 1) : 0;
