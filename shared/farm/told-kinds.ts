import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { among, dateProblem, emptyNote, isWorkKey, notAKey, offAndIn } from './about-problems.js';
import { cattleLeftFields, leftProblems } from './cattle-left.js';
import { problemsOfRow } from './check-row.js';
import { eggsCountedFields } from './egg-count.js';
import { optional, oneOf, choice, nested, row, text, yesNo, type RowDescription } from './field.js';
import { arrivedFields, diedFields, goneFields, processedFields } from './head-count.js';
import { heatWorksFields } from './heat-out.js';
import { toldProgressFields } from './job.js';
import { paddockMownFields } from './mowing.js';
import { grassReadingFields, leftHeight } from './paddock.js';
import { ROWS_OF_RECORD, type RowOfRecord } from './row-changed.js';
import { seenFields } from './seen.js';
import { date, doneBy, id, workKey } from './words.js';
import { weighedFields } from './weighing.js';
import {
  balesLeftLying,
  dressedProblems,
  moreDead,
  moreKeptOut,
  weightProblems,
} from './told-problems.js';
import {
  boughtFields,
  brooderSeenFields,
  calvedFields,
  eggsGoneFields,
  feedOpenedFields,
  milkedFields,
  noteFields,
  rainedFields,
  waterDrunkFields,
} from './season-facts.js';
import { treatedFields, treatedProblems } from './treated.js';
import type { ReplacesRule } from './told-seen.js';
import { FARM_GROUND, WHOLE_FARM, type ToldFact, type ToldKind } from './told-fact.js';

/** What a farm knows that facts can be about. */
export interface ToldOn {
  readonly today: PlainDate;
  readonly paddockIds: readonly string[];
  readonly herdIds: readonly string[];
  readonly batchIds: readonly string[];
}

/** What is said of a fact by whoever tells it. */
export type Said = Pick<ToldFact, 'kind' | 'about' | 'on'> & {
  readonly details: Readonly<Record<string, unknown>>;
};

/** A kind of told fact: what its details are, what it is about, what it takes the place of. */
interface KindOfFact {
  readonly details: RowDescription;
  readonly problemsOf: (said: Said, farm: ToldOn) => FieldProblem[];
  /** Of the facts of the same kind about the same thing, which one it replaces. */
  readonly replaces: ReplacesRule;
  /** Two of a day can both be so, when somebody says it: a second weighing, eggs of another round. */
  readonly canStandBeside?: true;
  /** How far back it can lie when it is told, days. */
  readonly oldestDays: number;
  /** No plan goes by it, so that none is made again when it is told. */
  readonly leavesPlans?: true;
}

/** A longer time ago is a slip of the pen: a year typed wrong. */
const LONG_AGO_DAYS = 20 * 366;
/** Older readings say nothing of a season. */
export const OLDEST_READING_DAYS = 5 * 366;

const { key: _key, ...progressFields } = toldProgressFields.fields;
const workProgressFields = row('WorkProgress', progressFields);
/** That it was done, when and by whom is all there is to say. */
const choreFields = row('ChoreDone', { doneBy: optional(doneBy()) });
const alarmFields = row('AlarmSeen', {});
const { heightCm, isSure } = grassReadingFields.fields;
const heightFields = row('HeightRead', { heightCm, isSure });
const groundFields = row('GroundCheck', { isWorkable: yesNo('Dry enough') });
const moveFields = row('HerdMove', {
  /** Left out when the herd is in none. */
  paddockId: optional(id('Paddock')),
  /** They came off grass: into the barn, a yard, or on hay. */
  isOff: optional(yesNo('Off grass')),
  /** Typed as the place where the herd is: what was told before of later days no longer holds. */
  isTyped: optional(yesNo('Typed as its place')),
  /** It is not known since when. */
  isSinceUnknown: optional(yesNo('Since when is not known')),
  /** They were seen where they had been: nothing moved. */
  isStill: optional(yesNo('Still there')),
  /** What is left in the paddock that they left: a reading of it on that day. */
  leftHeightCm: leftHeight(),
  /** Key of the work or chore whose tick told it. */
  work: optional(workKey('Work that was ticked')),
  /** Day of that tick, where it told a later move as well: undone, it takes back all that it told. */
  tickedOn: optional(date('Day of the tick')),
});

/** What the service writes down by itself; the values of fields are those of the row. */
const rowChangedFields = row('RowChanged', {
  of: choice('What', Object.keys(ROWS_OF_RECORD) as RowOfRecord[]),
  name: text('Name'),
  how: choice('What became of it', ['added', 'changed', 'deleted']),
});

const ofBatch = (about: string, batchIds: readonly string[]): FieldProblem[] =>
  among('about', about, batchIds, 'Name a batch of this farm.');

/** Birds of a batch that are fewer from then on: each time it is told, more of them. */
const ofBirds = (details: RowDescription): KindOfFact => ({
  details,
  replaces: 'none',
  oldestDays: LONG_AGO_DAYS,
  problemsOf: ({ about }, { batchIds }) => ofBatch(about, batchIds),
});

/** Something of a herd, told each time anew. */
const ofHerd = (details: RowDescription): KindOfFact => ({
  details,
  replaces: 'none',
  oldestDays: LONG_AGO_DAYS,
  problemsOf: ({ about }, { herdIds }) =>
    among('about', about, herdIds, 'Name a herd of this farm.'),
});

const ofFarm = (about: string): FieldProblem[] =>
  among('about', about, [WHOLE_FARM], 'This is told of the whole farm.');

/** Every kind of fact that can be told. A new kind is a row here and a type in `told-fact.ts`. */
export const TOLD_KINDS: Readonly<Record<ToldKind, KindOfFact>> = {
  'work-progress': {
    details: workProgressFields,
    replaces: 'the-last',
    oldestDays: LONG_AGO_DAYS,
    problemsOf: ({ about, details }, { today }) => [
      ...(isWorkKey(about) ? [] : [notAKey(about)]),
      ...dateProblem('details.doneOn', details['doneOn'], today),
    ],
  },
  'chore-done': {
    details: choreFields,
    replaces: 'the-one-of-that-day',
    oldestDays: LONG_AGO_DAYS,
    leavesPlans: true,
    problemsOf: ({ about }) => (isWorkKey(about) ? [] : [notAKey(about)]),
  },
  weighed: {
    details: weighedFields,
    replaces: 'the-one-of-that-day',
    canStandBeside: true,
    oldestDays: LONG_AGO_DAYS,
    problemsOf: ({ about, details }, { batchIds }) => [
      ...ofBatch(about, batchIds),
      ...weightProblems(details),
    ],
  },
  'eggs-counted': {
    details: eggsCountedFields,
    replaces: 'the-one-of-that-day',
    canStandBeside: true,
    oldestDays: LONG_AGO_DAYS,
    problemsOf: ({ about }, { batchIds }) => ofBatch(about, batchIds),
  },
  arrived: {
    details: arrivedFields,
    replaces: 'the-last',
    oldestDays: LONG_AGO_DAYS,
    problemsOf: ({ about, details: { birds, dead } }, { batchIds }) => [
      ...ofBatch(about, batchIds),
      ...(Number(birds) < Number(dead) ? [moreDead(dead, birds)] : []),
    ],
  },
  died: ofBirds(diedFields),
  processed: {
    ...ofBirds(processedFields),
    problemsOf: ({ about, details }, { batchIds }) => [
      ...ofBatch(about, batchIds),
      ...dressedProblems(details),
    ],
  },
  gone: ofBirds(goneFields),
  'feed-opened': ofBirds(feedOpenedFields),
  bought: {
    details: boughtFields,
    replaces: 'the-same-of-its-work',
    oldestDays: LONG_AGO_DAYS,
    // Of a trip that was ticked off, so that its undo takes back what came with it.
    problemsOf: ({ about }) => (isWorkKey(about) ? [] : ofFarm(about)),
  },
  'water-drunk': {
    ...ofBirds(waterDrunkFields),
    replaces: 'the-one-of-that-day',
    leavesPlans: true,
  },
  'brooder-seen': ofBirds(brooderSeenFields),
  'heat-works': ofBirds(heatWorksFields),
  'alarm-seen': {
    details: alarmFields,
    replaces: 'the-last',
    oldestDays: LONG_AGO_DAYS,
    leavesPlans: true,
    problemsOf: ({ about }) => (about.startsWith('alarm/') ? [] : [notAKey(about)]),
  },
  'eggs-gone': { ...ofBirds(eggsGoneFields), leavesPlans: true },
  rained: {
    details: rainedFields,
    replaces: 'the-one-of-that-day',
    oldestDays: LONG_AGO_DAYS,
    leavesPlans: true,
    problemsOf: ({ about }) =>
      among('about', about, [FARM_GROUND], 'The gauge is that of the whole farm.'),
  },
  calved: { ...ofHerd(calvedFields), replaces: 'the-calving-of-its-cow' },
  'cattle-left': {
    ...ofHerd(cattleLeftFields),
    problemsOf: ({ about, details }, { herdIds }) => [
      ...among('about', about, herdIds, 'Name a herd of this farm.'),
      ...leftProblems(details),
    ],
  },
  treated: {
    ...ofHerd(treatedFields),
    problemsOf: ({ about, details }, { batchIds, herdIds }) => [
      ...among('about', about, [...batchIds, ...herdIds], 'Name a batch or herd of this farm.'),
      ...treatedProblems(details, batchIds.includes(about)),
    ],
  },
  milked: {
    ...ofHerd(milkedFields),
    problemsOf: ({ about, details }, { herdIds }) => [
      ...among('about', about, herdIds, 'Name a herd of this farm.'),
      ...moreKeptOut(details),
    ],
    replaces: 'the-one-of-that-day',
    leavesPlans: true,
  },
  note: {
    details: noteFields,
    replaces: 'none',
    oldestDays: LONG_AGO_DAYS,
    leavesPlans: true,
    problemsOf: ({ about, details }, { batchIds, herdIds, paddockIds }) => [
      ...among(
        'about',
        about,
        [WHOLE_FARM, ...batchIds, ...herdIds, ...paddockIds],
        'Name a batch, herd or paddock of this farm, or write it of the whole farm.',
      ),
      ...emptyNote(details),
    ],
  },
  'row-changed': {
    details: rowChangedFields,
    replaces: 'none',
    oldestDays: LONG_AGO_DAYS,
    leavesPlans: true,
    problemsOf: ({ kind }) => [
      {
        field: 'kind',
        code: 'not-allowed',
        given: kind,
        fix: 'Change the person, animals, paddock, gear, price or job itself: that tells it.',
      },
    ],
  },
  'grass-reading': {
    details: heightFields,
    replaces: 'the-one-of-that-day',
    canStandBeside: true,
    oldestDays: OLDEST_READING_DAYS,
    problemsOf: ({ about }, { paddockIds }) =>
      among('about', about, paddockIds, 'Name a paddock of this farm.'),
  },
  'paddock-mown': {
    details: paddockMownFields,
    replaces: 'the-one-of-that-day',
    oldestDays: OLDEST_READING_DAYS,
    problemsOf: ({ about, details: { isLeftLying, bales } }, { paddockIds }) => [
      ...among('about', about, paddockIds, 'Name a paddock of this farm.'),
      ...(isLeftLying === true && typeof bales === 'number' && 0 < bales
        ? [balesLeftLying(bales)]
        : []),
    ],
  },
  'ground-check': {
    details: groundFields,
    replaces: 'the-one-of-that-day',
    oldestDays: LONG_AGO_DAYS,
    problemsOf: ({ about }) =>
      among('about', about, [FARM_GROUND], 'The ground is that of the whole farm.'),
  },
  'herd-move': {
    details: moveFields,
    replaces: 'none',
    oldestDays: LONG_AGO_DAYS,
    problemsOf: ({ about, details: { paddockId, isTyped, isOff } }, { herdIds, paddockIds }) => [
      ...among('about', about, herdIds, 'Name a herd of this farm.'),
      ...(isOff === true && paddockId !== undefined ? [offAndIn(paddockId)] : []),
      ...(paddockId === undefined && (isTyped === true || isOff === true)
        ? []
        : among('details.paddockId', paddockId, paddockIds, 'Name a paddock of this farm.')),
    ],
  },
};

const saidFields = <const Kind extends string, Details extends RowDescription>(
  kind: Kind,
  name: string,
  details: Details,
) =>
  row(`Said${name}`, {
    kind: choice('Kind', [kind]),
    /** Key of the work, id of the batch, paddock or herd, or "ground". */
    about: workKey('What it happened to'),
    on: date('Day'),
    details: nested('Details', details),
    saidBy: optional(text('Who said so')),
    /** A name of the client's own: said again under the same key it stays one fact. */
    key: optional(id('Key')),
    /** Id of the fact that this one changes. */
    replaces: optional(id('Fact it changes')),
    /** What its teller knew; it is asked which holds where somebody else told another meanwhile. */
    seen: optional(nested('Seen', seenFields)),
    /** It is kept beside the one that it would replace. */
    isBeside: optional(yesNo('Both are so')),
  });

/** One thing that happened, as it is told. */
export const anySaid = oneOf('Fact', 'kind', {
  'work-progress': saidFields('work-progress', 'WorkProgress', workProgressFields),
  'chore-done': saidFields('chore-done', 'ChoreDone', choreFields),
  weighed: saidFields('weighed', 'Weighed', weighedFields),
  'eggs-counted': saidFields('eggs-counted', 'EggsCounted', eggsCountedFields),
  arrived: saidFields('arrived', 'Arrived', arrivedFields),
  died: saidFields('died', 'Died', diedFields),
  processed: saidFields('processed', 'Processed', processedFields),
  gone: saidFields('gone', 'Gone', goneFields),
  'feed-opened': saidFields('feed-opened', 'FeedOpened', feedOpenedFields),
  bought: saidFields('bought', 'Bought', boughtFields),
  'water-drunk': saidFields('water-drunk', 'WaterDrunk', waterDrunkFields),
  'brooder-seen': saidFields('brooder-seen', 'BrooderSeen', brooderSeenFields),
  'heat-works': saidFields('heat-works', 'HeatWorks', heatWorksFields),
  'eggs-gone': saidFields('eggs-gone', 'EggsGone', eggsGoneFields),
  rained: saidFields('rained', 'Rained', rainedFields),
  'alarm-seen': saidFields('alarm-seen', 'AlarmSeen', alarmFields),
  calved: saidFields('calved', 'Calved', calvedFields),
  'cattle-left': saidFields('cattle-left', 'CattleLeft', cattleLeftFields),
  treated: saidFields('treated', 'Treated', treatedFields),
  milked: saidFields('milked', 'Milked', milkedFields),
  note: saidFields('note', 'Note', noteFields),
  'grass-reading': saidFields('grass-reading', 'HeightRead', heightFields),
  'paddock-mown': saidFields('paddock-mown', 'PaddockMown', paddockMownFields),
  'ground-check': saidFields('ground-check', 'GroundCheck', groundFields),
  'herd-move': saidFields('herd-move', 'HerdMove', moveFields),
});

/** What is wrong with what is said, by the path of the field within the fact. */
export function toldProblems(said: Said, farm: ToldOn): FieldProblem[] {
  const kind = TOLD_KINDS[said.kind];
  return [
    ...dateProblem('on', said.on, farm.today, addDays(farm.today, -kind.oldestDays)),
    ...problemsOfRow(kind.details, said.details, 'details.'),
    ...kind.problemsOf(said, farm),
  ];
}
