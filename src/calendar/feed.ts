import icalGenerator, {
  ICalAlarmType,
  ICalCalendarMethod,
  ICalEventTransparency,
} from 'ical-generator';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { CalendarEntry } from '../../shared/plan/work/calendar-entries.js';

/** Nine in the morning of the day before. */
const REMIND_BEFORE_S = 15 * 3600;
/** How often a calendar program is asked to look again. */
const REFRESH_S = 6 * 3600;

/**
 * Entries as an iCalendar feed (RFC 5545): days without a time, a reminder where one cannot slip.
 *
 * @param of the name of the calendar, whose it is, and how often its plan has changed: of two
 *   entries with the same id the one of the later plan holds
 */
export function feedText(
  entries: readonly CalendarEntry[],
  of: { readonly name: string; readonly id: string; readonly revision: number },
): string {
  const calendar = icalGenerator({
    name: of.name,
    prodId: { company: 'Broodfold', product: 'Season' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: REFRESH_S,
  });
  for (const { id, date, title, text, cannotSlip } of entries) {
    const event = calendar.createEvent({
      id: `${of.id}/${id}@broodfold`,
      sequence: of.revision,
      start: date,
      end: addDays(date, 1),
      allDay: true,
      summary: title,
      ...(text === '' ? {} : { description: text }),
      transparency: ICalEventTransparency.TRANSPARENT,
    });
    if (cannotSlip)
      event.createAlarm({
        type: ICalAlarmType.display,
        trigger: REMIND_BEFORE_S,
        description: title,
      });
  }
  return calendar.toString();
}
