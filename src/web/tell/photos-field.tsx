import { Button, FileButton, Group, Stack, Text } from '@mantine/core';
import { useRef, useState } from 'react';
import { MOST_PHOTOS } from '../../../shared/farm/photo.js';
import { takePhoto } from '../api/photos.js';
import { Photos } from './photos.js';

type Ids = readonly string[] | undefined;

interface Props {
  readonly farmId: string;
  readonly value: Ids;
  readonly error?: string | undefined;
  readonly onChange: (change: (ids: Ids) => Ids) => void;
}

/** Photos of a note: taken or chosen, made smaller on the phone, and kept there until they are sent. */
export function PhotosField({ farmId, value = [], error, onChange }: Props) {
  const [whyNot, setWhyNot] = useState<string>();
  const [isBusy, setBusy] = useState(false);
  const reset = useRef<() => void>(null);
  const take = async (files: readonly File[]): Promise<void> => {
    setBusy(true);
    setWhyNot(undefined);
    const room = MOST_PHOTOS - value.length;
    for (const file of files.slice(0, room)) {
      const taken = await takePhoto(farmId, file);
      if ('why' in taken) setWhyNot(taken.why);
      else onChange((ids = []) => [...ids, taken.id]);
    }
    if (room < files.length) setWhyNot(`A note has up to ${MOST_PHOTOS} photos.`);
    // The same file can be chosen again.
    reset.current?.();
    setBusy(false);
  };
  return (
    <Stack gap="xs" style={{ gridColumn: '1 / -1' }}>
      <Photos farmId={farmId} ids={value} of="not told yet" />
      <Group gap="xs">
        <FileButton
          resetRef={reset}
          accept="image/*"
          multiple
          inputProps={{ 'aria-label': 'Photos' }}
          onChange={(files) => void take(files)}
        >
          {(props) => (
            <Button
              {...props}
              variant="default"
              size="md"
              loading={isBusy}
              disabled={MOST_PHOTOS <= value.length}
            >
              {value.length === 0 ? 'Add a photo' : 'Another photo'}
            </Button>
          )}
        </FileButton>
        {0 < value.length && (
          <Button
            variant="subtle"
            size="md"
            onClick={() => onChange((ids = []) => (ids.length < 2 ? undefined : ids.slice(0, -1)))}
          >
            Remove the last
          </Button>
        )}
      </Group>
      {(whyNot ?? error) && (
        <Text role="alert" c="stop">
          {whyNot ?? error}
        </Text>
      )}
    </Stack>
  );
}
