import { Button, Switch } from '@mantine/core';
import type { ReactNode } from 'react';
import type { NumberField } from '../../../../shared/farm/field.js';
import {
  birdsToComeFields,
  cattleToComeFields,
  equalPaddocksFields,
  startFields,
} from '../../../../shared/farm/start.js';
import { formatMonth } from '../../../../shared/units/dates.js';
import { useTables } from '../../api/queries.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import { Count } from './choices.js';
import {
  COWS,
  lastMonths,
  unitsOf,
  type CattleDraft,
  type MeatDraft,
  type StartDraft,
} from './start-draft.js';
import { WhenField } from './when-field.js';

/** Here a nought may be typed as well: it is one way to say that none come. */
const orNone = (field: NumberField): NumberField => ({
  ...field,
  bounds: { ...field.bounds, min: 0 },
});
const sayNone = (count: number | undefined) => (count === 0 ? { description: 'None come.' } : {});

const BIRDS = orNone(birdsToComeFields.fields.birds);
const HEAD = orNone(cattleToComeFields.fields.head);
const PADDOCKS = equalPaddocksFields.fields;
/** Until the tables are there, the class a start is most often of. */
const COW_CALF = [{ id: 'cow-calf', name: 'Beef cow with calf' }];
const ONCE_THERE_IS_ROOM = 'They come into the same brooder, pens and freezer once there is room.';
/** Where a month or a day is said, no room is looked for. */
const INTO_THE_SAME =
  'They come then, into the same brooder, pens and freezer: see that the others are out of them.';
/** Ages at which pullets are sold. */
const STARTED = [8, 12, 16, 20].map((weeks) => ({
  id: String(weeks),
  name: `started pullets, ${weeks} weeks old`,
}));
const HENS_TO_COME =
  'Hens you want at the end. Started pullets need no brooder: they go into the coop on the day they come.';
const HENS_HERE =
  'How many there are now. They are taken to lay; how old they are you can say later.';
const MOST_HIVES = 50;
/** As many kinds as a start takes. */
const MOST_KINDS = 6;
const MORE_MEAT = ['Second meat birds', 'Third meat birds', 'Fourth meat birds'] as const;

interface Props {
  readonly draft: StartDraft;
  readonly set: (part: Partial<StartDraft>) => void;
}

/** What is coming: birds and cattle, how many and when about. */
export function ComingBlock({ draft, set }: Props) {
  const { cattle, moreMeat } = draft;
  const isGrazed = cattle.some(({ head }) => head);
  return (
    <section className="start-block" aria-labelledby="start-coming">
      <h2 id="start-coming">What is coming?</h2>
      <div className="start-rows">
        <Birds
          draft={draft}
          label="Meat birds"
          about="How many you want at the end. They come as day-old chicks, some more than that."
          value={{ birds: draft.meat, when: draft.meatWhen }}
          onChange={({ birds, when }) => set({ meat: birds, meatWhen: when })}
        />
        {moreMeat.map((each, at) => (
          <Birds
            key={at}
            draft={draft}
            label={MORE_MEAT[at]!}
            about={each.when ? INTO_THE_SAME : ONCE_THERE_IS_ROOM}
            value={each}
            onChange={(next) =>
              set({ moreMeat: moreMeat.map((one, k) => (k === at ? next : one)) })
            }
          />
        ))}
        {(draft.meat ?? 0) > 0 && moreMeat.length < MORE_MEAT.length && (
          <div>
            <Button
              variant="subtle"
              onClick={() => set({ moreMeat: [...moreMeat, { birds: draft.meat }] })}
            >
              Another batch of meat birds
            </Button>
          </div>
        )}
        <Birds
          draft={draft}
          label="Layers"
          about={draft.layersAreHere ? HENS_HERE : HENS_TO_COME}
          value={{ birds: draft.layers, when: draft.layersWhen }}
          isHere={draft.layersAreHere}
          onHere={(isHere) => set({ layersAreHere: isHere })}
          onChange={({ birds, when }) => set({ layers: birds, layersWhen: when })}
        >
          {!draft.layersAreHere && (
            <Select
              label="Layers: they come as"
              value={draft.layersWeeks === undefined ? undefined : String(draft.layersWeeks)}
              options={STARTED}
              none="day-old chicks"
              onChange={(weeks) =>
                set({ layersWeeks: weeks === undefined ? undefined : Number(weeks) })
              }
            />
          )}
        </Birds>
        {cattle.map((each, at) => (
          <Cattle
            key={at}
            draft={draft}
            cattle={each}
            label={at === 0 ? 'Cattle' : `Cattle, kind ${at + 1}`}
            set={(part) =>
              set({ cattle: cattle.map((one, k) => (k === at ? { ...one, ...part } : one)) })
            }
          />
        ))}
        {isGrazed && (
          <>
            {cattle.length < MOST_KINDS && (
              <div>
                <Button
                  variant="subtle"
                  onClick={() => set({ cattle: [...cattle, { ...COWS, classId: 'stocker' }] })}
                >
                  Another kind of cattle
                </Button>
              </div>
            )}
            <EqualPaddocks {...{ draft, set }} />
            <Switch
              label={startFields.fields.makesHay.label}
              description="Off, grass that the cattle leave is topped and lies, and hay for winter is bought."
              checked={draft.makesHay ?? false}
              onChange={(event) => set({ makesHay: event.currentTarget.checked })}
            />
          </>
        )}
        <div className="start-row">
          <Switch
            label="A garden"
            description="Its work in spring is planned beside the animals’."
            checked={draft.hasGarden ?? false}
            onChange={(event) => set({ hasGarden: event.currentTarget.checked })}
          />
          <Count
            label="Hives"
            value={draft.hives ?? 0}
            most={MOST_HIVES}
            onChange={(hives) => set({ hives })}
          />
        </div>
      </div>
    </section>
  );
}

function Birds({
  draft,
  label,
  about,
  value,
  isHere,
  onHere,
  onChange,
  children,
}: {
  readonly draft: StartDraft;
  readonly label: string;
  readonly about: string;
  readonly value: MeatDraft;
  readonly isHere?: boolean | undefined;
  readonly onHere?: (isHere: boolean) => void;
  readonly onChange: (value: MeatDraft) => void;
  readonly children?: ReactNode;
}) {
  return (
    <div>
      <div className="start-row">
        <QuantityInput
          className="start-narrow"
          label={label}
          field={BIRDS}
          units={unitsOf(draft)}
          value={value.birds}
          {...sayNone(value.birds)}
          onChange={(birds) => onChange({ ...value, birds })}
        />
        <WhenField
          label={label}
          timeZone={draft.place?.timeZone}
          value={value.when}
          none="the best week"
          noDay="the best day"
          {...{ isHere, onHere }}
          onChange={(when) => onChange({ ...value, when })}
        />
        {children}
      </div>
      <p className="start-small">{about}</p>
    </div>
  );
}

function Cattle({
  draft,
  cattle: { head, classId, when, due, dueUntil },
  label,
  set,
}: {
  readonly draft: StartDraft;
  readonly cattle: CattleDraft;
  readonly label: string;
  readonly set: (part: Partial<CattleDraft>) => void;
}) {
  const tables = useTables();
  const classes = tables.data?.cattle.classes;
  const calves = label === 'Cattle' ? 'Calves due' : `${label}: calves due`;
  const asksWhenDue = classes?.find(({ id }) => id === classId)?.asksWhenDue ?? false;
  return (
    <div className="start-row">
      <QuantityInput
        className="start-narrow"
        label={label}
        field={HEAD}
        units={unitsOf(draft)}
        value={head}
        {...sayNone(head)}
        onChange={(count) => set({ head: count })}
      />
      <Select
        label={label === 'Cattle' ? 'Kind of cattle' : `${label}: which`}
        value={classId}
        options={classes ?? COW_CALF}
        onChange={(id) => set({ classId: id ?? classId, due: undefined, dueUntil: undefined })}
      />
      <WhenField
        label={label}
        timeZone={draft.place?.timeZone}
        value={when}
        none="they are here"
        noDay="about the 1st"
        onChange={(at) => set({ when: at })}
      />
      {head !== undefined && 0 < head && asksWhenDue && (
        <>
          <WhenField
            label={calves}
            timeZone={draft.place?.timeZone}
            value={due}
            none="not known"
            noDay={head === 1 ? 'about the middle' : undefined}
            onChange={(at) => set({ due: at, dueUntil: undefined })}
          />
          {due && 1 < head && (
            <Select
              label={`${calves}: until the end of`}
              value={dueUntil ?? due.month}
              options={lastMonths(due.month).map((id) => ({ id, name: formatMonth(id) }))}
              onChange={(month) => set({ dueUntil: month })}
            />
          )}
        </>
      )}
    </div>
  );
}

const EqualPaddocks = ({ draft, set }: Props) => (
  <div className="start-row">
    <QuantityInput
      label="Equal paddocks"
      field={PADDOCKS.count}
      units={unitsOf(draft)}
      value={draft.paddocks}
      placeholder="12"
      onChange={(paddocks) => set({ paddocks })}
    />
    <QuantityInput
      label="Size of each"
      field={PADDOCKS.areaM2}
      units={unitsOf(draft)}
      value={draft.paddockM2}
      placeholder="enough grass"
      onChange={(paddockM2) => set({ paddockM2, grassM2: undefined })}
    />
    <QuantityInput
      label="Or all together"
      field={PADDOCKS.allM2}
      units={unitsOf(draft)}
      value={draft.grassM2}
      placeholder="divided evenly"
      onChange={(grassM2) => set({ grassM2, paddockM2: undefined })}
    />
  </div>
);
