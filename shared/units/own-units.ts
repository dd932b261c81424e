import type { UnitSystem } from './unit.js';

const NUMBER = '[−-]?\\d[\\d.,]*';
const RANGE = `${NUMBER}(?:(?: to |–)${NUMBER})?`;
/** A figure in both systems, as texts that everybody shares write it: 7.2 °C (45 °F). */
const IN_BOTH = new RegExp(
  `(${RANGE} (?:°C|cm|mm|m|kg|g|L)) \\((${RANGE} (?:°F|in|ft|lb|oz|gal))((?:; [^()]*)?)\\)`,
  'g',
);

/** A text whose figures stand in both systems, with those of one: 45 °F, not 7.2 °C (45 °F). */
export function inOwnUnits(text: string, units: UnitSystem): string {
  if (!text.includes(' (')) return text;
  return text.replace(
    IN_BOTH,
    (_both, metric: string, us: string, more: string) =>
      `${units === 'us' ? us : metric}${more === '' ? '' : ` (${more.slice(2)})`}`,
  );
}
