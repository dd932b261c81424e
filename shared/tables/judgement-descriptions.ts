import { choice, nested, row } from '../farm/field.js';
import { SHOWN, type Unit } from '../units/unit.js';
import { NAME, SIGNED, SOURCED, WORDS } from './figures.js';
import { JUDGED, type Judgements } from './judgements.js';

const judgement = nested(
  'Judgement',
  row('Judgement', {
    name: NAME,
    words: WORDS,
    value: SIGNED,
    unit: choice('Unit', Object.keys(SHOWN) as readonly Unit[]),
    ...SOURCED,
  }),
);

const group = <G extends keyof Judgements>(name: G) => {
  const keys: readonly string[] = JUDGED[name];
  const fields = Object.fromEntries(keys.map((key) => [key, judgement])) as Readonly<
    Record<keyof Judgements[G], typeof judgement>
  >;
  return nested(name, row(name, fields));
};

export const judgements = nested(
  'Judgements',
  row('Judgements', {
    arrival: group('arrival'),
    birds: group('birds'),
    grazing: group('grazing'),
    grass: group('grass'),
    rations: group('rations'),
    work: group('work'),
    buying: group('buying'),
    alarms: group('alarms'),
  }),
);
