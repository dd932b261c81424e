import { EXAMPLE_FARM } from '../../shared/checks/example-farm.js';
import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import { pastureContext } from '../../shared/plan/pasture/pasture-context.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { newGroup, newHerd, newPaddocks, newPastureRequest } from './pasture-factories.js';

/** A place with what grass is usual there. */
export interface Place {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly forageId: string;
  readonly minC: readonly number[];
  readonly maxC: readonly number[];
  readonly rainMm: readonly number[];
}

/** Averages of the months at five places, as their weather services print them. */
export const PLACES: readonly Place[] = [
  {
    ...{ name: 'hill country, Ithaca', latitudeDeg: 42.45, forageId: 'orchardgrass-legume' },
    minC: [-9.7, -9.2, -4.7, 1.2, 6.9, 11.9, 14.4, 13.7, 9.5, 3.8, -0.3, -6.0],
    maxC: [-0.6, 0.6, 5.5, 12.7, 19.6, 24.1, 26.6, 25.7, 21.5, 14.8, 8.6, 2.1],
    rainMm: [56, 50, 67, 82, 80, 95, 93, 94, 101, 88, 73, 61],
  },
  {
    ...{ name: 'wet mild coast, Moorepark', latitudeDeg: 52.23, forageId: 'ryegrass-clover' },
    minC: [2.9, 3.1, 3.9, 4.3, 6.8, 9.4, 11.5, 11.4, 9.7, 7.3, 4.9, 3.7],
    maxC: [7.3, 8, 9.8, 11.9, 15.1, 17.3, 19.1, 18.6, 16.2, 12.6, 9.5, 7.8],
    rainMm: [112, 90, 94, 75, 78, 82, 70, 93, 90, 114, 98, 111],
  },
  {
    ...{
      name: 'dry continental summer, North Platte',
      latitudeDeg: 41.13,
      forageId: 'orchardgrass-legume',
    },
    minC: [-12, -9.5, -4.5, 1, 7, 12.6, 16.2, 14.8, 8.3, 1, -6.1, -11.1],
    maxC: [2.9, 5.7, 11.2, 16.8, 22.1, 27.8, 31.5, 30.1, 25.7, 18.3, 10.1, 4.1],
    rainMm: [9.6, 13, 29, 58.9, 83.5, 83.8, 75.9, 54.5, 34.1, 35.7, 16.4, 10.8],
  },
  {
    ...{ name: 'southern plain, Lincoln', latitudeDeg: -43.63, forageId: 'ryegrass-clover' },
    minC: [11.5, 11.4, 9.7, 7.2, 4.9, 2.2, 1.4, 3, 4.7, 6.1, 7.8, 10.5],
    maxC: [22.5, 22.2, 20.6, 17.6, 14.8, 12.2, 11.4, 12.8, 15.4, 17.1, 19.1, 21.3],
    rainMm: [70, 64, 57, 68, 69, 59, 54, 62, 37, 62, 57, 74],
  },
  {
    ...{ name: 'warm south, Ardmore', latitudeDeg: 33.93, forageId: 'bermudagrass' },
    minC: [-1.3, 0.9, 5.7, 10.2, 15.3, 19.7, 21.7, 21.4, 17, 11, 5.1, -0.2],
    maxC: [11.6, 14.4, 19.3, 23.8, 27.2, 31.5, 34.4, 35, 30.5, 24.7, 18, 12.6],
    rainMm: [43, 55, 85, 88, 132, 104, 63, 65, 90, 102, 60, 59],
  },
];

/** A station at Corvallis, 1974 to 2013. */
export const OREGON: Place = {
  ...{ name: 'dry summer, western Oregon', latitudeDeg: 44.57, forageId: 'orchardgrass-legume' },
  minC: [1, 1.6, 3, 4.3, 6.7, 9.2, 11.1, 10.8, 8.9, 5.5, 3.3, 1],
  maxC: [8.2, 10.4, 13.1, 15.7, 19.3, 22.8, 27.4, 27.9, 25, 18.2, 11.4, 7.7],
  rainMm: [153, 128, 117, 71, 62, 35, 12, 17, 36, 77, 164, 187],
};

/** A station at Dodgeville, 1974 to 2013. */
export const WISCONSIN: Place = {
  ...{ name: 'hill country, Wisconsin', latitudeDeg: 42.97, forageId: 'orchardgrass-legume' },
  minC: [-13.1, -11, -4.6, 1.5, 7.3, 12.9, 15.6, 14.5, 9.5, 2.9, -3.2, -10.3],
  maxC: [-3.4, -0.8, 6.2, 14.1, 20.4, 25.5, 27.9, 26.5, 22.2, 15, 6.5, -1.1],
  rainMm: [29, 33, 56, 83, 90, 113, 96, 107, 75, 57, 55, 37],
};

/** Places beside the five, with what their months are on average. */
export const MORE_PLACES: readonly Place[] = [
  OREGON,
  WISCONSIN,
  {
    ...{ name: 'Ohio', latitudeDeg: 40.78, forageId: 'orchardgrass-legume' },
    minC: [-7.5, -6.5, -2.2, 3.5, 9.2, 14.3, 16.4, 15.6, 11.7, 5.7, 0.8, -4.2],
    maxC: [1, 2.9, 8.7, 15.8, 21.6, 26.1, 28, 27.2, 23.8, 17.1, 9.9, 3.7],
    rainMm: [69, 58, 77, 90, 105, 106, 106, 96, 84, 73, 77, 73],
  },
  {
    ...{ name: 'Pennsylvania', latitudeDeg: 40.71, forageId: 'orchardgrass-legume' },
    minC: [-7.7, -6.8, -2.8, 2.9, 8.6, 13.7, 16.1, 15.3, 11.4, 5.2, 0.4, -4.4],
    maxC: [0.5, 2.4, 7.6, 14.9, 20.9, 25.3, 27.5, 26.6, 22.7, 16, 9.1, 3],
    rainMm: [68, 60, 82, 84, 92, 103, 97, 96, 95, 87, 78, 79],
  },
];

export const climateOf = ({ minC, maxC, rainMm }: Place) =>
  climateFromMonthlyMeans(minC, maxC, 6, rainMm);

/** A herd on equal paddocks at a place, before its season. */
export function contextAt(
  place: Place,
  head = 6,
  areaM2 = 3000,
  choices: PastureChoices = {},
  paddocks = newPaddocks(12, { areaM2, forageId: place.forageId, hasShade: true }),
) {
  const { latitudeDeg } = place;
  return pastureContext(
    newPastureRequest({
      farm: { ...EXAMPLE_FARM, latitudeDeg },
      climate: climateOf(place),
      today: latitudeDeg < 0 ? '2027-07-05' : '2027-03-01',
      paddocks,
      herds: [newHerd({ groups: [newGroup({ head })] })],
      choices,
    }),
  );
}
