import 'reflect-metadata';
import { readFileSync } from 'node:fs';
import { parse, printParseErrorCode, type ParseError } from 'jsonc-parser';
import type { Batch } from '../../shared/farm/batch.js';
import { planBatch, type BatchPlan } from '../../shared/plan/batch-plan.js';
import { findArrivals, whyNot } from '../../shared/plan/arrival-finder.js';
import { problemsOfChoices } from '../../shared/plan/check-batch.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import {
  describeProblem,
  FieldError,
  type FieldProblem,
} from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { checkDto } from '../common/check-dto.js';
import { OrderDto } from '../plans/order.dto.js';
import { requestOfOrder } from '../plans/order-request.js';
import { loadTables } from '../reference/load-tables.js';
import { planPasture } from '../../shared/plan/pasture/pasture-plan.js';
import { PastureOrderDto } from '../pasture/pasture.dto.js';
import { requestOfPasture } from '../pasture/pasture-order.js';
import { caretakerSheet, type CaretakerSheet } from '../../shared/plan/handover/caretaker-sheet.js';
import { stopsOn } from '../../shared/plan/handover/sheet-stops.js';
import { calendarEntries } from '../../shared/plan/season/calendar-entries.js';
import { seasonOutlook } from '../../shared/plan/season/season-outlook.js';
import { planSeason, type SeasonPlan } from '../../shared/plan/season/season-plan.js';
import { feedText } from '../calendar/feed.js';
import { HouseholdOrderDto } from '../season/household-order.dto.js';
import { seasonOfHousehold, type HouseholdSeason } from '../season/household-order.js';
import { explainPasture, printPasture } from './print-pasture.js';
import { printOutlook, printSheet, printWork } from './print-work.js';
import { explainText, printArrivals, printPlan } from './print-plan.js';

const USAGE = `Plans an order without a server.

  npm run --silent plan -- ORDER.json                 the plan as tables
  npm run --silent plan -- ORDER.json --json          exactly what the API returns
  npm run --silent plan -- ORDER.json --explain       every number opened to its formula and source
  npm run --silent plan -- ORDER.json --explain heat  only numbers whose label holds a word
  npm run --silent plan -- ORDER.json --arrivals 2027-03-01 2027-09-30
  npm run --silent plan -- ORDER.json --arrivals 2027-03-01 2027-09-30 --why-not 2027-03-10

A pasture is planned the same way: seeds/pasture.example.jsonc holds paddocks and herds.
So is a household's work: seeds/household.example.jsonc holds people, batches and jobs.

  npm run --silent plan -- HOUSEHOLD.json             the next days, what will not fit, the season
  npm run --silent plan -- HOUSEHOLD.json --chances   the same through many years of weather
  npm run --silent plan -- HOUSEHOLD.json --sheet 1   the caretaker's sheet of the first hand-over
  npm run --silent plan -- HOUSEHOLD.json --calendar  an iCalendar file

All may hold comments; seeds/order.example.jsonc is a batch to start from.`;

process.exitCode = run(process.argv.slice(2));

function run(args: readonly string[]): number {
  const [file, ...options] = args;
  if (file === undefined || file === '--help' || file === '-h') {
    console.log(USAGE);
    return file === undefined ? 2 : 0;
  }
  try {
    const output = textOf(readFile(file), options);
    process.stdout.write(`${output}\n`);
    return 0;
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    for (const problem of error.problems) console.error(describeProblem(problem));
    return 1;
  }
}

/** An order with batches is a household, one with paddocks a pasture; every other is a batch. */
function textOf(order: unknown, options: readonly string[]): string {
  if (holds(order, 'batches')) return householdOutput(order, options);
  return holds(order, 'paddocks')
    ? pastureOutput(order, options)
    : outputOf(requestOf(order), options);
}

function outputOf(request: PlanRequest, [option, ...values]: readonly string[]): string {
  if (option === '--arrivals') {
    const [from = '', to = '', also, date = ''] = values;
    const weeks = findArrivals(request, { from, to });
    return also === '--why-not' ? whyNot(weeks, date) : printArrivals(weeks, request.today);
  }
  const plan: BatchPlan = planBatch(request);
  if (option === undefined) return printPlan(plan, request);
  if (option === '--json') return JSON.stringify(plan);
  if (option === '--explain') return explainText(plan, request, values.join(' '));
  throw unknownOption(option, ['--json', '--explain', '--arrivals']);
}

function unknownOption(option: string, allowed: readonly string[]): FieldError {
  return new FieldError([
    {
      field: 'option',
      code: 'not-allowed',
      given: option,
      allowed,
      fix: 'Run with --help for examples.',
    },
  ]);
}

function holds(order: unknown, name: string): boolean {
  return typeof order === 'object' && order !== null && name in order;
}

function householdOutput(order: unknown, [option, ...values]: readonly string[]): string {
  const household = checkDto(HouseholdOrderDto, order);
  const season = seasonOfHousehold(household, loadTables(), Date.now());
  const { request, pasture } = season;
  const { keep: _keep, ...plan } = planSeason(request);
  if (option === undefined) return printWork(plan, request.farm);
  if (option === '--json') return JSON.stringify(plan);
  if (option === '--chances')
    return printOutlook(seasonOutlook({ ...request, history: [] }), request.farm);
  if (option === '--sheet') return printSheet(sheetOf(season, plan, values[0]), request.farm);
  if (option === '--calendar')
    return feedText(calendarEntries(plan, pasture), {
      name: request.farm.name,
      id: request.farm.name,
      revision: 1,
    });
  throw unknownOption(option, ['--json', '--chances', '--sheet', '--calendar']);
}

function sheetOf(season: HouseholdSeason, plan: SeasonPlan, which = '1'): CaretakerSheet {
  const { handovers } = season.request;
  const handover = handovers[Number(which) - 1];
  if (handover) return caretakerSheet(handover, plan, stopsOn(season));
  throw new FieldError([
    {
      field: '--sheet',
      code: 'out-of-bounds',
      given: which,
      min: 1,
      max: handovers.length,
      fix:
        handovers.length === 0
          ? 'Add a hand-over to the file first.'
          : 'Give the place of a hand-over in the file.',
    },
  ]);
}

function pastureOutput(order: unknown, [option, ...values]: readonly string[]): string {
  const request = requestOfPasture(checkDto(PastureOrderDto, order), loadTables(), Date.now());
  const plan = planPasture(request);
  if (option === undefined) return printPasture(plan, request);
  if (option === '--json') return JSON.stringify(plan);
  if (option === '--explain') return explainPasture(plan, request, values.join(' '));
  throw unknownOption(option, ['--json', '--explain']);
}

function readFile(file: string): unknown {
  const errors: ParseError[] = [];
  const text = readOrder(file);
  const order: unknown = parse(text, errors, { allowTrailingComma: true });
  const first = errors[0];
  if (first) {
    const line = text.slice(0, first.offset).split('\n').length;
    throw new FieldError([
      {
        field: `${file} line ${line}`,
        code: 'unreadable',
        given: plainWords(printParseErrorCode(first.error)),
        fix: 'Check for a missing quote, comma or bracket near that line. An order is JSON and may hold comments.',
      },
    ]);
  }
  return order;
}

function requestOf(order: unknown): PlanRequest {
  const tables = loadTables();
  try {
    return requestOfOrder(checkDto(OrderDto, order), tables, Date.now());
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    throw new FieldError([...error.problems, ...alsoWrong(order, tables, error.problems)]);
  }
}

/** ValueExpected → a value is expected there. */
function plainWords(code: string): string {
  const words = code.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  const expected = /^(.*) expected$/.exec(words)?.[1];
  return expected === undefined ? words : `a ${expected} is expected there`;
}

/** Choices that no table has: they are looked up late, and would come one run after the rest. */
function alsoWrong(
  order: unknown,
  tables: Tables,
  found: readonly FieldProblem[],
): readonly FieldProblem[] {
  const batch = (order as { batch?: unknown } | null)?.batch;
  if (typeof batch !== 'object' || batch === null || Array.isArray(batch)) return [];
  return problemsOfChoices({ batch: batch as Batch, tables }).filter(
    (p) => !found.some((other) => other.field === p.field),
  );
}

function readOrder(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    const isMissing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    throw new FieldError([
      {
        field: file,
        code: 'unreadable',
        given: undefined,
        fix: `${isMissing ? 'There is no such file. ' : ''}Give the path of an order.`,
      },
    ]);
  }
}
