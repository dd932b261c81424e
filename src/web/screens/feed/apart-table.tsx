import type { BoughtApart } from '../../../../shared/plan/feed-year/bought-apart.js';
import { formatMoney, formatValue } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';

interface Props {
  readonly apart: readonly BoughtApart[];
  readonly farm: SavedFarm;
  readonly isToTick?: boolean;
}

/** Hay, minerals and salt that are bought on days of no trip, by day. */
export function ApartTable({ apart, farm, isToTick = false }: Props) {
  const sayDate = useSayDate();
  return (
    <table className="feed-lines">
      <tbody>
        {apart.map(({ on, name, kind, count, minor }) => (
          <tr key={`${on} ${name}`}>
            <td>
              {isToTick && '☐ '}
              {sayDate(on)}
            </td>
            <th scope="row">
              {name}: {kind === 'hay' ? formatValue(count, 'bales', farm) : count}
            </th>
            <td>{minor === 0 ? 'no price' : formatMoney(minor, farm.currency)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
