import type { Formula } from '../../explain/formula.js';

/** Numbers that only the page of the day asks for. */
export const todayFormulas = {
  tonight: {
    id: 'tonight-low',
    title: 'Low of tonight',
    words:
      'The lower of today’s and tomorrow’s low, because some forecasts count a night to the day before it and some to the day after. Without a forecast it is the usual low of these days, and one night in ten is as cold as the range says.',
    symbols: 'T = min(T_today, T_tomorrow)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  rain: {
    id: 'rain-to-come',
    title: 'Rain of the next wet day',
    words: 'Rain of the first day in the forecast that counts as wet.',
    symbols: 'P(t₁), t₁ = min{t: P(t) ≥ P_wet}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  age: {
    id: 'age-today',
    title: 'Age of the birds',
    words: 'Calendar days since they hatched.',
    symbols: 'a = D − hatch',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  daysToGo: {
    id: 'days-to-go',
    title: 'Days to go',
    words: 'Count the days on the calendar from today to that day.',
    symbols: 'days = that day − today',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  hoursHad: {
    id: 'hours-had-today',
    title: 'Hours available today',
    words:
      'Hours that everybody who is there gives on this weekday. On a day that is handed over only those of whoever is in charge.',
    symbols: 'h = Σ h_person',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  hoursUsed: {
    id: 'hours-used-today',
    title: 'Hours of today’s work',
    words: 'Chores, and the work planned for today and ticked off today, of all who take part.',
    symbols: 'h = Σ h_chore + Σ n·h_work',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;
