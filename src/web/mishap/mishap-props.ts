import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import type { ToldKind } from '../../../shared/farm/told-fact.js';
import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import type { SavedFarm } from '../api/queries.js';
import type { Kept } from '../shell/kept-said.js';

/** What is most likely told of animals, with what is known of it already. */
export interface FirstTold {
  readonly kind: ToldKind;
  /** A number of it that is asked, where a kind can be told in several ways. */
  readonly asks?: string;
  readonly start?: Readonly<Record<string, unknown>>;
  /** The day it was, where that is known. */
  readonly on?: PlainDate;
}

/** What a part of the dialog is given. */
export interface MishapProps {
  readonly farm: SavedFarm;
  readonly animals: readonly AnimalLine[];
  /** Low of tonight, °C. */
  readonly lowC: number;
  /** Without anything kept, it was told and is said elsewhere. */
  readonly onDone: (kept?: Kept) => void;
  /** Tells what happened of one of them; without what it is, that is asked. */
  readonly onTell: (line: AnimalLine, first?: FirstTold) => void;
  readonly onBack: () => void;
}

/** So many days before its day a box is spoken of as due: which buttons are offered, nothing of farming. */
const SOON_DAYS = 7;
/** Birds whose box is due within a week, or that nobody has told of since. */
export const isBoxDue = (line: AnimalLine): boolean =>
  line.kind === 'batch' &&
  line.isSent &&
  (line.awaited !== undefined ||
    (line.stage === 'coming' && line.next !== undefined && line.next.days.value <= SOON_DAYS));

/** Birds that are there, or were due and may be. */
export const mayBeThere = (line: AnimalLine): boolean =>
  line.kind === 'batch' && (line.stage === 'brooder' || line.stage === 'out');

/** Birds that were due, of which nobody has told that they came. */
export const isAwaited = (line: AnimalLine): boolean =>
  line.kind === 'batch' && line.awaited !== undefined;

/** Chicks that something warms today. */
export const isOnHeat = (line: AnimalLine): boolean =>
  line.kind === 'batch' && line.stage === 'brooder' && line.heat?.night !== undefined;
