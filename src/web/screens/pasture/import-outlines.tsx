import './pasture.css';
import { Button, FileButton, Group, Modal, SimpleGrid, Stack, Switch, Text } from '@mantine/core';
import { useState } from 'react';
import {
  PRODUCTIVITIES,
  STANDS,
  type Productivity,
  type Stand,
} from '../../../../shared/farm/paddock.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import {
  useFindInGeoJson,
  useImportGeoJson,
  type FoundInGeoJson,
  type Ground,
} from '../../api/pasture-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import { Select } from '../../fields/select.js';
import { Failure } from '../../shell/states.js';

const USUAL: Ground = {
  forageId: 'mixed',
  stand: 'good',
  productivity: 'medium',
  soilId: 'loam',
  hasWater: true,
  hasShade: false,
};
const named = <T extends string>(ids: readonly T[]) => ids.map((id) => ({ id, name: id }));
const counted = (count: number): string => `${count} ${count === 1 ? 'paddock' : 'paddocks'}`;

interface Read {
  readonly fileName: string;
  readonly document: object;
  readonly found: FoundInGeoJson;
}

/** Reads a GeoJSON file, shows what is in it, asks what grows there, and only then saves. */
export function ImportOutlines({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const [unread, setUnread] = useState<Error>();
  const [read, setRead] = useState<Read>();
  const [added, setAdded] = useState<number>();
  const find = useFindInGeoJson(farm.id);
  const words = { labelOf: placeInWords, reader: farm };
  const open = async (file: File | null) => {
    if (!file) return;
    setUnread(undefined);
    setAdded(undefined);
    find.reset();
    let document: object;
    try {
      document = JSON.parse(await file.text()) as object;
    } catch {
      setUnread(new Error(`${file.name} is not JSON. Export the paddocks as GeoJSON.`));
      return;
    }
    find.mutate(document, {
      onSuccess: (found) => setRead({ fileName: file.name, document, found }),
    });
  };
  return (
    <>
      <FileButton accept=".geojson,.json,application/geo+json" onChange={(f) => void open(f)}>
        {(props) => (
          <Button variant="default" loading={find.isPending} {...props}>
            Import outlines (GeoJSON)
          </Button>
        )}
      </FileButton>
      {added !== undefined && <Text role="status">{counted(added)} added.</Text>}
      <Failure error={unread ?? find.error} words={words} />
      {read && (
        <Modal
          opened
          onClose={() => setRead(undefined)}
          title={`${counted(read.found.paddocks.length)} in ${read.fileName}`}
          size="lg"
          closeButtonProps={{ 'aria-label': 'Close' }}
        >
          <GroundForAll
            farm={farm}
            tables={tables}
            read={read}
            onDone={(count) => {
              setRead(undefined);
              setAdded(count);
            }}
          />
        </Modal>
      )}
    </>
  );
}

function GroundForAll({
  farm,
  tables,
  read: { document, found },
  onDone,
}: {
  farm: SavedFarm;
  tables: Tables;
  read: Read;
  onDone: (added: number | undefined) => void;
}) {
  const [ground, setGround] = useState(USUAL);
  const save = useImportGeoJson(farm.id);
  const set = (part: Partial<{ [K in keyof Ground]: Ground[K] | undefined }>) =>
    setGround({ ...ground, ...part } as Ground);
  return (
    <Stack>
      <ul className="found-paddocks" tabIndex={0} aria-label="Paddocks in the file">
        {found.paddocks.map((paddock, i) => (
          <li key={i}>
            <b>{paddock.name}</b>, {formatValue(paddock.areaM2, 'ha', farm)}
            {ownWords(paddock.own, tables)}
            {0 < paddock.notUsed.length && (
              <Text size="sm" c="stop">
                Not understood, so that what you choose below is taken: {paddock.notUsed.join(', ')}
              </Text>
            )}
          </li>
        ))}
      </ul>
      {0 < found.leftOut.length && (
        <Text size="sm">Left out, as no paddocks: {found.leftOut.join('; ')}.</Text>
      )}
      <Text fw={600}>For all of them, unless the file says otherwise</Text>
      <SimpleGrid cols={{ base: 1, xs: 2 }}>
        <Select
          label="What grows there"
          value={ground.forageId}
          options={tables.forages}
          onChange={(forageId) => set({ forageId })}
        />
        <Select<Stand>
          label="Stand"
          value={ground.stand}
          options={named(STANDS)}
          onChange={(stand) => set({ stand })}
        />
        <Select<Productivity>
          label="Growth"
          value={ground.productivity}
          options={named(PRODUCTIVITIES)}
          onChange={(productivity) => set({ productivity })}
        />
        <Select
          label="Soil"
          value={ground.soilId}
          options={tables.soils}
          onChange={(soilId) => set({ soilId })}
        />
        <Switch
          label="Water in them"
          checked={ground.hasWater}
          onChange={(e) => set({ hasWater: e.currentTarget.checked })}
        />
        <Switch
          label="Shade in them"
          checked={ground.hasShade}
          onChange={(e) => set({ hasShade: e.currentTarget.checked })}
        />
      </SimpleGrid>
      <Text size="sm">Each can be changed by itself afterward.</Text>
      <Failure error={save.error} words={{ labelOf: placeInWords, reader: farm }} />
      <Group>
        <Button
          loading={save.isPending}
          onClick={() =>
            save.mutate({ ...document, ...ground }, { onSuccess: (saved) => onDone(saved.length) })
          }
        >
          Add {counted(found.paddocks.length)}
        </Button>
        <Button variant="subtle" onClick={() => onDone(undefined)}>
          Back
        </Button>
      </Group>
    </Stack>
  );
}

/** What the file itself says of a paddock's ground, in words. */
function ownWords(own: Partial<Ground>, tables: Tables): string {
  const words = [
    tables.forages.find((f) => f.id === own.forageId)?.name.toLowerCase(),
    own.stand && `${own.stand} stand`,
    own.productivity && `${own.productivity} growth`,
    tables.soils.find((s) => s.id === own.soilId)?.name.toLowerCase(),
    own.hasWater === undefined ? undefined : own.hasWater ? 'water' : 'no water',
    own.hasShade === undefined ? undefined : own.hasShade ? 'shade' : 'no shade',
  ].filter((word) => word !== undefined);
  return words.length === 0 ? '' : `; from the file: ${words.join(', ')}`;
}

/** `geojson.features.2.areaM2` as somebody with the file open would say it. */
function placeInWords(field: string): string | undefined {
  const place = /^geojson\.features\.(\d+)(.*)$/.exec(field);
  if (!place) return field === 'geojson' ? 'The file' : undefined;
  const corner = /^\.(\d+)$/.exec(place[2]!);
  const of = place[2]!.endsWith('.areaM2')
    ? ', area,'
    : corner
      ? `, corner ${Number(corner[1]) + 1},`
      : '';
  return `Feature ${Number(place[1]) + 1} of the file${of}`;
}
