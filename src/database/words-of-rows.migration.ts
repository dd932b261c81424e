import type { MigrationInterface, QueryRunner } from 'typeorm';

type Details = Record<string, unknown>;
type Words = Readonly<Record<string, string>>;

const JOB: Words = { importance: 'priority', lastOn: 'noUseAfter', hangsOn: 'tiedTo' };
const CONDITIONS: Words = { people: 'peopleNeeded' };
const HANDOVER: Words = { caretaker: 'sitter', walkingOrder: 'roundOrder', left: 'whereabouts' };
const PADDOCK: Words = {
  closed: 'closedDays',
  turnInCm: 'readyHeightCm',
  residualCm: 'residualHeightCm',
};

/** Rows get the words of screens and API: one word for one thing. */
export class WordsOfRows1796600000000 implements MigrationInterface {
  name = 'WordsOfRows1796600000000';

  async up(runner: QueryRunner): Promise<void> {
    await inRows(runner, 'jobs', (details) =>
      withConditions(renamed(details, JOB), (asked) => renamed(asked, CONDITIONS)),
    );
    await inRows(runner, 'handovers', (details) => renamed(details, HANDOVER));
    await inRows(runner, 'paddocks', (details) => renamed(details, PADDOCK));
    await sittersInPlans(runner, 'caretaker', 'sitter');
  }

  async down(runner: QueryRunner): Promise<void> {
    await inRows(runner, 'jobs', (details) =>
      withConditions(renamed(details, turned(JOB)), (asked) => renamed(asked, turned(CONDITIONS))),
    );
    await inRows(runner, 'handovers', (details) => renamed(details, turned(HANDOVER)));
    await inRows(runner, 'paddocks', (details) => renamed(details, turned(PADDOCK)));
    await sittersInPlans(runner, 'sitter', 'caretaker');
  }
}

const renamed = (details: Details, words: Words): Details =>
  Object.fromEntries(Object.entries(details).map(([key, value]) => [words[key] ?? key, value]));

const turned = (words: Words): Words =>
  Object.fromEntries(Object.entries(words).map(([before, after]) => [after, before]));

const withConditions = (details: Details, change: (asked: Details) => Details): Details =>
  details['conditions'] === undefined
    ? details
    : { ...details, conditions: change(details['conditions'] as Details) };

async function inRows(
  runner: QueryRunner,
  table: string,
  change: (details: Details) => Details,
): Promise<void> {
  const rows = (await runner.query(`SELECT "id", "details" FROM "${table}"`)) as {
    id: string;
    details: string;
  }[];
  const [first, second] = runner.connection.options.type === 'postgres' ? ['$1', '$2'] : ['?', '?'];
  for (const { id, details } of rows) {
    await runner.query(`UPDATE "${table}" SET "details" = ${first} WHERE "id" = ${second}`, [
      JSON.stringify(change(JSON.parse(details) as Details)),
      id,
    ]);
  }
}

/** Whoever comes in is named in kept plans by the hand-over. */
async function sittersInPlans(runner: QueryRunner, before: string, after: string): Promise<void> {
  await runner.query(
    `UPDATE "kept_plans" SET "jobs" = REPLACE("jobs", '"${before}-', '"${after}-')`,
  );
}
