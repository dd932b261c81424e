import { Group, Stack, Text } from '@mantine/core';
import { useMemo, useState } from 'react';
import { batchFields } from '../../../shared/farm/batch.js';
import { problemsOfNumber, whole } from '../../../shared/farm/bounds.js';
import { number } from '../../../shared/farm/field.js';
import { forecastDayFields } from '../../../shared/farm/forecast.js';
import { putBack } from '../../../shared/farm/put-back.js';
import type { FarmPicture, NamedBatch } from '../../../shared/farm/picture.js';
import { inSpell, noneHurtSaid } from '../../../shared/plan/mishap/spell.js';
import { saySpellOnGrass } from '../../../shared/plan/mishap/spell-on-grass.js';
import {
  forecastWith,
  spellAhead,
  withSpell,
  type Spell,
} from '../../../shared/plan/mishap/typed-weather.js';
import type { Tables } from '../../../shared/tables/tables.js';
import { usePicture, useSave, useTables } from '../api/queries.js';
import { useTypeForecast } from '../api/work-queries.js';
import { wordsOfRow } from '../fields/field-words.js';
import { QuantityInput } from '../fields/quantity-input.js';
import { usePasturePlan } from '../screens/pasture/use-pasture.js';
import { Failure, useAll } from '../shell/states.js';
import { useAfterDrawn } from '../shell/use-after-drawn.js';
import type { MishapProps } from './mishap-props.js';
import { Cautions, Follows, KeepOrLeave, MishapCard } from './mishap-parts.js';

const DAYS = {
  cold: number('Nights', whole(1, 14, 'count', 'Give 1 to 14 nights.')),
  hot: number('Days', whole(1, 14, 'count', 'Give 1 to 14 days.')),
};
const AIR = { cold: forecastDayFields.fields.minC, hot: forecastDayFields.fields.maxC };

/** Cold nights or hot days that are coming: who is at risk, and what can be done. */
export default function SpellAsked(props: MishapProps & { readonly kind: Spell['kind'] }) {
  const all = useAll(usePicture(props.farm.id), useTables());
  if ('waiting' in all) return all.waiting;
  const [picture, tables] = all.data;
  return <Asked {...props} picture={picture} tables={tables} />;
}

function Asked({
  farm,
  kind,
  picture,
  tables,
  onDone,
  onBack,
}: MishapProps & {
  readonly kind: Spell['kind'];
  readonly picture: FarmPicture;
  readonly tables: Tables;
}) {
  const [start] = useState(() => spellAhead(picture, kind, tables.judgements.alarms));
  const [airC, setAirC] = useState<number | undefined>(start.airC);
  const [days, setDays] = useState<number | undefined>(start.days);
  const isRight =
    airC !== undefined &&
    days !== undefined &&
    problemsOfNumber('', airC, AIR[kind].bounds).length === 0 &&
    problemsOfNumber('', days, DAYS[kind].bounds).length === 0;
  const spell = useMemo<Spell | undefined>(
    () => (isRight ? { kind, airC, days } : undefined),
    [isRight, kind, airC, days],
  );
  const settled = useAfterDrawn(spell);
  const mishaps = useMemo(
    () => (settled ? inSpell(picture, tables, settled) : []),
    [settled, picture, tables],
  );
  const type = useTypeForecast(farm.id);
  const words = wordsOfRow(batchFields, farm);
  const save = useSave<NamedBatch>(farm.id, 'batches', words);
  const back = useSave<NamedBatch>(farm.id, 'batches', words, { isPutBack: true });
  const keep = (said: string, batch: NamedBatch): void => {
    const before = picture.batches.find(({ id }) => id === batch.id)!;
    save.mutate(batch, {
      onSuccess: (saved) => {
        const row = putBack<NamedBatch>(before, batch, saved);
        onDone({ words: `${batch.name}: ${said}`, undo: () => back.mutateAsync(row) });
      },
    });
  };
  const keepForecast = (wanted: Spell): void =>
    type.mutate(forecastWith(picture, wanted), {
      onSuccess: () =>
        onDone({
          words: `${kind === 'cold' ? 'Cold nights' : 'Hot days'} in the forecast`,
          undo: () => type.mutateAsync(picture.climate.forecast ?? []),
        }),
    });
  return (
    <Stack gap="sm">
      <Group align="end">
        <QuantityInput
          label={kind === 'cold' ? 'Lowest at night' : 'Hottest by day'}
          field={AIR[kind]}
          units={farm.units}
          value={airC}
          data-autofocus
          onChange={setAirC}
        />
        <QuantityInput
          label={kind === 'cold' ? 'Nights, from tonight' : 'Days, from today'}
          field={DAYS[kind]}
          units={farm.units}
          value={days}
          onChange={setDays}
        />
      </Group>
      <Stack gap="md" role="status">
        {mishaps.map((mishap) => (
          <MishapCard
            key={mishap.name}
            mishap={mishap}
            onKeep={(way) => way.batch && keep(way.words, way.batch)}
          />
        ))}
        {settled && mishaps.length === 0 && <Text>{noneHurtSaid(picture, tables)}</Text>}
      </Stack>
      {settled && 0 < picture.herds.length && (
        <OnGrass picture={picture} tables={tables} spell={settled} />
      )}
      <Cautions of={mishaps} />
      <Failure error={type.error ?? save.error} />
      <KeepOrLeave
        keep="Keep it as forecast"
        isOff={!spell}
        isKeeping={type.isPending}
        onKeep={() => spell && keepForecast(spell)}
        onBack={onBack}
      />
    </Stack>
  );
}

/** Days of turn-out and moves that come otherwise once the spell is kept as forecast. */
function OnGrass({
  picture,
  tables,
  spell,
}: {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly spell: Spell;
}) {
  const changed = useMemo(() => withSpell(picture, spell), [picture, spell]);
  const before = usePasturePlan(picture, tables);
  const after = usePasturePlan(changed, tables);
  const isWorking = before.isWorking || after.isWorking;
  const lines =
    isWorking || !before.plan || !after.plan
      ? []
      : saySpellOnGrass(picture, before.plan, after.plan);
  return (
    <div role="status">
      {isWorking && <Text>The grass is planned again …</Text>}
      {0 < lines.length && (
        <section className="mishap-card" aria-label="Grass">
          <h3>Grass, once it is kept</h3>
          <Follows lines={lines} label="What follows for the grass" />
        </section>
      )}
    </div>
  );
}
