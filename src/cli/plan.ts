import 'reflect-metadata';
import { parseArgs } from 'node:util';
import { describeProblem, FieldError } from '../../shared/problems/field-problem.js';
import { tablesIn } from '../../shared/tables/in-own-units.js';
import { loadTables } from '../reference/load-tables.js';
import { pictureOfFile } from './farm-file.js';
import { OUTPUTS, type Asked } from './outputs.js';

const USAGE = `Plans a farm without a server.

  npm run --silent plan -- FARM.jsonc                     the household's work: the next days first
  npm run --silent plan -- FARM.jsonc today               the day: animals, work, what is ahead
  npm run --silent plan -- FARM.jsonc batch               the first batch, as tables
  npm run --silent plan -- FARM.jsonc batch "Pullets"     another one, by its name or id
  npm run --silent plan -- FARM.jsonc cost                what it must bring, and when to stop feeding
  npm run --silent plan -- FARM.jsonc compare birds 25 100
                                                          side by side; also breed, feeds, arrival,
                                                          age (days), mix (price of a bag of your
                                                          own), two (batches, weeks apart)
  npm run --silent plan -- FARM.jsonc weeks 2027-03-01 2027-09-30
                                                          every arrival week of a span, ranked
  npm run --silent plan -- FARM.jsonc weeks 2027-03-01 2027-09-30 --why-not 2027-03-10
  npm run --silent plan -- FARM.jsonc slot 2027-08-14 60  when chicks come for a slot that is booked
  npm run --silent plan -- FARM.jsonc ready 2027-08-14    when, to be ready to eat (or lay) by a day
  npm run --silent plan -- FARM.jsonc pasture             grass and cattle
  npm run --silent plan -- FARM.jsonc feed                the feed of the year: what to buy on which trip
  npm run --silent plan -- FARM.jsonc feed csv            the shopping list for a spreadsheet
  npm run --silent plan -- FARM.jsonc grass-years         the grass through twenty years of weather
  npm run --silent plan -- FARM.jsonc chances             the work through many years of weather
  npm run --silent plan -- FARM.jsonc sheet 1             the sitter's sheet of the first days away
  npm run --silent plan -- FARM.jsonc mix meat-chickens starter 100
                                                          feed mixed of your own ingredients; more
                                                          birds and ages behind: one mix for all
  npm run --silent plan -- FARM.jsonc calendar            an iCalendar file

  --json           exactly what the API returns (batch, cost, pasture, feed, work); of today without
                   ticks
  --explain        every number opened to its formula and source (batch, cost, pasture, feed)
  --explain=heat   only numbers whose label holds a word
  --batch NAME     the batch that compare, weeks, slot and ready are asked for, where it is not the first

A farm is one file, and may hold comments: copy seeds/farm.example.jsonc, which explains itself.`;

/** Before a number below zero, which else counts as an option. */
const BELOW_ZERO = '\0';

const KNOWN = ['--json', '--explain', '--batch', '--why-not'];

process.exitCode = await run(process.argv.slice(2));

async function run(args: readonly string[]): Promise<number> {
  if (args.length === 0 || args.includes('--help') || args.includes('-h')) {
    console.log(USAGE);
    return args.length === 0 ? 2 : 0;
  }
  try {
    process.stdout.write(`${await textOf(args)}\n`);
    return 0;
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    for (const problem of error.problems) console.error(describeProblem(problem));
    return 1;
  }
}

async function textOf(args: readonly string[]): Promise<string> {
  const { file, what, ...rest } = asked(args);
  if (!Object.hasOwn(OUTPUTS, what)) throw unknown('wanted', what, Object.keys(OUTPUTS));
  const all = loadTables();
  const picture = pictureOfFile(file, all);
  const tables = tablesIn(picture.farm.units, all);
  return OUTPUTS[what as keyof typeof OUTPUTS]({ ...rest, tables, picture });
}

function asked(args: readonly string[]): Omit<Asked, 'tables' | 'picture'> & {
  readonly file: string;
  readonly what: string;
} {
  // A word after --explain is optional, which parseArgs knows only behind an equals sign.
  const joined = args.map((arg) =>
    arg === '--explain' ? '--explain=' : /^-[\d.]/.test(arg) ? `${BELOW_ZERO}${arg}` : arg,
  );
  try {
    const { values, positionals } = parseArgs({
      args: joined,
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        explain: { type: 'string' },
        batch: { type: 'string' },
        'why-not': { type: 'string' },
      },
    });
    const [file = '', what = 'work', ...words] = positionals.map((word) =>
      word.replace(BELOW_ZERO, ''),
    );
    return {
      file,
      what,
      words,
      json: values.json ?? false,
      explain: values.explain,
      batch: values.batch,
      whyNot: values['why-not'],
    };
  } catch {
    const given = args.find((arg) => arg.startsWith('-') && !KNOWN.includes(arg.split('=')[0]!));
    throw unknown('option', given ?? args.join(' '), KNOWN);
  }
}

function unknown(field: string, given: string, allowed: readonly string[]): FieldError {
  const fix = 'Run with --help for examples.';
  return new FieldError([{ field, code: 'not-allowed', given, allowed, fix }]);
}
