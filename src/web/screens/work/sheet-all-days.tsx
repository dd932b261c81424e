import './work.css';
import { Text, Title } from '@mantine/core';
import {
  phoneLines,
  phonesToWrite,
  type SitterSheet,
} from '../../../../shared/plan/handover/sitter-sheet.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { inOwnUnits } from '../../../../shared/units/own-units.js';
import type { SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { useFitsPage } from '../../shell/fits-page.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly sheet: SitterSheet;
}

/** A page for what holds on all of the days, so that each day's own has room for large letters. */
export function AllDaysPage({ farm, tables, sheet }: Props) {
  const title = `All of these days · ${farm.name}`;
  return (
    <section ref={useFitsPage(farm.units)} className="sheet-day" aria-label={title}>
      <Title order={1}>{title}</Title>
      <OfAllDays farm={farm} tables={tables} sheet={sheet} />
    </section>
  );
}

/** Whom to call, what can wait, where things are, and the cautions. */
export function OfAllDays({ farm, tables, sheet }: Props) {
  const sayDate = useSayDate();
  return (
    <>
      <CallLine phones={sheet.phones} />
      <ul className="sheet-phones">
        {phonesToWrite(sheet.phones).map((who) => (
          <li key={who}>{who}</li>
        ))}
      </ul>
      {sheet.troubles.map((each) => (
        <Text key={each}>{inOwnUnits(each, farm.units)}</Text>
      ))}
      {0 < sheet.whereabouts.length && (
        <Text>
          <b>Where things are:</b>{' '}
          {sheet.whereabouts.map(({ what, where }) => `${what}: ${where}`).join(' · ')}
        </Text>
      )}
      {sheet.notes && <Text style={{ whiteSpace: 'pre-line' }}>{sheet.notes}</Text>}
      {sheet.tooSoon.map(({ name, on, said }) => (
        <Text key={name}>
          <b>
            {name}, {sayDate(on)}:
          </b>{' '}
          {said}
        </Text>
      ))}
      {0 < sheet.late.length && (
        <Text>
          <b>Late, and not on these pages:</b>{' '}
          {sheet.late
            .map(
              ({ name, of, latest, doneOn, ifLate }) =>
                `${name}${of === undefined ? '' : ` · ${of}`}, due by ${sayDate(latest)}, done on ${sayDate(doneOn)}${ifLate === undefined ? '' : ` (if late: ${ifLate})`}`,
            )
            .join('; ')}
          .
        </Text>
      )}
      {0 < sheet.canWait.length && (
        <Text>
          <b>Can wait:</b>{' '}
          {sheet.canWait.map(({ name, latest }) => `${name} (until ${sayDate(latest)})`).join('; ')}
          .
        </Text>
      )}
      <div className="sheet-notes">
        {cautionsOf(sheet).map((key) => (
          <Text key={key} size="sm">
            <b>{tables.cautions[key]!.title}.</b>{' '}
            {inOwnUnits(tables.cautions[key]!.text, farm.units)}
          </Text>
        ))}
      </div>
    </>
  );
}

/** Numbers to call, or where to look for them when none was given. */
export function CallLine({
  phones,
  ifNone,
}: {
  readonly phones: SitterSheet['phones'];
  readonly ifNone?: string;
}) {
  const known = phones.filter(({ number }) => number.trim() !== '');
  return (
    <Text>
      <b>Call:</b> {0 < known.length ? phoneLines(known).join(' · ') : ifNone}
    </Text>
  );
}

/** Cautions of the animals that are looked after, each once. */
const cautionsOf = ({ pages }: SitterSheet): (keyof Tables['cautions'])[] => [
  ...new Set(pages.flatMap(({ stops }) => stops.flatMap(({ cautions }) => cautions))),
];
