import './pasture.css';
import type { Outline, Paddock } from '../../../../shared/farm/paddock.js';
import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { useSayDate } from '../../explain/say-date.js';
import { Folded } from '../../shell/folded.js';
import { STANDING_COLOURS, STANDING_WORDS, standingOf } from './season-strip.js';

const WIDTH = 1000;
const MARGIN = 20;

interface Drawn {
  readonly paddock: Paddock;
  readonly points: readonly (readonly [number, number])[];
}

/** The paddocks as drawn, colored by what stands there. Needs no map from elsewhere. */
export function PastureMap({
  plan,
  paddocks,
  date,
}: {
  plan: PasturePlan;
  paddocks: readonly Paddock[];
  date: string;
}) {
  const sayDate = useSayDate();
  const drawn = project(paddocks);
  if (!drawn) return null;
  const day = Math.max(0, daysBetween(plan.from, date));
  return (
    <Folded
      id="map"
      title={`Map on ${sayDate(date)}`}
      answer="Each paddock in the color of its grass"
    >
      <svg
        className="pasture-map"
        viewBox={`0 0 ${WIDTH} ${drawn.height}`}
        role="img"
        aria-label={`Map of ${drawn.shapes.length} paddocks, north at the top`}
      >
        {drawn.shapes.map(({ paddock, points }) => {
          const part = plan.paddocks.find((p) => p.id === paddock.id);
          const kind = part ? standingOf(part, part.massByDay[day] ?? 0, date) : 'resting';
          const [x, y] = middle(points);
          return (
            <g key={paddock.id}>
              <polygon
                points={points.map((p) => p.join(',')).join(' ')}
                fill={STANDING_COLOURS[kind]}
                strokeWidth={3}
              >
                <title>{`${paddock.name}: ${STANDING_WORDS[kind]}`}</title>
              </polygon>
              <text x={x} y={y} textAnchor="middle" dominantBaseline="middle" fontSize={26}>
                {paddock.name}
              </text>
            </g>
          );
        })}
      </svg>
    </Folded>
  );
}

/** Outlines on a flat sheet, true in shape over a farm's width; north is up. */
function project(
  paddocks: readonly Paddock[],
): { shapes: readonly Drawn[]; height: number } | undefined {
  const outlined = paddocks.filter(
    (p): p is Paddock & { outline: Outline } => p.outline !== undefined,
  );
  const corners = outlined.flatMap((p) => p.outline);
  if (corners.length === 0) return undefined;
  const latitudes = corners.map(([, latitude]) => latitude);
  const narrow = Math.cos((Math.PI / 180) * latitudes[0]!);
  const xs = corners.map(([longitude]) => longitude * narrow);
  const [west, north] = [Math.min(...xs), Math.max(...latitudes)];
  const [width, tall] = [Math.max(...xs) - west, north - Math.min(...latitudes)];
  const scale = (WIDTH - 2 * MARGIN) / Math.max(width, tall, 1e-6);
  return {
    height: tall * scale + 2 * MARGIN,
    shapes: outlined.map((paddock) => ({
      paddock,
      points: paddock.outline.map(
        ([longitude, latitude]) =>
          [
            Math.round(MARGIN + (longitude * narrow - west) * scale),
            Math.round(MARGIN + (north - latitude) * scale),
          ] as const,
      ),
    })),
  };
}

function middle(points: readonly (readonly [number, number])[]): [number, number] {
  const sum = points.reduce(([x, y], p) => [x + p[0], y + p[1]], [0, 0]);
  return [sum[0]! / points.length, sum[1]! / points.length];
}
