import { Card, FileInput, Loader, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { useReadFarm } from '../../api/queries.js';
import { Failure } from '../../shell/states.js';

/** Problems with the file, with a word for it that stands on the screen. */
const WORDS = {
  labelOf: (field: string) => (field === 'file' ? 'The file' : undefined),
  reader: { units: 'us', currency: 'USD' },
} as const;

/** Makes a farm of a file that was downloaded here or on another computer. */
export function ReadFarm() {
  const [, go] = useLocation();
  const [file, setFile] = useState<File | null>(null);
  const read = useReadFarm();
  return (
    <Card withBorder component="section">
      <Title order={2} size="h3">
        Read a farm from a file
      </Title>
      <Stack gap="sm" mt="sm">
        <FileInput
          label="Farm file"
          description="One that “Download this farm” made. It comes as a farm of its own; farms you have stay as they are."
          placeholder="Choose a file"
          accept=".zip,application/zip"
          size="md"
          value={file}
          disabled={read.isPending}
          onChange={(chosen) => {
            setFile(chosen);
            if (!chosen) return;
            read.mutate(chosen, {
              onSuccess: (farm) => go(`/farm/${farm.id}/today`),
              // The same file may be chosen again once it is whole.
              onError: () => setFile(null),
            });
          }}
        />
        {read.isPending && (
          <Text role="status">
            <Loader size="xs" mr="xs" /> Reading the farm …
          </Text>
        )}
        <Failure error={read.error} words={WORDS} />
      </Stack>
    </Card>
  );
}
