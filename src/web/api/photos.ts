import { useEffect, useState } from 'react';
import type { Entry } from '../kept/entry.js';
import { dropPhotos, keepPhoto, keptPhoto } from '../kept/photo-store.js';
import { NoPhoto, smallerPhoto } from '../kept/smaller-photo.js';
import { putPhoto } from './client.js';
import { newKey } from './new-key.js';

/** Makes a photo of a file and keeps it on the phone; where it is none, says why. */
export async function takePhoto(
  farmId: string,
  file: File,
): Promise<{ readonly id: string } | { readonly why: string }> {
  try {
    const jpeg = await smallerPhoto(file);
    const id = newKey();
    await keepPhoto(id, { farmId, jpeg, atMs: Date.now() });
    return { id };
  } catch (error) {
    if (error instanceof NoPhoto) return { why: error.message };
    throw error;
  }
}

/** Ids of the photos that an entry tells of. */
export const photosOf = ({ message }: Pick<Entry, 'message'>): readonly string[] =>
  message.does === 'tell' ? message.facts.flatMap(({ details }) => photosIn(details)) : [];

export const photosIn = (details: object): readonly string[] =>
  (details as { readonly photos?: readonly string[] }).photos ?? [];

/** Sends the photos of an entry that lie here, before what names them. */
export async function sendPhotos(entry: Entry): Promise<void> {
  for (const id of photosOf(entry)) {
    const photo = await keptPhoto(id);
    if (photo) await putPhoto(`/farms/${entry.farmId}/photos/${id}`, photo.jpeg);
  }
}

/** Lets go of the photos of an entry: the service has them, or nobody wants them. */
export const forgetPhotos = (entry: Entry): Promise<void> => dropPhotos(photosOf(entry));

/** Where a photo is shown from: the phone while it lies here, else the service. */
export function usePhotoUrl(farmId: string, id: string): string | undefined {
  const [url, setUrl] = useState<string>();
  useEffect(() => {
    let made: string | undefined;
    let isLeft = false;
    void keptPhoto(id).then((photo) => {
      if (isLeft) return;
      made = photo && URL.createObjectURL(photo.jpeg);
      setUrl(made ?? `/api/farms/${farmId}/photos/${id}`);
    });
    return () => {
      isLeft = true;
      if (made !== undefined) URL.revokeObjectURL(made);
    };
  }, [farmId, id]);
  return url;
}
