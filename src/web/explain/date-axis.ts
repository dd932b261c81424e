import { formatDayWithoutWeekday } from '../../../shared/units/dates.js';
import { useOpener } from './explain-panel.js';

/** How a chart whose rows are dates writes them along its axis, and over the values of one. */
export function useDateAxis(): {
  readonly tick: (date: string) => string;
  readonly tooltip: { readonly labelFormatter: (date: unknown) => string };
} {
  const { reader, sayDate } = useOpener();
  return {
    tick: (date) => formatDayWithoutWeekday(date, reader),
    tooltip: { labelFormatter: (date) => sayDate(String(date)) },
  };
}
