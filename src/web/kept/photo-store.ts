import { createStore, del, entries, get, set, type UseStore } from 'idb-keyval';

/** A photo that was taken into a form here and is not with the service yet. */
export interface KeptPhoto {
  readonly farmId: string;
  readonly jpeg: Blob;
  /** By the phone's clock: only how long ago it was is asked. */
  readonly atMs: number;
}

let opened: UseStore | undefined;
const store = (): UseStore => (opened ??= createStore('broodfold-photos', 'photos'));
/** Those of a browser that keeps nothing, while the page is open. */
const inHand = new Map<string, KeptPhoto>();

/** Keeps a photo on the phone until it is sent. */
export async function keepPhoto(id: string, photo: KeptPhoto): Promise<void> {
  inHand.set(id, photo);
  try {
    await set(id, photo, store());
    inHand.delete(id);
  } catch {
    // It is sent all the same while the page is open.
  }
}

/** A photo that lies here; undefined when it was sent, or was taken on another phone. */
export async function keptPhoto(id: string): Promise<KeptPhoto | undefined> {
  const held = inHand.get(id);
  if (held) return held;
  try {
    return await get<KeptPhoto>(id, store());
  } catch {
    return undefined;
  }
}

export async function dropPhotos(ids: readonly string[]): Promise<void> {
  for (const id of ids) {
    inHand.delete(id);
    await del(id, store()).catch(() => undefined);
  }
}

/** A form that is open elsewhere may still send its photos, ms. */
const DRAFT_MS = 24 * 3_600_000;

/** Lets go of photos that nothing on the phone will send: of forms that were left, and of farms that are gone. */
export async function tidyPhotos(isWanted: (id: string) => boolean): Promise<void> {
  try {
    const all = await entries<string, KeptPhoto>(store());
    const isOld = ({ atMs }: KeptPhoto): boolean => DRAFT_MS < Math.abs(Date.now() - atMs);
    await dropPhotos(all.flatMap(([id, photo]) => (!isWanted(id) && isOld(photo) ? [id] : [])));
  } catch {
    // Nothing is kept, so nothing is left over.
  }
}
