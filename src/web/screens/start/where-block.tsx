import { Button, Switch, TextInput } from '@mantine/core';
import { useDebouncedCallback } from '@mantine/hooks';
import { useEffect, useRef, useState, type FormEvent, type RefObject } from 'react';
import { dateIn } from '../../../../shared/calendar/month-day.js';
import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import { farmFields } from '../../../../shared/farm/farm.js';
import type { Place, PlacesFound, Point } from '../../../../shared/farm/place.js';
import { formatAbout, formatValue, type Reader } from '../../../../shared/units/format.js';
import { angleText } from '../../../../shared/units/typed.js';
import { findPlaces, findPoint, useEstimate } from '../../api/start-queries.js';
import { noPosition } from '../../fields/no-position.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Failure } from '../../shell/states.js';
import { Choices } from './choices.js';
import { unitsOf, type FoundPlace, type StartDraft } from './start-draft.js';
import { zoneOf } from './zone-of.js';

const FIELDS = farmFields.fields;

interface Props {
  readonly draft: StartDraft;
  readonly set: (part: Partial<StartDraft>) => void;
}

/** Where the farm is: by name, by the device's position, or by coordinates. */
export function WhereBlock({ draft, set, usualM }: Props & { usualM: number | undefined }) {
  const isSearched = useRef(false);
  useEffect(() => {
    if (draft.place === undefined) isSearched.current = true;
  }, [draft.place]);
  return (
    <section className="start-block" aria-labelledby="start-where">
      <h2 id="start-where">Where is the farm?</h2>
      {draft.place ? (
        <Known {...{ draft, set, usualM, isSearched }} place={draft.place} />
      ) : (
        <Search {...{ draft, set }} />
      )}
    </section>
  );
}

function Known({
  draft,
  set,
  place,
  usualM,
  isSearched,
}: Props & { place: FoundPlace; usualM: number | undefined; isSearched: RefObject<boolean> }) {
  const { units, currency = 'USD' } = place;
  const reader: Reader = { units: unitsOf(draft), currency, today: '' };
  const height = useRef<HTMLInputElement>(null);
  const found = useRef<HTMLDivElement>(null);
  // What was pressed is gone with the search; the place is read out in its stead.
  useEffect(() => {
    if (isSearched.current) found.current?.focus({ preventScroll: true });
  }, [isSearched]);
  return (
    <div className="start-rows">
      <div ref={found} tabIndex={-1} className="start-found">
        <div className="start-known">{place.said}</div>
        <div className="start-small">
          {place.timeZone.replaceAll('_', ' ')} · {units === 'us' ? 'feet and pounds' : 'metric'} ·{' '}
          {place.currency}
        </div>
      </div>
      {place.countries && (
        <Choices
          legend="A border is near. Which country is the farm in?"
          value={place.chosenCountry}
          options={place.countries.map(({ countryName }) => ({
            id: countryName,
            name: countryName,
          }))}
          onChange={(chosen) => set({ place: inCountry(place, chosen) })}
        />
      )}
      <div className="start-row">
        <QuantityInput
          ref={height}
          className="start-wide"
          label="Height above sea level"
          field={FIELDS.elevationM}
          units={unitsOf(draft)}
          value={draft.elevationM}
          placeholder="not known"
          onChange={(elevationM) => set({ elevationM })}
        />
        <Button
          variant="default"
          onClick={() => set({ place: undefined, elevationM: undefined, isConfirmed: false })}
        >
          Another place
        </Button>
      </div>
      {draft.elevationM === undefined && usualM !== undefined && (
        <div className="start-asked">
          <p>
            <b>How high is the farm?</b>{' '}
            {place.townElevationM === undefined
              ? `It is not known here, so about ${formatAbout(usualM, 'm', reader)} is taken.`
              : `About ${formatAbout(usualM, 'm', reader)}, as high as ${townSaid(place, reader)}, is taken.`}{' '}
            Frost dates, the nights and the grass hang on it:{' '}
            <Higher place={place} fromM={usualM} reader={reader} />
          </p>
          <button type="button" className="start-link" onClick={() => height.current?.focus()}>
            Type the height
          </button>
        </div>
      )}
    </div>
  );
}

/** The place with all that follows from the country that was chosen. */
function inCountry(place: FoundPlace, chosenCountry: string): FoundPlace {
  const { country: _was, region: _region, name: _name, ...rest } = place;
  const chosen = place.countries?.find(({ countryName }) => countryName === chosenCountry);
  if (chosen === undefined) return place;
  const { countryName: _chosen, near, nearKm, ...ofCountry } = chosen;
  const called = calledBy(place, { near, nearKm });
  return { ...rest, ...ofCountry, ...zoneOf(ofCountry), ...called, chosenCountry };
}

const townSaid = ({ heightOf }: FoundPlace, reader: Reader): string =>
  heightOf ? `${heightOf.near}, ${formatAbout(heightOf.nearKm, 'km', reader)} away` : 'the town';

/** A town farther off gives a farm no name. */
const NAMED_KM = 30;

/** What a spot is called by its nearest town. */
function calledBy(
  { latitudeDeg, longitudeDeg }: Spot,
  { near, nearKm }: Pick<Point, 'near' | 'nearKm'>,
): Pick<FoundPlace, 'said' | 'name'> {
  const spot = `${angleText(latitudeDeg, 'latitude')}, ${angleText(longitudeDeg, 'longitude')}`;
  return { said: `${spot}, near ${near}`, ...(nearKm < NAMED_KM ? { name: near } : {}) };
}

/** What a height that is taken wrongly does to the farm's climate, by the estimate itself. */
function Higher({ place, fromM, reader }: { place: FoundPlace; fromM: number; reader: Reader }) {
  const { latitudeDeg, longitudeDeg } = place;
  const byM = HIGHER_M[reader.units];
  const below = useEstimate({ latitudeDeg, longitudeDeg, elevationM: fromM }).data?.estimate;
  const above = useEstimate({ latitudeDeg, longitudeDeg, elevationM: fromM + byM }).data?.estimate;
  const by = formatValue(byM, 'm', reader);
  if (!below || !above) return <>{by} higher is one to two weeks of frost.</>;
  const colderC =
    sum(below.monthlyMinC.map((each, month) => each - above.monthlyMinC[month]!)) / 12;
  const days = daysBetween(dateIn(2025, below.lastFrost), dateIn(2025, above.lastFrost));
  return (
    <>
      {by} higher, the nights are about {formatAbout(colderC, 'K', reader)} colder
      {above.frostErrorDays !== undefined && 0 < days && ` and the last frost ${days} days later`}.
    </>
  );
}

/** 1,000 feet or 300 meters. */
const HIGHER_M = { us: 304.8, metric: 300 } as const;

const sum = (all: readonly number[]): number => all.reduce((total, each) => total + each, 0);

function Search({ draft, set }: Props) {
  const [name, setName] = useState('');
  const [found, setFound] = useState<PlacesFound>();
  const [error, setError] = useState<Error>();
  const [busy, setBusy] = useState<'name' | 'here' | 'typed'>();
  const [isTyping, setTyping] = useState(false);
  // Only what was asked last counts, and nothing once a place was taken.
  const last = useRef(0);
  useEffect(
    () => () => {
      last.current += 1;
    },
    [],
  );
  const attempt = async <T,>(
    by: NonNullable<typeof busy>,
    ask: () => Promise<T>,
    use: (answer: T) => void,
  ): Promise<void> => {
    const mine = (last.current += 1);
    setBusy(by);
    setError(undefined);
    try {
      const answer = await ask();
      if (mine === last.current) use(answer);
    } catch (problem) {
      if (mine === last.current) setError(problem as Error);
    } finally {
      if (mine === last.current) setBusy(undefined);
    }
  };
  const look = (event: FormEvent): void => {
    event.preventDefault();
    if (name.trim() !== '')
      void attempt(
        'name',
        () => findPlaces(name.trim(), draft.isOnline),
        (answer) => {
          setFound(answer);
          // The next way stands open, with what was typed still above it.
          if (answer.places.length === 0) setTyping(true);
        },
      );
  };
  const takeSpot = (spot: Spot, point: Point, heightM?: number) => {
    const { near, nearKm, elevationM = heightM, note: _note, ...rest } = point;
    set({
      place: {
        ...rest,
        ...spot,
        ...zoneOf(rest),
        ...calledBy(spot, { near, nearKm }),
        heightOf: { near, nearKm },
      },
      elevationM,
    });
  };
  const takeTyped = (spot: Spot) =>
    attempt(
      'typed',
      () => findPoint(spot, draft.isOnline),
      (point) => takeSpot(spot, point),
    );
  const takeHere = () =>
    attempt(
      'here',
      async () => {
        const { latitude, longitude, altitude } = await hereNow();
        const spot = { latitudeDeg: rounded(latitude), longitudeDeg: rounded(longitude) };
        const heightM = altitude === null ? undefined : Math.round(altitude);
        return { spot, heightM, point: await findPoint(spot, draft.isOnline) };
      },
      ({ spot, point, heightM }) => takeSpot(spot, point, heightM),
    );
  const take = ({ within, countryName, elevationM, population: _people, ...place }: Place) =>
    set({
      place: {
        ...place,
        ...zoneOf(place),
        said: [place.name, within, countryName].filter(Boolean).join(', '),
      },
      elevationM,
    });
  return (
    <div className="start-rows">
      <form onSubmit={look} className="start-row">
        <TextInput
          label="Town or village"
          autoComplete="off"
          value={name}
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <Button type="submit" loading={busy === 'name'}>
          Find
        </Button>
      </form>
      {found && <Found found={found} typed={name} isOnline={draft.isOnline} onTake={take} />}
      <div className="start-row">
        <Button variant="default" loading={busy === 'here'} onClick={() => void takeHere()}>
          I am on the farm now
        </Button>
        <Button variant="subtle" aria-expanded={isTyping} onClick={() => setTyping(!isTyping)}>
          Type coordinates
        </Button>
      </div>
      {isTyping && (
        <Coordinates
          units={unitsOf(draft)}
          isBusy={busy === 'typed'}
          onTake={(spot) => void takeTyped(spot)}
        />
      )}
      <Switch
        label="Look it up online"
        description="Finds villages, and the height. What you look for goes to Open-Meteo, and the farm’s coordinates when you fetch its weather."
        checked={draft.isOnline}
        onChange={(event) => set({ isOnline: event.currentTarget.checked })}
      />
      <Failure error={error} />
    </div>
  );
}

function Found({
  found,
  typed,
  isOnline,
  onTake,
}: {
  found: PlacesFound;
  typed: string;
  isOnline: boolean;
  onTake: (place: Place) => void;
}) {
  const { places, note } = found;
  return (
    <div role="status">
      {note && <p className="start-small">{note}</p>}
      {places.length === 0 ? (
        <p>
          {/\d/.test(typed)
            ? 'That code is not known here. Type the name of the town'
            : `“${typed}” is not known here. Try the next town`}
          {isOnline ? '' : ', look it up online'}, press “I am on the farm now” there, or type
          coordinates.
        </p>
      ) : (
        <ul className="start-places">
          {places.map((place) => (
            <li key={`${place.latitudeDeg} ${place.longitudeDeg}`}>
              <button type="button" className="start-place" onClick={() => onTake(place)}>
                {place.name}{' '}
                <small>{[place.within, place.countryName].filter(Boolean).join(', ')}</small>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Coordinates({
  units,
  isBusy,
  onTake,
}: {
  units: 'us' | 'metric';
  isBusy: boolean;
  onTake: (spot: Spot) => void;
}) {
  const [spot, setSpot] = useState<SpotDraft>({});
  const take = (at: SpotDraft): void => {
    takeSoon.cancel();
    if (isWithin(at.latitudeDeg, 90) && isWithin(at.longitudeDeg, 180))
      onTake({ latitudeDeg: at.latitudeDeg, longitudeDeg: at.longitudeDeg });
  };
  const takeSoon = useDebouncedCallback((at: SpotDraft) => take(at), REST_MS);
  const say = (part: SpotDraft): void => {
    const said = { ...spot, ...part };
    setSpot(said);
    takeSoon(said);
  };
  return (
    <form
      className="start-row"
      onSubmit={(event) => {
        event.preventDefault();
        take(spot);
      }}
    >
      <QuantityInput
        label={`${FIELDS.latitudeDeg.label}, such as 42.9 N`}
        field={FIELDS.latitudeDeg}
        units={units}
        value={spot.latitudeDeg}
        onChange={(latitudeDeg) => say({ latitudeDeg })}
      />
      <QuantityInput
        label={`${FIELDS.longitudeDeg.label}, such as 75.3 W`}
        field={FIELDS.longitudeDeg}
        units={units}
        value={spot.longitudeDeg}
        onChange={(longitudeDeg) => say({ longitudeDeg })}
      />
      <Button type="submit" variant="default" loading={isBusy}>
        Take them
      </Button>
    </form>
  );
}

type Spot = Pick<Place, 'latitudeDeg' | 'longitudeDeg'>;

type SpotDraft = { readonly [K in keyof Spot]?: number | undefined };

/** Coordinates count once the hand rests; nobody has to press for it. */
const REST_MS = 800;

const isWithin = (value: number | undefined, most: number): value is number =>
  value !== undefined && Math.abs(value) <= most;

/** Where this device is; refused in words when it does not say. */
const hereNow = (): Promise<GeolocationCoordinates> =>
  new Promise((resolve, reject) => {
    if (!('geolocation' in navigator))
      return reject(new Error('This device does not tell where it is. Find the town instead.'));
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => resolve(coords),
      ({ code }) => reject(new Error(`${noPosition(code)} Or find the town instead.`)),
      { enableHighAccuracy: true, timeout: 15_000 },
    );
  });

/** About ten meters. */
const rounded = (degrees: number): number => Math.round(degrees * 1e4) / 1e4;
