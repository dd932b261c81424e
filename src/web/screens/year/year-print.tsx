import { Button, Group, Text } from '@mantine/core';
import { useLayoutEffect, useRef } from 'react';
import { Link } from 'wouter';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import { formatLongDate, formatMonth } from '../../../../shared/units/dates.js';
import type { SavedFarm } from '../../api/queries.js';
import { useYear } from '../../api/work-queries.js';
import { useAll } from '../../shell/states.js';
import { YearDates } from './year-dates.js';
import { YearKey } from './year-key.js';
import { YearStrip } from './year-strip.js';
import './year.css';

/** The year on one sheet to hang on the wall, Letter or A4, with its dates written out. */
export default function YearPrint({ farm }: { farm: SavedFarm }) {
  const all = useAll(useYear(farm.id));
  const sheet = useOneSheet('waiting' in all ? undefined : all.data[0]);
  if ('waiting' in all) return all.waiting;
  const [year] = all.data;
  const { span, today } = year;
  const base = `/farm/${farm.id}`;
  return (
    <main className="year-paper">
      <Group className="no-print" mb="md">
        <Button onClick={() => window.print()}>Print</Button>
        <Button component={Link} href={`${base}/year`} variant="default">
          Back to the year
        </Button>
      </Group>
      <Text className="no-print" hiddenFrom="sm" mb="sm">
        One sheet, as it is printed: spread it with two fingers to read it here.
      </Text>
      <div className="year-preview">
        <article
          ref={sheet}
          className={`year-page on-paper ${MANY_ROWS < year.rows.length ? 'year-dense' : ''}`}
        >
          <header>
            <h1>
              {farm.name}: {formatMonth(span.from)} to {formatMonth(addDays(span.until, -1))}
            </h1>
            <p>
              As planned on {formatLongDate(today, farm)}. Weather is odds, no forecast.{' '}
              <span className="year-left-off">For days of jobs see Work.</span>
            </p>
          </header>
          <YearStrip year={year} base={base} />
          <YearKey year={year} />
          <YearDates year={year} base={base} />
        </article>
      </div>
    </main>
  );
}

/** Rows from which on they stand closer. */
const MANY_ROWS = 10;

/** What Letter and A4 on their side have in common within their margins, in px of print. */
const SHEET = { width: 990, height: 728 };
const LARGEST = 1.25;
const SMALLEST = 0.3;
const STEP = 0.02;
/** Letters of 9 points: what is read on a wall without stepping up to it. */
const READ_ON_A_WALL = 0.86;
/** Ways to write the dates, each in less room: a line each, one after the other, without jobs. */
const WAYS = ['lines', 'running', 'no-jobs'];

/**
 * Sets an article on one sheet: the first way to write its dates that leaves its letters large
 * enough, as large as it goes. What is seen of it is as wide as its screen.
 */
function useOneSheet(content: unknown) {
  const ref = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const show = (): void => {
      const preview = ref.current?.parentElement;
      if (!preview) return;
      preview.style.zoom = '1';
      preview.style.zoom = String(Math.min(1, preview.clientWidth / SHEET.width));
    };
    const fit = (): void => {
      const sheet = ref.current;
      if (!sheet) return;
      sheet.parentElement!.style.zoom = '1';
      for (const way of WAYS) {
        sheet.dataset.dates = way;
        if (READ_ON_A_WALL <= largest(sheet)) break;
      }
      show();
    };
    fit();
    // Letters come a moment later, and may be wider.
    void document.fonts.ready.then(fit);
    window.addEventListener('resize', show);
    return () => window.removeEventListener('resize', show);
  }, [content]);
  return ref;
}

/** Makes an article as large as it goes on one sheet, and says how large that is. */
function largest(sheet: HTMLElement): number {
  for (let zoom = LARGEST; SMALLEST <= zoom; zoom -= STEP) {
    sheet.style.zoom = String(zoom);
    sheet.style.width = `${SHEET.width / zoom}px`;
    if (sheet.scrollHeight * zoom <= SHEET.height) return zoom;
  }
  return SMALLEST;
}
