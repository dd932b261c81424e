import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import type { SavedFarm } from '../api/queries.js';

/** What a part of the dialog is given. */
export interface MishapProps {
  readonly farm: SavedFarm;
  readonly animals: readonly AnimalLine[];
  readonly onDone: () => void;
  readonly onBack: () => void;
}

/** Chicks that something warms today. */
export const isOnHeat = (line: AnimalLine): boolean =>
  line.kind === 'batch' && line.stage === 'brooder' && line.heat?.night !== undefined;
