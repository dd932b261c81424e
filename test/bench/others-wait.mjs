/* global AbortController */
/**
 * How long a plain request waits while a heavy one, within the limits, is answered. The heavy
 * request comes from a farm of its own; whoever waits reads a small farm.
 */
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { parse } from 'jsonc-parser';

const PLAIN_EVERY_MS = 10;
const CALM_MS = 2000;
/** Nothing takes longer to be measured: what is not answered by then is said to have taken this. */
const MOST_MS = 60_000;

const example = (name) =>
  parse(
    readFileSync(new URL(`../support/examples/${name}.jsonc`, import.meta.url), 'utf8'),
    undefined,
    { allowTrailingComma: true },
  );
const household = example('household');
const pasture = example('pasture');

/**
 * @param url of the program that was started for this, without a slash at its end
 * @param print prints one figure: name, value, unit, number of requests
 */
export async function benchOthersWait(url, print) {
  const json = { 'content-type': 'application/json' };
  const sendText = (path, body, signal) =>
    fetch(url + path, { method: 'POST', headers: json, body, signal });
  const post = (path, body, signal) => sendText(path, JSON.stringify(body), signal);
  /** A request whose body is made before the clock runs. */
  const ready = (path, body) => {
    const text = JSON.stringify(body);
    return () => sendText(path, text);
  };
  const newFarm = async () => (await (await post('/api/farms/sample')).json()).id;
  const small = `${url}/api/farms/${await newFarm()}`;
  const heavy = `/api/farms/${await newFarm()}`;
  const csv = (text) => () =>
    fetch(`${url}${heavy}/weather/csv`, {
      method: 'PUT',
      headers: { 'content-type': 'text/csv' },
      body: text,
    });
  await fetch(`${url}${heavy}/work`).then((answer) => answer.text());

  const rounds = await (await post(`${heavy}/paddocks/geojson`, outlines(3, 500, 0.0015))).json();
  const round = (k) => `${heavy}/paddocks/${rounds[k].id}`;

  const requests = {
    'nothing else': () => new Promise((resolve) => setTimeout(resolve, CALM_MS)),
    'CSV with a header of 11.9 million commas': csv(`date${','.repeat(11_900_000)}`),
    'CSV of 30 years': csv(dailyCsv(30)),
    'work after a change, 30 years of weather kept': async () => {
      await post(`${heavy}/people`, { name: 'Helper', away: [] });
      return fetch(`${url}${heavy}/work`);
    },
    'chances over 1,000 years of weather': () => fetch(`${url}${heavy}/work/outlook`),
    'JSON with 80,000 unknown fields': ready('/api/farms', fieldsOf(80_000)),
    'JSON with 100,000 objects in a list': ready('/api/plans/work', {
      ...household,
      people: Array(100_000).fill({ name: '' }),
    }),
    'a list of 300,000 numbers': ready('/api/farms', { monthlyMinC: Array(300_000).fill(1) }),
    'GeoJSON of 200 outlines of 100 corners': ready(
      `${heavy}/paddocks/geojson/preview`,
      outlines(200, 100),
    ),
    'cutting an outline of 500 corners into 20': () => post(`${round(0)}/split`, { parts: 20 }),
    'joining two outlines of 500 corners': () =>
      post(`${heavy}/paddocks/join`, { ids: [rounds[1].id, rounds[2].id], name: 'Both' }),
    'a household sent whole, 12 paddocks': ready('/api/plans/work', householdOf(12)),
    'a household sent whole, 60 paddocks': ready('/api/plans/work', householdOf(60)),
    'a household sent whole, 200 paddocks': ready('/api/plans/work', householdOf(200)),
    'a pasture sent whole, 200 paddocks': ready('/api/pasture/preview', pastureOf(200)),
    'arrival weeks of a year': ready('/api/plans/arrivals', {
      ...example('order'),
      from: '2027-01-01',
      to: '2027-12-31',
    }),
  };
  for (const [name, request] of Object.entries(requests)) {
    const { waits, status, ms } = await whileAnswered(small, request);
    const sorted = waits.sort((a, b) => a - b);
    const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))];
    const n = sorted.length;
    print(`others wait, p95, while: ${name} (answers ${status})`, at(0.95), 'ms', n);
    print(`others wait, longest, while: ${name}`, at(1), 'ms', n);
    print(`answered after: ${name}`, ms, 'ms', 1);
  }
  await goneAsker({ url, post, newFarm, print });
}

/** What plain requests waited while a heavy one was answered. */
async function whileAnswered(plain, request) {
  const waits = [];
  let isAnswered = false;
  const asking = (async () => {
    while (!isAnswered || waits.length < 5) {
      const start = performance.now();
      await (await fetch(plain)).text();
      waits.push(performance.now() - start);
      await new Promise((resolve) => setTimeout(resolve, PLAIN_EVERY_MS));
    }
  })();
  const start = performance.now();
  const late = new Promise((resolve) => setTimeout(resolve, MOST_MS).unref());
  const answer = await Promise.race([request(), late]);
  if (answer?.text) await answer.text();
  const ms = performance.now() - start;
  isAnswered = true;
  await asking;
  return { waits, status: answer?.status ?? 'nothing', ms };
}

/** Another farm's plan after a heavy one was asked for, whose asker has gone. */
async function goneAsker({ url, post, newFarm, print }) {
  const farm = await newFarm();
  const gone = Array.from({ length: 4 }, () => new AbortController());
  const left = gone.map(({ signal }) =>
    post('/api/pasture/preview', pastureOf(200), signal).catch(() => undefined),
  );
  await new Promise((resolve) => setTimeout(resolve, 500));
  for (const each of gone) each.abort();
  await Promise.all(left);
  const start = performance.now();
  await (await fetch(`${url}/api/farms/${farm}/work`)).text();
  print(
    'another farm’s plan, after four heavy ones were given up',
    performance.now() - start,
    'ms',
    1,
  );
}

const fieldsOf = (count) =>
  Object.fromEntries(Array.from({ length: count }, (_, i) => [`u${i}`, 1]));

const paddocksOf = (count) =>
  Array.from({ length: count }, (_, k) => {
    const { outline, ...paddock } = pasture.paddocks[k % pasture.paddocks.length];
    const areaM2 = outline ? 3000 : paddock.areaM2;
    return { ...paddock, id: `p${k}`, name: `Paddock ${k}`, areaM2 };
  });
/** Herds that stand nowhere, because the paddocks are others. */
const herdsOf = () =>
  pasture.herds.map((herd) =>
    Object.fromEntries(
      Object.entries(herd).filter(([name]) => !/^in(PaddockId|Since)$/.test(name)),
    ),
  );
const pastureOf = (count) => ({
  farm: pasture.farm,
  today: pasture.today,
  paddocks: paddocksOf(count),
  herds: herdsOf(),
});
const householdOf = (count) => ({ ...household, paddocks: paddocksOf(count), herds: herdsOf() });

/** Circles that do not cross themselves; those nearer than 0.002 degrees cross each other. */
const outlines = (count, corners, apartDeg = 0.01) => ({
  type: 'FeatureCollection',
  features: Array.from({ length: count }, (_, k) => {
    const ring = Array.from({ length: corners }, (_each, i) => {
      const angle = (2 * Math.PI * i) / corners;
      return [k * apartDeg + Math.cos(angle) / 1000, 45 + Math.sin(angle) / 1000].map(
        (degrees) => Math.round(degrees * 1e6) / 1e6,
      );
    });
    return {
      type: 'Feature',
      properties: { name: `Field ${k}` },
      geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]]] },
    };
  }),
});

function dailyCsv(years) {
  const lines = ['date,tmin_c,tmax_c,prcp_mm'];
  for (let year = 2024 - years; year < 2024; year++) {
    for (let day = 0; day < 365; day++) {
      const date = new Date(Date.UTC(year, 0, 1 + day)).toISOString().slice(0, 10);
      const meanC = 7 - 15 * Math.cos((2 * Math.PI * (day - 15)) / 365) + ((day * 37) % 11) - 5;
      lines.push(`${date},${(meanC - 6).toFixed(1)},${(meanC + 6).toFixed(1)},${(day * 7) % 9}`);
    }
  }
  return lines.join('\n');
}
