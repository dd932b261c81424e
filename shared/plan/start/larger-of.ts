import type { Brooder, Facility } from '../../farm/facility.js';

/** One place that holds what either of two batches asks of it. */
export function largerOf(one: Facility, other: Facility): Facility {
  if (one.kind === 'brooder' && other.kind === 'brooder') return largerBrooder(one, other);
  if (one.kind === 'field-pen' && other.kind === 'field-pen')
    return one.count < other.count ? other : one;
  if (one.kind === 'freezer' && other.kind === 'freezer')
    return one.liters < other.liters ? other : one;
  return one;
}

function largerBrooder(one: Brooder, other: Brooder): Brooder {
  const floorOf = ({ lengthM, widthM }: Brooder): number => lengthM * widthM;
  const wattsOf = ({ heat }: Brooder): number => heat.count * heat.wattsEach;
  // What goes with the heat (a ceiling under gas, a board across the floor) goes with it here too.
  const warm = wattsOf(one) < wattsOf(other) ? other : one;
  const wide = floorOf(one) < floorOf(other) ? other : one;
  const inRoom = [one, other].find(({ standsIn }) => standsIn === 'heated-room');
  return {
    ...warm,
    // A place that is warm enough for the one is so for the other.
    ...(inRoom && { standsIn: inRoom.standsIn, roomC: inRoom.roomC, assumed: inRoom.assumed }),
    ...{ lengthM: wide.lengthM, widthM: wide.widthM },
    ...most('feederCm', one, other),
    ...most('drinkerCm', one, other),
  };
}

function most(name: 'feederCm' | 'drinkerCm', one: Brooder, other: Brooder): Partial<Brooder> {
  const said = [one[name], other[name]].filter((each) => each !== undefined);
  return said.length === 0 ? {} : { [name]: Math.max(...said) };
}
