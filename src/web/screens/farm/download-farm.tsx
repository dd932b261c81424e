import { Button, Card, Stack, Text, Title } from '@mantine/core';
import { useDownloadFarm } from '../../api/queries.js';
import { Failure } from '../../shell/states.js';

/** The farm as one file to keep, or to read on another computer. */
export function DownloadFarm({ farmId }: { farmId: string }) {
  const download = useDownloadFarm(farmId);
  return (
    <Card withBorder component="section" className="no-print">
      <Title order={2} size="h3">
        Download this farm
      </Title>
      <Text my="xs">
        Everything you have entered, as one file: to keep as a copy, or to read on another computer.
        It holds names, phone numbers and where the farm is.
      </Text>
      <Stack gap="sm" align="start">
        <Button
          variant="default"
          loading={download.isPending}
          onClick={() => download.mutate(undefined, { onSuccess: save })}
        >
          Download this farm
        </Button>
        <Failure error={download.error} />
        {download.data && <Text role="status">Downloaded as {download.data.name}.</Text>}
      </Stack>
    </Card>
  );
}

/** Hands a file to the browser, which asks where to keep it. */
function save({ file, name }: { file: Blob; name: string }): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  // Some browsers read it only after a while.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
