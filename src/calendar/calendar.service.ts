import { Injectable } from '@nestjs/common';
import icalGenerator, {
  ICalAlarmType,
  ICalCalendarMethod,
  ICalEventTransparency,
} from 'ical-generator';
import { addDays } from '../../shared/calendar/plain-date.js';
import { calendarEntries } from '../../shared/plan/season/calendar-entries.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { FarmsService } from '../farms/farms.service.js';
import { SeasonRequests } from '../season/season-requests.service.js';
import { SeasonService } from '../season/season.service.js';

/** Nine in the morning of the day before. */
const REMIND_BEFORE_S = 15 * 3600;
/** How often a calendar program is asked to look again. */
const REFRESH_S = 6 * 3600;

/** A farm's season as an iCalendar feed (RFC 5545). */
@Injectable()
export class CalendarService {
  constructor(
    private readonly farms: FarmsService,
    private readonly season: SeasonService,
    private readonly requests: SeasonRequests,
  ) {}

  /** @param personId leave out for everyone's */
  async feedOf(farmId: string, personId?: string): Promise<string> {
    const [farm, plan, { pasture }] = await Promise.all([
      this.farms.findOne(farmId),
      this.season.planOf(farmId),
      this.requests.onFarm(farmId),
    ]);
    const person = plan.people.find(({ id }) => id === personId);
    if (personId !== undefined && !person) {
      throw new FieldError([
        {
          field: 'person',
          code: 'not-allowed',
          given: personId,
          allowed: plan.people.map(({ id }) => id),
          fix: 'Use the id of one of the people, or leave it out for everyone’s calendar.',
        },
      ]);
    }
    const calendar = icalGenerator({
      name: person ? `${farm.name}: ${person.name}` : farm.name,
      prodId: { company: 'Broodfold', product: 'Season' },
      method: ICalCalendarMethod.PUBLISH,
      ttl: REFRESH_S,
    });
    for (const entry of calendarEntries(plan, pasture)) {
      const { id, date, title, text, personIds, cannotSlip } = entry;
      if (person && personIds && !personIds.includes(person.id)) continue;
      const event = calendar.createEvent({
        id: `${farmId}/${id}@broodfold`,
        // Every change of the farm makes a new plan: the last one told of is the one that holds.
        sequence: farm.revision,
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
}
