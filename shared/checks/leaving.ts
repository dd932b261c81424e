import { addDays, daysBetween } from '../calendar/plain-date.js';
import { keptOutUntil } from '../farm/treated.js';
import { icePerCarcass } from '../poultry/ice.js';
import { chillingLimitH, chillingTimeH, freezerRoomL } from '../poultry/processing.js';
import { stationPerHour } from '../poultry/stations.js';
import { rowById } from '../tables/tables.js';
import type { Topic } from './given.js';

/** Carcass, chilling, ice and freezer, as the last day of a plan is made of them. */
export const leavingChecks: Topic = {
  title: 'The last day',
  by: {
    'dressed-weight': ({ tables, number, text }) =>
      number('liveKg') * rowById(tables.processing.dressing, text('dressing')).share,
    'chill-limit': ({ tables, number }) =>
      chillingLimitH(tables.processing.chilling.rows, number('carcassKg')),
    'chill-time': ({ tables, number }) =>
      chillingTimeH(tables.processing.chilling.iceWater, number('carcassKg')).usual,
    ice: ({ tables: { processing }, number }) =>
      number('birds') *
      number('carcassKg') *
      icePerCarcass(processing, { airC: number('highC'), waterC: number('waterC') }),
    'stations-an-hour': ({ tables: { processing }, number }) =>
      Math.min(
        stationPerHour(number('cones'), processing.stations.cones.minutes),
        stationPerHour(number('scalderBirds'), processing.stations.scalder.minutes),
        stationPerHour(number('pluckerBirds'), processing.stations.plucker.minutes),
      ),
    'freezer-room': ({ tables, number }) =>
      number('birds') * freezerRoomL(tables.processing, number('carcassKg')),
    'medicine-wait': ({ number }) => {
      const dose = { date: '2027-01-01', meatDays: number('days') };
      const until = keptOutUntil(dose, 'meat');
      // Given at the end of its day, what is free the morning after the last day has waited so long.
      return until === undefined ? 0 : daysBetween(dose.date, addDays(until, 1)) - 1;
    },
    'feed-off': ({ tables }) => tables.processing.withdrawalH.value,
  },
};
