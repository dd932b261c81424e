import { farmFields } from '../../shared/farm/farm.js';
import { nested, optional, row, rows } from '../../shared/farm/field.js';
import { herdFields } from '../../shared/farm/herd.js';
import { grassReadingFields, paddockFields } from '../../shared/farm/paddock.js';
import { followerFields, pastureChoiceFields } from '../../shared/farm/pasture-choices.js';
import { date } from '../../shared/farm/words.js';
import { dtoOf } from '../common/dto-of.js';

export class PastureChoicesDto extends dtoOf(pastureChoiceFields) {}

const orderFields = row('PastureOrder', {
  farm: nested('Farm', farmFields),
  paddocks: rows('Paddocks', paddockFields, 200, 'paddock'),
  herds: rows('Herds', herdFields, 20, 'herd'),
  readings: optional(rows('Readings', grassReadingFields, 5000, 'reading')),
  followers: optional(rows('Birds that follow', followerFields, 20, 'flock')),
  choices: optional(nested('Choices', pastureChoiceFields)),
  today: optional(date('Today')),
});

/** A pasture by itself: everything a plan needs, nothing saved. */
export class PastureOrderDto extends dtoOf(orderFields) {}
