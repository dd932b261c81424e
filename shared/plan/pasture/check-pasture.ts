import { addDays } from '../../calendar/plain-date.js';
import { besides, problemsOfRow } from '../../farm/check-row.js';
import { herdFields, type Herd } from '../../farm/herd.js';
import {
  grassReadingFields,
  paddockFields,
  type GrassReading,
  type Paddock,
} from '../../farm/paddock.js';
import { pastureChoiceFields } from '../../farm/pasture-choices.js';
import { FieldError, type FieldProblem } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { cowProblems } from './check-cows.js';
import { ids, later, oneOf } from './check-values.js';
import type { PastureRequest } from './pasture-request.js';
import { pastureSpan } from './pasture-span.js';

/** Longest plan, days: a grazing year in either hemisphere with room to spare. */
export const MAX_PASTURE_DAYS = 500;

type Problems = FieldProblem[];

/**
 * Refuses what no pasture plan can be made of.
 *
 * @throws FieldError naming every field at once
 */
export function checkPasture(request: PastureRequest): void {
  const problems: Problems = [];
  request.paddocks.forEach((paddock, i) => {
    problems.push(
      ...onceGood(paddock, request.tables, () =>
        paddockProblems(paddock, request.tables, `paddocks.${i}.`),
      ),
    );
  });
  request.herds.forEach((herd, i) => {
    problems.push(...herdProblems(herd, request.tables, `herds.${i}.`));
  });
  request.cows.forEach((cow, i) => {
    problems.push(...cowProblems(cow, request, `cows.${i}.`));
  });
  problems.push(...idProblems(request), ...choiceProblems(request), ...futureProblems(request));
  request.readings.forEach((reading, i) => {
    problems.push(
      ...onceGood(reading, request.today, () =>
        readingProblems(request, reading, `readings.${i}.`),
      ),
    );
  });
  if (0 < problems.length) throw new FieldError(problems);
}

const goodBy = new WeakMap<object, unknown>();

/**
 * A row in which nothing was found is not looked through again for every plan: after an entry nearly
 * all of them are those of the plan before.
 *
 * @param by what it is held against beside itself
 */
function onceGood(row: object, by: unknown, find: () => Problems): Problems {
  if (goodBy.get(row) === by) return [];
  const problems = find();
  if (problems.length === 0) goodBy.set(row, by);
  return problems;
}

/** What is wrong with one paddock by itself, and by the tables. */
export function paddockProblems(paddock: Paddock, tables: Tables, at = ''): Problems {
  const own = problemsOfRow(paddockFields, paddock, at, 'passed');
  const forage = tables.forages.find((f) => f.id === paddock.forageId);
  const problems: Problems = [
    ...oneOf(`${at}forageId`, paddock.forageId, ids(tables.forages)),
    ...oneOf(`${at}soilId`, paddock.soilId, ids(tables.soils)),
  ];
  const readyHeightCm = paddock.readyHeightCm ?? forage?.heights.readyHeightCm;
  const residualHeightCm = paddock.residualHeightCm ?? forage?.heights.residualHeightCm;
  if (
    readyHeightCm !== undefined &&
    residualHeightCm !== undefined &&
    readyHeightCm <= residualHeightCm
  ) {
    problems.push({
      field: `${at}residualHeightCm`,
      code: 'out-of-bounds',
      given: residualHeightCm,
      max: Math.round((readyHeightCm - 0.1) * 10) / 10,
      unit: 'cm',
      fix: 'The residual must lie below the ready height.',
    });
  }
  return besides(own, problems);
}

/** What is wrong with one herd by itself, and by the tables. */
export const herdProblems = (herd: Herd, tables: Tables, at = ''): Problems =>
  besides(
    problemsOfRow(herdFields, herd, at, 'passed'),
    herd.groups.flatMap((group, k) => [
      ...oneOf(`${at}groups.${k}.classId`, group.classId, ids(tables.cattle.classes)),
      ...(group.breedId === undefined
        ? []
        : oneOf(`${at}groups.${k}.breedId`, group.breedId, ids(tables.gestation.breeds))),
    ]),
  );

function idProblems({ paddocks, herds, cows, readings, followers }: PastureRequest): Problems {
  const known = new Set(paddocks.map((p) => p.id));
  const knownHerds = new Set(herds.map((h) => h.id));
  const twice = (rows: readonly { id: string }[], what: string): Problems =>
    rows.flatMap(({ id }, i) =>
      rows.findIndex((row) => row.id === id) === i
        ? []
        : [
            {
              field: `${what}.${i}.id`,
              code: 'conflict' as const,
              given: id,
              fix: 'Give each its own id.',
            },
          ],
    );
  const unknown = (field: string, id: string, among: ReadonlySet<string>): Problems =>
    among.has(id)
      ? []
      : [
          {
            field,
            code: 'not-allowed',
            given: id,
            allowed: [...among],
            fix: 'Name one that is listed.',
          },
        ];
  return [
    ...twice(paddocks, 'paddocks'),
    ...twice(herds, 'herds'),
    ...twice(cows, 'cows'),
    ...readings.flatMap((r, i) => unknown(`readings.${i}.paddockId`, r.paddockId, known)),
    ...herds.flatMap((h, i) =>
      h.inPaddockId === undefined
        ? []
        : [
            ...unknown(`herds.${i}.inPaddockId`, h.inPaddockId, known),
            ...herds.slice(0, i).flatMap((other) =>
              other.inPaddockId === h.inPaddockId
                ? [
                    {
                      field: `herds.${i}.inPaddockId`,
                      code: 'conflict' as const,
                      given: h.inPaddockId,
                      fix: `${other.name} is already there. Join the herds, or move one.`,
                    },
                  ]
                : [],
            ),
          ],
    ),
    ...followers.flatMap((f, i) => unknown(`followers.${i}.herdId`, f.herdId, knownHerds)),
  ];
}

function choiceProblems(request: PastureRequest): Problems {
  const { choices, tables } = request;
  const own = problemsOfRow(pastureChoiceFields, choices, 'pastureChoices.', 'passed');
  const problems: Problems = [
    ...(choices.keepForAutumnIds ?? []).flatMap((id, i) =>
      oneOf(`pastureChoices.keepForAutumnIds.${i}`, id, ids(request.paddocks)),
    ),
  ];
  const { hay } = tables.pasture;
  for (const [field, id, rows] of [
    ['feedingId', choices.feedingId, hay.feeding],
    ['storingId', choices.storingId, hay.storing],
    ['baleId', choices.baleId, hay.bales],
  ] as const) {
    if (id !== undefined) problems.push(...oneOf(`pastureChoices.${field}`, id, ids(rows)));
  }
  const found = besides(own, problems);
  if (0 < found.length) return found;
  const span = pastureSpan(request);
  if (span.from < 0 || span.to <= span.from || MAX_PASTURE_DAYS < span.days) {
    return [
      {
        field: 'pastureChoices.to',
        code: 'out-of-bounds',
        given: choices.to ?? addDays(span.first, span.days - 1),
        min: addDays(span.first, Math.max(0, span.from) + 1),
        max: addDays(span.first, MAX_PASTURE_DAYS),
        fix: `The last day must come after the first, within ${MAX_PASTURE_DAYS} days of the start of the season.`,
      },
    ];
  }
  return [];
}

/** What is said to have happened must lie behind us. */
function futureProblems({ paddocks, herds, today }: PastureRequest): Problems {
  return [
    ...paddocks.flatMap((p, i) => later(today, `paddocks.${i}.lastGrazedOn`, p.lastGrazedOn)),
    ...herds.flatMap((h, i) => later(today, `herds.${i}.inSince`, h.inSince)),
  ];
}

function readingProblems({ today }: PastureRequest, reading: GrassReading, at: string): Problems {
  const own = problemsOfRow(grassReadingFields, reading, at, 'passed');
  if (own.some(({ field }) => field === `${at}date`)) return own;
  if (today < reading.date) {
    return [
      ...own,
      {
        field: `${at}date`,
        code: 'out-of-bounds',
        given: reading.date,
        max: today,
        fix: 'A reading cannot lie in the future. Give the day it was taken.',
      },
    ];
  }
  return own;
}
