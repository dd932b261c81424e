import type { FeedTrip, TripLine } from '../../../../shared/plan/feed-year/feed-trips.js';
import { dayInWork } from '../../../../shared/plan/feed-year/trip-in-work.js';
import { formatPrice, formatValue } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { useWork } from '../../api/work-queries.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';

/** Trips as shopping lists, one below the other. */
export const TripList = ({ trips, farm }: { trips: readonly FeedTrip[]; farm: SavedFarm }) => (
  <ul className="feed-trips">
    {trips.map((trip) => (
      <li key={`${trip.on.value} ${trip.from}`}>
        <Trip trip={trip} farm={farm} />
      </li>
    ))}
  </ul>
);

function Trip({ trip, farm }: { trip: FeedTrip; farm: SavedFarm }) {
  const sayDate = useSayDate();
  const { on, from, comes, orderOn, lines, along, kg, tripCost, total } = trip;
  const { data: work } = useWork(farm.id);
  const planned = work && dayInWork(trip, work.jobs);
  const isLater = planned !== undefined && planned !== on.value;
  return (
    <>
      <h3>{isLater ? sayDate(planned) : <Num of={on} />}</h3>
      <p className="feed-trip-from">
        {comes === 'delivered' ? `${from} delivers` : from}
        {isLater && (
          <>
            , of use from <Num of={on} />
          </>
        )}
        {orderOn !== undefined && `, order by ${sayDate(orderOn)}`}
      </p>
      <table className="feed-lines">
        <tbody>
          {lines.map((line) => (
            <Line key={line.name} line={line} farm={farm} />
          ))}
          {along.map(({ name, count, kg: weight, cost }) => (
            <tr key={name}>
              <td className="feed-bags">{count} ×</td>
              <th scope="row">
                <span className="feed-name">{name}</span>
                <small>{formatValue(weight / count, 'kg', farm)}, for the cattle</small>
              </th>
              <td>
                <Num of={cost} />
              </td>
            </tr>
          ))}
          {tripCost && (
            <tr>
              <td />
              <th scope="row">{comes === 'delivered' ? 'The delivery' : 'The trip'}</th>
              <td>
                <Num of={tripCost} />
              </td>
            </tr>
          )}
        </tbody>
        <tfoot>
          <tr>
            <td />
            <th scope="row">
              In all, <Num of={kg} />
            </th>
            <td>
              <b>{total ? <Num of={total} /> : 'no price'}</b>
            </td>
          </tr>
        </tfoot>
      </table>
    </>
  );
}

function Line({ line, farm }: { line: TripLine; farm: SavedFarm }) {
  const sayDate = useSayDate();
  const { bags, bagKg, name, each, cost, lastsThrough, wasteKg } = line;
  return (
    <tr>
      <td className="feed-bags">
        <Num of={bags} said={`${bags.value} ×`} />
      </td>
      <th scope="row">
        <span className="feed-name">{name}</span>
        <small>
          {formatValue(bagKg, 'kg', farm)}
          {each === undefined ? '' : ` at ${formatPrice(each, farm.currency)}`}, enough to{' '}
          {sayDate(lastsThrough)}
          {wasteKg !== undefined && `; ${formatValue(wasteKg, 'kg', farm)} is left over`}
        </small>
      </th>
      <td>{cost ? <Num of={cost} /> : 'no price'}</td>
    </tr>
  );
}
