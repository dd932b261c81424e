import type { Formula } from '../../explain/formula.js';

const SUM = { sources: ['ARITHMETIC'], mark: 'computed' } as const;

export const costFormulas = {
  ownHours: {
    id: 'cost-own-hours',
    title: 'Your own hours',
    words:
      'All hours of work of the plan, chores included, times what you reckon an hour at. Nothing where you reckon none.',
    symbols: 'C = h·rate',
    ...SUM,
  },
  trips: {
    id: 'cost-trips',
    title: 'Trips',
    words:
      'Days on which feed is to be fetched, and one to the processor where it is hired, times what a trip costs you.',
    symbols: 'C = n·trip',
    ...SUM,
  },
  fetched: {
    id: 'cost-fetching',
    title: 'Fetching the feed',
    words:
      'Its feed at what the farm’s trips of the year cost by weight: a trip that fetches for several batches is paid for once.',
    symbols: 'C = F·c',
    ...SUM,
  },
  gear: {
    id: 'cost-gear-share',
    title: 'Share of gear that lasts',
    words: 'What it cost new, over the years it lasts and the batches that use it in a year.',
    symbols: 'C = price ÷ (years·batches)',
    ...SUM,
  },
  all: {
    id: 'cost-in-all',
    title: 'All that it costs',
    words: 'The bill, with trips, the share of gear, and your own hours where they are counted.',
    symbols: 'C = C_bill + C_trips + C_gear + C_hours',
    ...SUM,
  },
  breakEven: {
    id: 'break-even',
    title: 'What it must bring',
    words: 'All that it costs, over the pounds, kilograms or dozens that there are.',
    symbols: 'c = C ÷ n',
    ...SUM,
  },
  priceWanted: {
    id: 'price-wanted',
    title: 'Price you gave',
    words: 'The price that you gave for birds of that size.',
    symbols: 'p = p(W)',
    ...SUM,
  },
  leftOver: {
    id: 'left-over',
    title: 'Left over',
    words: 'What it brings at the price you gave, less what it costs. Below 0 it costs more.',
    symbols: 'G = n·p − C',
    ...SUM,
  },
  hourBrings: {
    id: 'hour-brings',
    title: 'What an hour of yours brings',
    words: 'What is left over before your own hours are paid, over those hours.',
    symbols: 'w = (n·p − C_without) ÷ h',
    ...SUM,
  },
  week: {
    id: 'bill-of-week',
    title: 'Cost of the week',
    words:
      'Lines of the bill by the days they are for: the young on the first day, feed by what is eaten of its bags, heat by the energy of the day, bedding on the first day, processing on the last.',
    symbols: 'C = Σ C_line·share of the days',
    ...SUM,
  },
  soFar: {
    id: 'bill-so-far',
    title: 'Cost so far',
    words: 'The weeks added up; on the last day it is the whole bill, to the smallest coin.',
    symbols: 'C = Σ C_week',
    ...SUM,
  },
  keptOn: {
    id: 'bill-if-kept-on',
    title: 'Cost if they are kept on',
    words:
      'The bill, and feed by weight at the price of the bag for every day more. It is less for a day fewer.',
    symbols: 'C(t) = C + Σ F(t)·price ÷ bag',
    ...SUM,
  },
  weekConversion: {
    id: 'conversion-of-week',
    title: 'Feed for what was gained in the week',
    words: 'Feed of the flock in the week over what all living birds gained in it.',
    symbols: 'f = F ÷ ΔW',
    ...SUM,
  },
  nextKg: {
    id: 'next-weight-costs',
    title: 'What the next of it costs',
    words:
      'Feed of the next day at its price, and the hours of its chores at yours, over what the flock gains in dressed weight that day, after the birds that are lost.',
    symbols: 'c = (F·price ÷ bag + h·rate) ÷ Δ(N·W·y)',
    ...SUM,
  },
  eachKg: {
    id: 'all-weight-costs',
    title: 'What all of it costs, dressed',
    words:
      'All that the batch costs if processed that day, over its dressed weight. The plan’s own birds and weight, changed with the day.',
    symbols: 'c(t) = C(t) ÷ (N(t)·W(t)·y)',
    ...SUM,
  },
  best: {
    id: 'stop-best-day',
    title: 'Best day to process',
    words:
      'The day on which all of the meat together costs least for its weight; where birds of one size bring more than those of another, the day that leaves most on it. Up to then another day brings the average down, after it up. No day sooner than four weeks from hatch is looked at.',
    symbols: 'D = argmax [p(t) − c(t)]',
    ...SUM,
  },
  asGood: {
    id: 'stop-as-good',
    title: 'Days that are as good',
    words: 'Days on which the meat costs hardly more than on the best.',
    symbols: 'c(t) − p(t) ≤ (1 + s)·c(best) − p(best)',
    ...SUM,
  },
  offBest: {
    id: 'stop-off-best',
    title: 'Cost of another day',
    words:
      'How much more the meat of that day costs than as much of it would have on the best day.',
    symbols: 'ΔC = [c(t) − p(t) − c(best) + p(best)]·kg(t)',
    ...SUM,
  },
  paysUntil: {
    id: 'stop-pays-until',
    title: 'Feed that pays for itself until',
    words:
      'The day on which what they bring at your price, less all they cost, is most: after it a day costs more than it adds.',
    symbols: 'D = argmax [p·kg(t) − C(t)]',
    ...SUM,
  },
  layQuarter: {
    id: 'lay-quarter-cost',
    title: 'Feed cost of a dozen at that age',
    words:
      'Feed of the hens over a quarter of a laying year at the price of its bag, over the dozens of that quarter.',
    symbols: 'c = F·price ÷ bag ÷ (E ÷ 12)',
    ...SUM,
  },
  layPays: {
    id: 'lay-pays-from',
    title: 'Eggs that pay for the feed',
    words: 'What ten hens eat in a day, at the price of its bag, over the price of an egg.',
    symbols: 'E = 12·F·price ÷ (bag·p)',
    ...SUM,
  },
  layAll: {
    id: 'lay-dozen-so-far',
    title: 'A dozen, raising them included',
    words:
      'What it took to raise the hens to their first egg, with their feed since, over all dozens so far.',
    symbols: 'c = (C_raising + Σ C_feed) ÷ Σ dozens',
    ...SUM,
  },
} satisfies Record<string, Formula>;
