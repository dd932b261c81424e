import { Injectable } from '@nestjs/common';
import { alarmEntry, alarmsIn } from '../../shared/plan/today/alarms.js';
import { calendarEntries } from '../../shared/plan/work/calendar-entries.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { PastureService } from '../pasture/pasture.service.js';
import { PicturesService } from '../picture/pictures.service.js';
import { TodayService } from '../today/today.service.js';
import { WorkService } from '../work/work.service.js';
import { feedText } from './feed.js';

/** A farm's work as an iCalendar feed (RFC 5545). */
@Injectable()
export class CalendarService {
  constructor(
    private readonly work: WorkService,
    private readonly pictures: PicturesService,
    private readonly pasture: PastureService,
    private readonly today: TodayService,
  ) {}

  /** @param personId leave out for everyone's */
  async feedOf(farmId: string, personId?: string): Promise<string> {
    const saved = await this.pictures.of(farmId);
    const plan = await this.work.planOf(farmId);
    const { pasture } = await this.pasture.planned(saved);
    const { farm } = saved.picture;
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
    const day = await this.today.todayOf(farmId);
    const alarms = alarmsIn(day.attention).map((each) => alarmEntry(each, day.date));
    const entries = [...alarms, ...calendarEntries(plan, farm.units, pasture)].filter(
      ({ personIds }) => !person || !personIds || personIds.includes(person.id),
    );
    // Every change of the farm makes a new plan: the last one told of is the one that holds.
    return feedText(entries, {
      name: person ? `${farm.name}: ${person.name}` : farm.name,
      id: farmId,
      revision: saved.revision,
    });
  }
}
