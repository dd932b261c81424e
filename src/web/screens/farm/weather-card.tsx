import { Button, Card, FileInput, Group, Stack, Switch, Text, Title } from '@mantine/core';
import {
  useAllowFetch,
  useFetchWeather,
  useForgetWeather,
  useImportCsv,
  type SavedFarm,
  type WeatherView,
} from '../../api/queries.js';
import { Failure } from '../../shell/states.js';
import { EstimateCard } from './estimate-card.js';

/** The three ways weather comes in, and the one in use. */
export function WeatherCard({ farm, weather }: { farm: SavedFarm; weather: WeatherView }) {
  const farmId = farm.id;
  const allow = useAllowFetch(farmId);
  const { fetchNow, isFetching, error } = useFetchWeather(farmId);
  const importCsv = useImportCsv(farmId);
  const forget = useForgetWeather(farmId);
  return (
    <Card withBorder component="section">
      <Title order={2} size="h3">
        Weather
      </Title>
      <Text my="xs">
        In use: <b>{weather.label}</b>
        {0 < weather.forecastDays && `, with a forecast of ${weather.forecastDays} days`}. With
        three years or more of daily weather the plan can say how likely its warm nights are.
      </Text>
      <Stack gap="md">
        {weather.inUse === 'monthly-means' && 0 < (farm.estimated?.length ?? 0) && (
          <EstimateCard farm={farm} />
        )}
        <FileInput
          label="Daily file (CSV)"
          description="Columns: date, tmin_c or tmin_f, tmax_c or tmax_f, and if you like prcp_mm or prcp_in; other names too, where they say the unit."
          placeholder="Choose a file"
          accept=".csv,text/csv"
          size="md"
          clearable
          onChange={(file) => {
            if (file) void file.text().then((text) => importCsv.mutate(text));
          }}
        />
        <Failure error={importCsv.error} words={{ labelOf: placeInFile, reader: farm }} />
        {0 < weather.csvDays && (
          <Group>
            <Text>{weather.csvDays.toLocaleString('en')} days from your file.</Text>
            <Button variant="default" onClick={() => forget.mutate('csv')}>
              Forget the file
            </Button>
          </Group>
        )}
        <Switch
          size="md"
          checked={weather.fetchAllowed}
          onChange={(event) => allow.mutate(event.currentTarget.checked)}
          label="Fetch weather for this farm’s coordinates from Open-Meteo"
          description="Off unless you switch it on: the coordinates are sent to that public service. Thirty years of history and the forecast are then kept on this computer."
        />
        {weather.fetchAllowed && (
          <Group>
            <Button
              variant="light"
              loading={isFetching}
              onClick={() => {
                // What goes wrong is shown below.
                fetchNow(undefined).catch(() => undefined);
              }}
            >
              Fetch now
            </Button>
            {0 < weather.fetchedDays && (
              <>
                <Text>{weather.fetchedDays.toLocaleString('en')} days kept.</Text>
                <Button variant="default" onClick={() => forget.mutate('fetched')}>
                  Forget them
                </Button>
              </>
            )}
          </Group>
        )}
        <Failure error={error ?? allow.error ?? forget.error} />
      </Stack>
    </Card>
  );
}

/** csv.row12.tmin_f → Line 12, tmin_f. */
function placeInFile(field: string): string | undefined {
  const row = /^csv\.row(\d+)(?:\.(\w+))?$/.exec(field);
  if (row) return `Line ${row[1]}${row[2] ? `, ${row[2]},` : ''}`;
  return { csv: 'The file', 'csv.header': 'The header line', 'csv.rows': 'The number of days' }[
    field
  ];
}
