/** Where the birds of a batch come from. */
export const ORIGINS = ['hatchery', 'incubator', 'hen', 'started'] as const;
export type Origin = (typeof ORIGINS)[number];

type Comes = { readonly origin?: Origin | undefined };

/** Whether chicks hatch on the farm: under a hen or in an incubator. */
export const hatchesHere = ({ origin = 'hatchery' }: Comes): boolean =>
  origin === 'incubator' || origin === 'hen';

/** Whether they come as started pullets: feathered, and past the need of a brooder. */
export const isStarted = ({ origin }: Comes): boolean => origin === 'started';

/** Whether a box of them is sent: chicks fetched on the day they hatch and grown birds come by no post. */
export const comesByPost = ({
  hatchToArrivalDays,
  ...comes
}: Comes & { readonly hatchToArrivalDays: number }): boolean =>
  !hatchesHere(comes) && !isStarted(comes) && 0 < hatchToArrivalDays;

/** Age of a batch on the day it comes, days from hatch. */
export const arrivalAgeDaysOf = ({
  origin,
  arrivalAgeWeeks,
  hatchToArrivalDays,
}: Comes & {
  readonly arrivalAgeWeeks?: number;
  readonly hatchToArrivalDays: number;
}): number =>
  isStarted({ origin }) ? 7 * (arrivalAgeWeeks ?? USUAL_STARTED_WEEKS) : hatchToArrivalDays;

/** The age at which started pullets are most often sold, weeks. */
export const USUAL_STARTED_WEEKS = 16;
