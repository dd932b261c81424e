import { Injectable } from '@nestjs/common';
import { calendarEntries } from '../../shared/plan/season/calendar-entries.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { FarmsService } from '../farms/farms.service.js';
import { SeasonRequests } from '../season/season-requests.service.js';
import { SeasonService } from '../season/season.service.js';
import { feedText } from './feed.js';

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
    const entries = calendarEntries(plan, pasture).filter(
      ({ personIds }) => !person || !personIds || personIds.includes(person.id),
    );
    // Every change of the farm makes a new plan: the last one told of is the one that holds.
    return feedText(entries, {
      name: person ? `${farm.name}: ${person.name}` : farm.name,
      id: farmId,
      revision: farm.revision,
    });
  }
}
