import { expect, it } from '@jest/globals';
import { freeName, nameAmong } from '../../shared/farm/batch-names.js';

const april = { id: 'a', name: 'Meat birds', arrivalDate: '2027-04-28' };
const june = { id: 'b', name: 'Meat birds', arrivalDate: '2027-06-16' };
const hens = { id: 'c', name: 'Layers', arrivalDate: '2027-04-28' };

it('calls like-named batches by their months, and others as they are called', () => {
  const all = [april, june, hens];
  expect(all.map((each) => nameAmong(each, all))).toEqual([
    ...['Meat birds, Apr 2027', 'Meat birds, Jun 2027', 'Layers'],
  ]);
  expect(nameAmong(april, [april, hens])).toBe('Meat birds');
});

it('proposes a name that no other batch has', () => {
  const free = (...taken: string[]) => freeName('Meat birds', '2027-06-16', taken);
  expect(free('Layers')).toBe('Meat birds');
  expect(free('Meat birds')).toBe('Meat birds, Jun 2027');
  expect(free('Meat birds', 'Meat birds, Jun 2027')).toBe('Meat birds, Jun 2027 2');
});
