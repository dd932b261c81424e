import { addDays, isPlainDate, type PlainDate } from '../../calendar/plain-date.js';
import { BOUNDS, type BoundName, type Bounds } from '../../farm/bounds.js';
import type { CattleGroup, Herd } from '../../farm/herd.js';
import { type ClosedDays, type Paddock, PRODUCTIVITIES, STANDS } from '../../farm/paddock.js';
import { FieldError, type FieldProblem } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
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
    problems.push(...paddockProblems(paddock, request.tables, `paddocks.${i}.`));
  });
  request.herds.forEach((herd, i) => {
    problems.push(...herdProblems(herd, request.tables, `herds.${i}.`));
  });
  problems.push(...idProblems(request), ...choiceProblems(request), ...futureProblems(request));
  request.readings.forEach((reading, i) => {
    const at = `readings.${i}.`;
    problems.push(...within(`${at}heightCm`, 'heightCm', reading.heightCm));
    problems.push(...readingProblems(request, reading, at));
  });
  if (0 < problems.length) throw new FieldError(problems);
}

/** What is wrong with one paddock by itself. */
export function paddockProblems(paddock: Paddock, tables: Tables, at = ''): Problems {
  const forage = tables.forages.find((f) => f.id === paddock.forageId);
  const problems: Problems = [
    ...within(`${at}areaM2`, 'paddockM2', paddock.areaM2),
    ...oneOf(`${at}forageId`, paddock.forageId, ids(tables.forages)),
    ...oneOf(`${at}soilId`, paddock.soilId, ids(tables.soils)),
    ...oneOf(`${at}stand`, paddock.stand, STANDS),
    ...oneOf(`${at}productivity`, paddock.productivity, PRODUCTIVITIES),
    ...optional(`${at}turnInCm`, 'turnInCm', paddock.turnInCm),
    ...optional(`${at}residualCm`, 'residualCm', paddock.residualCm),
    ...optional(`${at}massKgPerHaCm`, 'massKgPerHaCm', paddock.massKgPerHaCm),
    ...dates(at, { lastGrazedOn: paddock.lastGrazedOn, harvestOn: paddock.harvestOn }),
    ...closedProblems(paddock.closed, at),
  ];
  const turnInCm = paddock.turnInCm ?? forage?.heights.turnInCm;
  const residualCm = paddock.residualCm ?? forage?.heights.residualCm;
  if (turnInCm !== undefined && residualCm !== undefined && turnInCm <= residualCm) {
    problems.push({
      field: `${at}residualCm`,
      code: 'out-of-bounds',
      given: residualCm,
      max: Math.round((turnInCm - 0.1) * 10) / 10,
      unit: 'cm',
      fix: 'The residual must lie below the height at which the herd goes in.',
    });
  }
  return problems;
}

function closedProblems(closed: readonly ClosedDays[], at: string): Problems {
  return closed.flatMap((days, k) => {
    const here = `${at}closed.${k}.`;
    const wrong = dates(here, { from: days.from, to: days.to });
    if (0 < wrong.length || days.from <= days.to) return wrong;
    return [
      {
        field: `${here}to`,
        code: 'out-of-bounds' as const,
        given: days.to,
        min: days.from,
        fix: 'The last closed day must not be before the first.',
      },
    ];
  });
}

/** What is wrong with one herd by itself. */
export function herdProblems(herd: Herd, tables: Tables, at = ''): Problems {
  const problems: Problems = [
    ...optional(`${at}longestStayDays`, 'stayDays', herd.longestStayDays),
    ...optional(`${at}followDays`, 'followDays', herd.followDays),
    ...dates(at, { turnOutOn: herd.turnOutOn, inSince: herd.inSince }),
    ...herd.groups.flatMap((group, k) => groupProblems(group, tables, `${at}groups.${k}.`)),
  ];
  if (herd.groups.length === 0) {
    problems.push({
      field: `${at}groups`,
      code: 'missing',
      given: undefined,
      fix: 'Give the herd at least one class of cattle.',
    });
  }
  return problems;
}

function groupProblems(group: CattleGroup, tables: Tables, at: string): Problems {
  const problems: Problems = [
    ...oneOf(`${at}classId`, group.classId, ids(tables.cattle.classes)),
    ...within(`${at}head`, 'head', group.head),
    ...optional(`${at}weightKg`, 'cattleKg', group.weightKg),
    ...optional(`${at}gainKgPerDay`, 'gainKgPerDay', group.gainKgPerDay),
    ...optional(`${at}milkKgPerDay`, 'milkKgPerDay', group.milkKgPerDay),
    ...(group.breedId === undefined
      ? []
      : oneOf(`${at}breedId`, group.breedId, ids(tables.gestation.breeds))),
    ...dates(at, {
      arrivesOn: group.arrivesOn,
      leavesOn: group.leavesOn,
      bredOn: group.bredOn,
      calvesOn: group.calvesOn,
    }),
  ];
  const { arrivesOn, leavesOn } = group;
  if (
    problems.length === 0 &&
    arrivesOn !== undefined &&
    leavesOn !== undefined &&
    leavesOn <= arrivesOn
  ) {
    problems.push({
      field: `${at}leavesOn`,
      code: 'out-of-bounds',
      given: leavesOn,
      min: arrivesOn,
      fix: 'Cattle leave after they arrive.',
    });
  }
  return problems;
}

function idProblems({ paddocks, herds, readings, followers }: PastureRequest): Problems {
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
                      fix: `${other.name} already stands there. Join the herds, or move one.`,
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
  const problems: Problems = [
    ...dates('choices.', { from: choices.from, to: choices.to }),
    ...optional('choices.restFactor', 'restFactor', choices.restFactor),
    ...optional('choices.hayInStoreKg', 'hayKg', choices.hayInStoreKg),
    ...optional('choices.refillH', 'refillH', choices.refillH),
    ...(choices.rainShareByMonth ?? []).flatMap((share, i) =>
      within(`choices.rainShareByMonth.${i}`, 'rainShare', share),
    ),
    ...(choices.keepForAutumnIds ?? []).flatMap((id, i) =>
      oneOf(`choices.keepForAutumnIds.${i}`, id, ids(request.paddocks)),
    ),
  ];
  const { hay } = tables.pasture;
  for (const [field, id, rows] of [
    ['feedingId', choices.feedingId, hay.feeding],
    ['storingId', choices.storingId, hay.storing],
    ['baleId', choices.baleId, hay.bales],
  ] as const) {
    if (id !== undefined) problems.push(...oneOf(`choices.${field}`, id, ids(rows)));
  }
  if (choices.rainShareByMonth !== undefined && choices.rainShareByMonth.length !== 12) {
    problems.push({
      field: 'choices.rainShareByMonth',
      code: 'out-of-bounds',
      given: choices.rainShareByMonth.length,
      min: 12,
      max: 12,
      fix: 'Give twelve shares, January first.',
    });
  }
  if (0 < problems.length) return problems;
  const span = pastureSpan(request);
  if (span.from < 0 || span.to <= span.from || MAX_PASTURE_DAYS < span.days) {
    problems.push({
      field: 'choices.to',
      code: 'out-of-bounds',
      given: choices.to ?? addDays(span.first, span.days - 1),
      min: addDays(span.first, Math.max(0, span.from) + 1),
      max: addDays(span.first, MAX_PASTURE_DAYS),
      fix: `The last day must come after the first, within ${MAX_PASTURE_DAYS} days of the start of the season.`,
    });
  }
  return problems;
}

/** What is said to have happened must lie behind us. */
function futureProblems({ paddocks, herds, today }: PastureRequest): Problems {
  const later = (field: string, date: PlainDate | undefined): Problems =>
    date === undefined || !isPlainDate(date) || date <= today
      ? []
      : [
          {
            field,
            code: 'out-of-bounds',
            given: date,
            max: today,
            fix: 'This has not happened yet. Give the day on which it did, or leave it out.',
          },
        ];
  return [
    ...paddocks.flatMap((p, i) => later(`paddocks.${i}.lastGrazedOn`, p.lastGrazedOn)),
    ...herds.flatMap((h, i) => later(`herds.${i}.inSince`, h.inSince)),
  ];
}

function readingProblems(
  { today }: PastureRequest,
  reading: { date: PlainDate },
  at: string,
): Problems {
  const wrong = dates(at, { date: reading.date });
  if (0 < wrong.length) return wrong;
  if (today < reading.date) {
    return [
      {
        field: `${at}date`,
        code: 'out-of-bounds',
        given: reading.date,
        max: today,
        fix: 'A reading cannot lie in the future. Give the day it was taken.',
      },
    ];
  }
  return [];
}

const ids = (rows: readonly { id: string }[]): string[] => rows.map((row) => row.id);

function within(field: string, name: BoundName, value: unknown): Problems {
  const { min, max, unit, fix, integer } = BOUNDS[name] as Bounds;
  if (typeof value !== 'number' || !Number.isFinite(value))
    return [{ field, code: 'not-a-number', given: value, fix }];
  if (integer && !Number.isInteger(value))
    return [
      {
        field,
        code: 'out-of-bounds',
        given: value,
        min,
        max,
        unit,
        fix: `${fix} Whole numbers only.`,
      },
    ];
  return min <= value && value <= max
    ? []
    : [{ field, code: 'out-of-bounds', given: value, min, max, unit, fix }];
}

const optional = (field: string, name: BoundName, value: unknown): Problems =>
  value === undefined ? [] : within(field, name, value);

function oneOf(field: string, value: unknown, allowed: readonly string[]): Problems {
  return typeof value === 'string' && allowed.includes(value)
    ? []
    : [{ field, code: 'not-allowed', given: value, allowed, fix: 'Choose one of these.' }];
}

function dates(at: string, named: Readonly<Record<string, unknown>>): Problems {
  return Object.entries(named).flatMap(([name, value]): Problems =>
    value === undefined || isPlainDate(value)
      ? []
      : [
          {
            field: `${at}${name}`,
            code: 'not-a-date',
            given: value,
            fix: 'Write year-month-day, such as 2027-04-21.',
          },
        ],
  );
}
