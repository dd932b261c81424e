import './pasture.css';
import { Link } from 'wouter';
import { Alert, Button, Checkbox, Group, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { changedByWalk } from '../../../../shared/plan/pasture/changed-by-walk.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { expectedHeight } from '../../../../shared/plan/pasture/expected-height.js';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { doubtOfDay } from '../../../../shared/farm/told-doubts.js';
import { isOddReading } from '../../../../shared/pasture/odd-reading.js';
import { formatMeasured, formatValue } from '../../../../shared/units/format.js';
import { grassReadingFields } from '../../../../shared/farm/paddock.js';
import { readTyped } from '../../../../shared/units/typed.js';
import { fromShown, toShown, unitLabel } from '../../../../shared/units/unit.js';
import { useWalk } from '../../api/pasture-queries.js';
import { usePicture, useRemove, type SavedFarm } from '../../api/queries.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { draftKey, keepDraft, readDraft } from '../../fields/kept-draft.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Empty } from '../../shell/empty.js';
import { Folded } from '../../shell/folded.js';
import { Failure, useAll } from '../../shell/states.js';
import { PastureNav } from './pasture-nav.js';
import { usePasturePlan } from './use-pasture.js';

/** Heights typed paddock by paddock with one thumb; the plan corrects itself from there. */
export default function WalkScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePicture(farm.id));
  if ('waiting' in all) return all.waiting;
  return (
    <Stack maw={1120}>
      <Title order={1}>Pasture walk</Title>
      <PastureNav farmId={farm.id} />
      <Walk picture={all.data[0]} farm={farm} tables={tables} />
    </Stack>
  );
}

const TALLEST_CM = grassReadingFields.fields.heightCm.bounds.max;

/** A step of the buttons: half an inch or one centimeter. */
const STEP = { metric: 1, us: 0.5 } as const;

type Heights = Readonly<Record<string, number>>;

function Walk({
  picture,
  farm,
  tables,
}: {
  picture: FarmPicture;
  farm: SavedFarm;
  tables: Tables;
}) {
  const sayDate = useSayDate();
  const { plan, isWorking } = usePasturePlan(picture, tables);
  /** The plan as it stood when the heights were saved: against it is said what they changed. */
  const [planBefore, setPlanBefore] = useState<PasturePlan>();
  const key = draftKey(farm.id, 'walk', picture.today);
  const [heights, setTyped] = useState<Heights>(() => readDraft<Heights>(key) ?? {});
  const setHeights = (next: Heights) => {
    keepDraft(key, next, {});
    setTyped(next);
  };
  /** What stands in a box as it was typed, by paddock: “3.” is on its way to 3.5. */
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>({});
  const heightIn = (text: string): number | undefined => {
    const height = readTyped(text, { unit: 'cm', system: farm.units });
    return height.is === 'value' && 0 <= height.stored && height.stored <= TALLEST_CM
      ? height.stored
      : undefined;
  };
  const isWrong = (id: string): boolean =>
    texts[id] !== undefined && texts[id].trim() !== '' && heightIn(texts[id]) === undefined;
  const [date, setDate] = useState(picture.today);
  const doubt = doubtOfDay(date, { ...farm, today: picture.today }, tables.judgements.alarms);
  /** A day long ago that was said to be right. */
  const [meantDay, setMeantDay] = useState<string>();
  /** Paddocks of which an odd height was said to be right. */
  const [meant, setMeant] = useState<ReadonlySet<string>>(new Set());
  const save = useWalk(farm.id);
  const unit = unitLabel('cm', farm.units);
  const read = Object.keys(heights).length;
  /** Another height is another question. */
  const noLongerMeant = (paddockId: string) =>
    setMeant(new Set([...meant].filter((id) => id !== paddockId)));
  const expected = (paddockId: string, on = date): number | undefined =>
    plan && expectedHeight(plan, paddockId, on);
  /** What is expected of a paddock whose typed height is hard to believe. */
  const oddOf = (paddockId: string): number | undefined => {
    const cm = expected(paddockId);
    const typed = heights[paddockId];
    return cm !== undefined &&
      typed !== undefined &&
      isOddReading(typed, cm, tables.judgements.grass)
      ? cm
      : undefined;
  };
  const asked = Object.keys(heights).filter(
    (id) => oddOf(id) !== undefined && !meant.has(id) && !isWrong(id),
  );
  if (picture.paddocks.length === 0) {
    return (
      <Empty text="There is nothing to walk yet.">
        <Button component={Link} href={`/farm/${farm.id}/pasture/land`}>
          Add paddocks
        </Button>
      </Empty>
    );
  }
  return (
    <>
      <Text>
        Lay the hand flat on the sward, not on the tallest leaf, in several places, and type the
        middle, in {farm.units === 'us' ? 'inches' : 'centimeters'}. Paddocks you leave alone keep
        what is expected.
      </Text>
      <DateField
        label="Walked on"
        value={date}
        max={picture.today}
        onChange={(on) => {
          setDate(on ?? picture.today);
          setMeant(new Set());
        }}
      />
      {doubt && (
        <Checkbox
          className="walk-wrong"
          label={doubt}
          checked={meantDay === date}
          onChange={() => setMeantDay(meantDay === date ? undefined : date)}
        />
      )}
      <Failure error={save.error} />
      {save.isSuccess && !save.data.isSent && (
        <Alert color="accent" title="Kept on this phone" role="status">
          The heights are sent when there is signal; the plan starts from them then.
        </Alert>
      )}
      {save.isSuccess && save.data.isSent && plan && (
        <Alert color="accent" title="Saved" role="status">
          <Text>
            Your growth against the model is now <Num of={plan.farmFactor} />. The plan starts from
            these heights.
          </Text>
          {isWorking ? (
            <Text>Working out what that changes …</Text>
          ) : !planBefore ? (
            <Text>
              They were saved before there was a plan to compare with: what they change is not
              known.
            </Text>
          ) : plan === planBefore ? (
            <Text>So far the plan is as it was.</Text>
          ) : (
            changedByWalk(planBefore, plan, {
              sayDate,
              sayBales: (bales) => formatValue(bales, 'bales', farm),
            }).map((sentence) => <Text key={sentence}>{sentence}</Text>)
          )}
          {plan.paddocks.map((part) =>
            part.deviation ? (
              <div key={part.id}>
                {part.name}: <Num of={part.deviation} /> against what was expected
              </div>
            ) : null,
          )}
        </Alert>
      )}
      <div className="walk-rows">
        {picture.paddocks.map((paddock) => {
          const part = plan?.paddocks.find((p) => p.id === paddock.id);
          const usual =
            expected(paddock.id) ??
            expected(paddock.id, picture.today) ??
            part?.lastReading?.heightCm ??
            10;
          const cm = heights[paddock.id] ?? usual;
          const shown = toShown(cm, 'cm', farm.units);
          const isRead = paddock.id in heights;
          const put = (value: number) => {
            const { [paddock.id]: _gone, ...otherTexts } = texts;
            setTexts(otherTexts);
            noLongerMeant(paddock.id);
            setHeights({
              ...heights,
              [paddock.id]: fromShown(Math.max(0, value), 'cm', farm.units),
            });
          };
          const step = STEP[farm.units];
          const stepped = (by: number) => put(Math.round((shown + by) / step) * step);
          return (
            <div key={paddock.id} className="walk-row">
              <div>
                <Text fw={600}>{paddock.name}</Text>
                <Text size="sm" c="dimmed">
                  {part?.lastReading
                    ? `${formatMeasured(part.lastReading.heightCm, 'cm', farm)} on ${sayDate(part.lastReading.date)}`
                    : 'not read yet'}
                </Text>
              </div>
              <Button
                variant="default"
                p={0}
                aria-label={`${paddock.name}: lower`}
                onClick={() => stepped(-step)}
              >
                −
              </Button>
              <span className="walk-box">
                <input
                  className="walk-height"
                  inputMode="decimal"
                  aria-label={`${paddock.name}, ${unit}`}
                  value={texts[paddock.id] ?? (isRead ? String(Number(shown.toFixed(1))) : '')}
                  aria-invalid={isWrong(paddock.id)}
                  placeholder={String(Number(shown.toFixed(1)))}
                  onChange={(event) => {
                    const text = event.currentTarget.value;
                    const { [paddock.id]: _gone, ...others } = heights;
                    const height = heightIn(text);
                    setTexts({ ...texts, [paddock.id]: text });
                    noLongerMeant(paddock.id);
                    setHeights(height === undefined ? others : { ...others, [paddock.id]: height });
                  }}
                />
                <span aria-hidden>{!/[^\d.,\s]/.test(texts[paddock.id] ?? '') && unit}</span>
              </span>
              <Button
                variant="default"
                p={0}
                aria-label={`${paddock.name}: higher`}
                onClick={() => stepped(step)}
              >
                +
              </Button>
              {isWrong(paddock.id) && (
                <Text size="sm" c="stop" role="alert" className="walk-wrong">
                  {texts[paddock.id]} is not a height of grass: type 0 to{' '}
                  {formatValue(TALLEST_CM, 'cm', farm)}.
                </Text>
              )}
              {oddOf(paddock.id) !== undefined && !isWrong(paddock.id) && (
                <Checkbox
                  className="walk-wrong"
                  label={`About ${formatValue(oddOf(paddock.id)!, 'cm', farm)} was expected. ${formatMeasured(cm, 'cm', farm)} is right`}
                  checked={meant.has(paddock.id)}
                  onChange={() => {
                    const next = new Set(meant);
                    if (!next.delete(paddock.id)) next.add(paddock.id);
                    setMeant(next);
                  }}
                />
              )}
            </div>
          );
        })}
      </div>
      <Button
        className="walk-save"
        styles={{ label: { whiteSpace: 'normal' } }}
        size="lg"
        disabled={
          read === 0 ||
          Object.keys(texts).some(isWrong) ||
          0 < asked.length ||
          (doubt !== undefined && meantDay !== date)
        }
        loading={save.isPending}
        onClick={() => {
          setPlanBefore(plan);
          save.mutate(
            Object.entries(heights).map(([paddockId, heightCm]) => ({
              paddockId,
              date,
              heightCm: Math.round(heightCm * 10) / 10,
              ...(meant.has(paddockId) ? { isSure: true } : {}),
            })),
            {
              onSuccess: () => {
                setHeights({});
                setTexts({});
                setMeant(new Set());
              },
            },
          );
        }}
      >
        Save {read === 1 ? '1 height' : `${read} heights`}, {sayDate(date)}
      </Button>
      <Kept picture={picture} farm={farm} />
    </>
  );
}

const SHOWN_READINGS = 24;

/** The last readings, each of which can be taken back. */
function Kept({ picture, farm }: { picture: FarmPicture; farm: SavedFarm }) {
  const sayDate = useSayDate();
  const remove = useRemove(farm, 'grass-readings');
  const last = [...picture.readings].reverse().slice(0, SHOWN_READINGS);
  if (last.length === 0) return null;
  return (
    <Folded id="readings" title="Readings saved" answer={`The last on ${sayDate(last[0]!.date)}`}>
      <Failure error={remove.error} />
      <div className="rows">
        {last.map((reading) => {
          const name = picture.paddocks.find((p) => p.id === reading.paddockId)?.name ?? '';
          const text = `${name}, ${sayDate(reading.date)}: ${formatMeasured(reading.heightCm, 'cm', farm)}`;
          return (
            <Group key={reading.id} justify="space-between" wrap="nowrap">
              <Text>{text}</Text>
              {reading.isOfMove ? (
                <Text size="sm">told with the move</Text>
              ) : (
                <ConfirmButton
                  label={`Delete ${text}`}
                  question={`Delete ${text}?`}
                  onConfirm={() => remove.mutate(reading)}
                >
                  Delete
                </ConfirmButton>
              )}
            </Group>
          );
        })}
      </div>
    </Folded>
  );
}
