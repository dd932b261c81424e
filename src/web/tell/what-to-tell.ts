import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import { row, type RowDescription } from '../../../shared/farm/field.js';
import type { ToldKind } from '../../../shared/farm/told-fact.js';
import type { OtherwiseField } from '../../../shared/plan/mishap/came-otherwise.js';
import type { MoveMeant } from '../../../shared/plan/today/move-meant.js';
import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import type { BatchLine } from '../../../shared/plan/today/batch-line.js';
import { TOLD_KINDS } from '../../../shared/farm/told-kinds.js';
import { WHOLE_FARM, FARM_GROUND } from '../../../shared/farm/told-fact.js';
import { calvedFields, milkedFields } from '../../../shared/farm/season-facts.js';
import { treatedFields } from '../../../shared/farm/treated.js';
import { id } from '../../../shared/farm/words.js';
import { asRead } from '../../../shared/units/as-read.js';
import type { UnitSystem } from '../../../shared/units/unit.js';

/** Something that can be told, with what is most likely already filled in. */
export interface Tellable {
  readonly kind: ToldKind;
  readonly about: string;
  /** On the choice, and over the form. */
  readonly words: string;
  readonly start: Readonly<Record<string, unknown>>;
  /** The day it most likely was, where that is not today. */
  readonly on?: PlainDate;
  readonly fields: RowDescription;
  /** What a bird weighs by the plan, by the field that it stands under. */
  readonly planKg?: Readonly<Record<string, number | undefined>>;
  /** Moves that nobody told, which are told with the one after them. */
  readonly unsaid?: readonly MoveMeant[];
}

/** Of a move only the paddock is asked. */
const { leftHeightCm } = TOLD_KINDS['herd-move'].details.fields;
const movedFields = row('Moved', { paddockId: id('Into which paddock') });
/** Where they were in a paddock, what they left of it can be told with the move. */
const leftFields = row('Left', { leftHeightCm: leftHeightCm! });
const movedAndLeftFields = row('MovedAndLeft', { ...movedFields.fields, ...leftFields.fields });

const { calves, dead, cowId: whichCow, notInCalf } = calvedFields.fields;
/** That a cow has none is told where it is asked; of which calving it is, is known there. */
const bornFields = row('Born', { calves, dead, cowId: whichCow });
const notInCalfFields = row('NotInCalf', { notInCalf: { ...notInCalf, isOptional: false } });

/** Cows that calve none after all, told where their calves are asked after. */
export const notInCalfTold = ({ id: about }: AnimalLine): Tellable => ({
  ...{ kind: 'calved', about, words: 'Not in calf', start: {} },
  fields: notInCalfFields,
});

/** Birds give no milk, and cattle lay no eggs. */
export const treatedFieldsOf = (kind: AnimalLine['kind']): RowDescription => {
  const { eggDays, cowId, milkDays, ...ofAll } = treatedFields.fields;
  const { product, ...rest } = ofAll;
  return row('Treated', {
    ...(kind === 'herd' ? { product, cowId, ...rest, milkDays } : { ...ofAll, eggDays }),
  });
};

/** What of the milk was kept out is asked while a medicine runs. */
const milkedFieldsOf = ({ medicines = [] }: AnimalLine): RowDescription => {
  const isKeptOut = medicines.some(({ keptOut }) => keptOut.includes('milk'));
  return isKeptOut ? milkedFields : row('Milked', { liters: milkedFields.fields.liters });
};

/** What is told of the place as a whole. */
export const ofPlace = (): Tellable[] => [
  tellable('rained', FARM_GROUND, 'Rain in the gauge', {}),
  tellable('bought', WHOLE_FARM, 'Something was bought', { what: 'feed', amount: 1 }),
  tellable('note', WHOLE_FARM, 'A note', {}),
];

/**
 * What can be told of a batch or herd as it stands today, the most likely first.
 *
 * @param units in which its numbers are read
 */
export function ofAnimal(line: AnimalLine, units: UnitSystem): Tellable[] {
  const of = (kind: ToldKind, words: string, start: object = {}) =>
    tellable(kind, line.id, words, start);
  if (line.kind === 'herd') {
    const { here, nextPaddockId } = line;
    const unsaid = line.unsaid ? { unsaid: line.unsaid.moves } : {};
    return [
      {
        ...unsaid,
        ...of('herd-move', 'They were moved', nextPaddockId ? { paddockId: nextPaddockId } : {}),
        fields: here ? movedAndLeftFields : movedFields,
      },
      ...(here
        ? [
            {
              ...unsaid,
              ...of('herd-move', 'They came off grass', { isOff: true }),
              fields: leftFields,
            },
          ]
        : []),
      ...(here
        ? [tellable('grass-reading', here.paddockId, `Height of the grass in ${here.paddock}`, {})]
        : []),
      {
        ...of('calved', 'A calf was born', {
          calves: 1,
          ...(line.dueCowId === undefined ? {} : { cowId: line.dueCowId }),
        }),
        fields: bornFields,
      },
      ...(line.isMilked
        ? [{ ...of('milked', 'Milk of the day'), fields: milkedFieldsOf(line) }]
        : []),
      { ...of('treated', 'Medicine was given'), fields: treatedFieldsOf('herd') },
      of('cattle-left', 'Some died, were sold or slaughtered', { how: 'died', head: 1 }),
      of('note', 'A note'),
    ];
  }
  const isThere = line.stage === 'brooder' || line.stage === 'out';
  // Told later than it was, it was most likely on its day.
  const onItsDay = line.wasToCome === undefined ? {} : { on: line.wasToCome };
  if (!isThere)
    return [{ ...of('arrived', 'They came', cameAs(line)), ...onItsDay }, of('note', 'A note')];
  const isMeat = line.purpose === 'meat';
  const came = {
    ...of('arrived', line.awaited ? 'They came' : 'How many came', cameAs(line)),
    ...onItsDay,
  };
  const { bagKg, liveKg, dressedKg } = line.weighs ?? {};
  const processed = {
    ...of(
      'processed',
      'Processed',
      // As Today counts them.
      { birds: isMeat ? asRead(Number(line.head.value), 'count', units) : 1 },
    ),
    planKg: { liveKg, dressedKg },
  };
  const isCameAsked = line.awaited !== undefined || line.wasToCome !== undefined;
  const isToHaveLeft = line.wasToLeave !== undefined;
  return [
    ...(isCameAsked ? [came] : []),
    ...(isToHaveLeft ? [processed] : []),
    of('died', 'Some died', { birds: 1 }),
    ...(line.eggs ? [of('eggs-counted', 'Eggs', { days: 1 })] : []),
    { ...of('weighed', 'Weighed some', {}), planKg: { averageKg: liveKg } },
    of('feed-opened', 'Feed opened', { bags: 1, ...(bagKg === undefined ? {} : { bagKg }) }),
    ...(line.stage === 'brooder' && line.heat
      ? [
          of('brooder-seen', 'Read the thermometer', {
            underHeatC: asRead(Number(line.heat.wanted.value), 'degC', units),
          }),
        ]
      : []),
    { ...of('treated', 'Medicine was given'), fields: treatedFieldsOf('batch') },
    of('water-drunk', 'Water they drank'),
    ...(isToHaveLeft ? [] : [processed]),
    ...(line.eggs ? [of('eggs-gone', 'Eggs sold or given', { how: 'sold' })] : []),
    of('gone', 'Birds sold or given', { birds: 1, how: 'sold' }),
    ...(isCameAsked ? [] : [came]),
    of('note', 'A note'),
  ];
}

/** Something that comes otherwise than planned, and the field of the batch that it changes. */
export interface Otherwise {
  readonly words: string;
  readonly field: OtherwiseField;
}

/** What can come otherwise for a batch as it stands today. */
export function otherwiseOf(line: AnimalLine | undefined): Otherwise[] {
  if (line?.kind !== 'batch') return [];
  return [
    ...(line.stage === 'coming' || line.awaited
      ? ([
          { words: 'They come on another day', field: 'arrivalDate' },
          { words: 'Fewer will come', field: 'orderedBirds' },
        ] as const)
      : []),
    ...(line.purpose === 'meat'
      ? ([{ words: 'Processing is on another day', field: 'slotDate' }] as const)
      : []),
  ];
}

/** Of birds that are there the number that came is not known any more. */
const cameAs = ({ stage, head, awaited }: BatchLine): object =>
  stage === 'coming' || awaited ? { birds: Number((awaited ?? head).value), dead: 0 } : {};

const tellable = (kind: ToldKind, about: string, words: string, start: object): Tellable => ({
  ...{ kind, about, words, start: start as Tellable['start'] },
  fields: TOLD_KINDS[kind].details,
});
