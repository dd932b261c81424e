import {
  IconBook,
  IconBuildingWarehouse,
  IconCalendar,
  IconChecklist,
  IconEgg,
  IconHome,
  IconNotebook,
  IconPlant2,
  IconSunrise,
  IconWheat,
} from '@tabler/icons-react';
import type { ReactNode } from 'react';

/** A place of the page: where it is, and a name short enough for the bar of a phone. */
export interface Place {
  readonly path: string;
  readonly label: string;
  readonly short: string;
  readonly icon: ReactNode;
}

/** The places of a farm in order. On a phone the first ones stand in the bar, the rest behind it. */
export const PLACES: readonly Place[] = [
  { path: '/today', label: 'Today', short: 'Today', icon: <IconSunrise aria-hidden /> },
  { path: '/year', label: 'The year', short: 'Year', icon: <IconCalendar aria-hidden /> },
  { path: '/batches', label: 'Batches', short: 'Batches', icon: <IconEgg aria-hidden /> },
  { path: '/pasture', label: 'Grass and cattle', short: 'Grass', icon: <IconPlant2 aria-hidden /> },
  { path: '/feed', label: 'Feed', short: 'Feed', icon: <IconWheat aria-hidden /> },
  { path: '/work', label: 'Work', short: 'Work', icon: <IconChecklist aria-hidden /> },
  { path: '/record', label: 'The record', short: 'Record', icon: <IconNotebook aria-hidden /> },
  {
    path: '/facilities',
    label: 'Buildings and gear',
    short: 'Gear',
    icon: <IconBuildingWarehouse aria-hidden />,
  },
  { path: '/place', label: 'Your place', short: 'Place', icon: <IconHome aria-hidden /> },
  {
    path: '/sources',
    label: 'Where numbers come from',
    short: 'Sources',
    icon: <IconBook aria-hidden />,
  },
];

/** How many of them stand in the bar of a phone. */
export const IN_BAR = 4;
