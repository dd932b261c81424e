/**
 * The bytes of the JSON of plain data, put down part by part and their lists item by item: the text
 * of a whole plan is so long that to join it takes three times as long as to write it.
 */
export function jsonBytes(data: object): Uint8Array {
  const parts: Buffer[] = [];
  const put = (text: string): void => void parts.push(Buffer.from(text));
  if (Array.isArray(data)) putList(data, put);
  else putParts(data, put);
  return Buffer.concat(parts);
}

type Put = (text: string) => void;

function putParts(data: object, put: Put): void {
  const parts = Object.entries(data).filter(([, value]) => value !== undefined);
  put('{');
  parts.forEach(([name, value], k) => {
    put(`${k === 0 ? '' : ','}${JSON.stringify(name)}:`);
    if (Array.isArray(value)) putList(value, put);
    else put(JSON.stringify(value));
  });
  put('}');
}

function putList(list: readonly unknown[], put: Put): void {
  put('[');
  list.forEach((item, k) => put(`${k === 0 ? '' : ','}${JSON.stringify(item) ?? 'null'}`));
  put(']');
}
