import { brooderChecks } from './brooder.js';
import { cattleChecks } from './cattle.js';
import { eggChecks } from './eggs.js';
import { coldChecks } from './cold.js';
import { feedYearChecks } from './feed-year.js';
import { costChecks } from './costs.js';
import { flockChecks } from './flocks.js';
import { hatchingChecks } from './hatching.js';
import type { Topic } from './given.js';
import { grassChecks } from './grass.js';
import { grassGrowthChecks } from './grass-growth.js';
import { evennessChecks } from './evenness.js';
import { frostChecks } from './frost.js';
import { grazingSeasonChecks } from './grazing-seasons.js';
import { growthChecks } from './growth.js';
import { growthTableChecks } from './growth-tables.js';
import { heatChecks } from './heat.js';
import { layChecks } from './lay.js';
import { leavingChecks } from './leaving.js';
import { lossChecks } from './losses.js';
import { nightChecks } from './nights.js';
import { rationChecks } from './rations.js';
import { skyChecks } from './sun-and-rain.js';
import { waterAndFenceChecks } from './water-and-fence.js';
import { workChecks } from './work.js';

/**
 * Every topic by its name: `seeds/checks/NAME.json` holds its rows, the file of that name beside
 * this one what they are computed by.
 */
export const TOPICS = {
  cold: coldChecks,
  flocks: flockChecks,
  eggs: eggChecks,
  growth: growthChecks,
  evenness: evennessChecks,
  hatching: hatchingChecks,
  brooder: brooderChecks,
  'growth-tables': growthTableChecks,
  losses: lossChecks,
  lay: layChecks,
  heat: heatChecks,
  nights: nightChecks,
  'sun-and-rain': skyChecks,
  cattle: cattleChecks,
  'water-and-fence': waterAndFenceChecks,
  grass: grassChecks,
  'grass-growth': grassGrowthChecks,
  'grazing-seasons': grazingSeasonChecks,
  frost: frostChecks,
  work: workChecks,
  leaving: leavingChecks,
  'feed-year': feedYearChecks,
  costs: costChecks,
  rations: rationChecks,
} satisfies Readonly<Record<string, Topic>>;

export type TopicName = keyof typeof TOPICS;
export const TOPIC_NAMES = Object.keys(TOPICS) as readonly TopicName[];
