import './work.css';
import { Text, Title } from '@mantine/core';
import {
  visitLine,
  whoIsThereText,
  type SitterSheet,
  type SheetJob,
  type SheetPage,
} from '../../../../shared/plan/handover/sitter-sheet.js';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import { newOnPage, type NewOnPage } from '../../../../shared/plan/handover/new-on-page.js';
import { overOnPage } from '../../../../shared/plan/handover/over-on-page.js';
import type { SheetStop } from '../../../../shared/plan/handover/sheet-stops.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { choreHoursSaid, roundsSaid } from '../../../../shared/plan/work/rounds-said.js';
import { formatLongDate } from '../../../../shared/units/dates.js';
import { formatValue, formatHours } from '../../../../shared/units/format.js';
import { inOwnUnits } from '../../../../shared/units/own-units.js';
import type { SavedFarm } from '../../api/queries.js';
import { Num } from '../../explain/number.js';
import { useFitsPage } from '../../shell/fits-page.js';
import { CallLine, OfAllDays } from './sheet-all-days.js';

/** One day of a sitter's sheet: it fits on one printed page. */
export function SheetDay({
  farm,
  tables,
  sheet,
  page,
  before,
  later,
}: {
  farm: SavedFarm;
  tables: Tables;
  sheet: SitterSheet;
  page: SheetPage;
  /** The page of the day before; the first has none. */
  before: SheetPage | undefined;
  /** Those after it. */
  later: readonly SheetPage[];
}) {
  const { weather } = page;
  const over = overOnPage(page, before, later);
  const { isNew, isAny } = newOnPage(page, before);
  const isAlone = sheet.pages.length === 1;
  return (
    <section
      ref={useFitsPage(farm.units)}
      className="sheet-day"
      aria-label={formatLongDate(page.date, farm)}
    >
      <Title order={1}>
        {formatLongDate(page.date, farm)} · {farm.name}
      </Title>
      <Text>
        For {sheet.sitter}. {formatHours(page.hours)} of work, {formatHours(page.hoursAvailable)}{' '}
        available{page.isTooMuch && ': more work than hours, start at the top'}.
        {weather.isForecast &&
          ` Forecast: ${0 < weather.rainMm ? `rain, ${formatValue(weather.rainMm, 'rainMm', farm)}` : 'dry'}.`}
      </Text>
      <Text>{whoIsThereText(page)}</Text>
      {visitLine(page).map((line) => (
        <Text key={line} fw={600}>
          {line}
        </Text>
      ))}
      {isAny && (
        <Text>
          In <b>heavy letters</b>: not as on the day before.
        </Text>
      )}
      {0 < over.length && (
        <Text>
          <b>Over since yesterday:</b> {over.join(' ')}
        </Text>
      )}
      <ol className="sheet-stops">
        {page.stops.map((stop) => (
          <Stop
            key={stop.id}
            stop={stop}
            units={farm.units}
            isNew={isNew}
            chores={page.chores.filter(({ of }) => of === stop.name)}
          />
        ))}
      </ol>
      <Other page={page} isNew={isNew} />
      {0 < page.others.length && (
        <Text>
          <b>Others do:</b>{' '}
          {page.others
            .map(({ name, of, who }) => `${name}${of ? `, ${of}` : ''} (${who})`)
            .join('; ')}
          .
        </Text>
      )}
      {page.noHours.map(({ key, name, of, why }) => (
        <Text key={key} fw={600} className="sheet-ticked">
          <Box />
          {name}
          {of && ` · ${of}`}: due today, and no hours are planned for it. {why}
        </Text>
      ))}
      {isAlone ? (
        <OfAllDays farm={farm} tables={tables} sheet={sheet} />
      ) : (
        <CallLine phones={sheet.phones} ifNone="see the page for all of these days" />
      )}
    </section>
  );
}

function Stop({
  stop,
  units,
  chores,
  isNew,
}: {
  stop: SheetStop;
  units: SavedFarm['units'];
  chores: readonly SheetJob[];
  isNew: NewOnPage['isNew'];
}) {
  const weight = (line: string) => (isNew(stop.name, line) ? { fw: 700 } : {});
  return (
    <li>
      <Text component="h2" fw={600}>
        {stop.name}
        {stop.where && `, ${stop.where}`}
      </Text>
      <Text>
        {stop.amounts.map((amount, k) => (
          <span key={amount.label}>
            {0 < k && ' · '}
            <Amount of={amount} />
          </span>
        ))}
      </Text>
      {[...stop.carried, ...stop.actions].map((line) => (
        <Text key={line} className="sheet-ticked" {...weight(line)}>
          <Box />
          {line}
        </Text>
      ))}
      {chores.map((chore) => (
        <Text key={chore.key} className="sheet-ticked" {...weight(chore.name)}>
          <Box />
          {chore.name}, {choreHoursSaid(chore)}
          {chore.rounds && `: ${roundsSaid(chore.rounds)}`}
        </Text>
      ))}
      {stop.named?.map((line) => (
        <Text key={line} style={{ whiteSpace: 'pre-line' }}>
          {line}
        </Text>
      ))}
      <Text size="sm">Look for: {inOwnUnits(stop.lookFor.join(' '), units)}</Text>
    </li>
  );
}

/** To be ticked with a pencil. */
const Box = () => (
  <span aria-hidden className="sheet-box">
    ☐
  </span>
);

/** In the words of a note by the door: 14.4 lb of feed. */
const Amount = ({ of }: { of: Quantity }) =>
  of.label in AFTER ? (
    <>
      <Num of={of} /> {AFTER[of.label]}
    </>
  ) : (
    <>
      {of.label}: <Num of={of} />
    </>
  );

const AFTER: Readonly<Record<string, string>> = {
  'Birds alive': 'birds',
  'Feed of the flock in the day': 'of feed',
  'Drinking water in the day': 'of water',
  'Eggs in the day': 'to expect',
  Head: 'head',
  'Calves beside them': 'calves beside them',
  'Water today': 'of water',
  'Hay for this day, with what they waste': 'of hay, with what they waste',
};

/** Chores of what is no stop, and the work of the day. */
function Other({ page, isNew }: { page: SheetPage; isNew: NewOnPage['isNew'] }) {
  const names = new Set(page.stops.map(({ name }) => name));
  const rest = [...page.chores.filter(({ of }) => !names.has(of ?? '')), ...page.jobs];
  if (rest.length === 0) return null;
  return (
    <>
      <Text component="h2" fw={600}>
        Also today
      </Text>
      {rest.map(({ key, name, of, hours, lateDays, ifLate }) => (
        <Text key={key} className="sheet-ticked" {...(isNew(of, name) ? { fw: 700 } : {})}>
          <Box />
          {name}
          {of && ` · ${of}`}, {formatHours(hours)}
          {lateDays !== undefined && `, ${lateDays} ${lateDays === 1 ? 'day' : 'days'} late`}
          {ifLate && ` (if not: ${ifLate.toLowerCase()})`}
        </Text>
      ))}
    </>
  );
}
