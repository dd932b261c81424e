import { LARGEST_PHOTO_BYTES, PHOTO_EDGE_PX } from '../../../shared/farm/photo.js';

/** A file that no camera makes is not even opened, MB. */
const LARGEST_FILE_MB = 100;
/** Tried one after the other, until a photo is small enough: part of the edge, and how well it is kept. */
const TRIES = [
  [1, 0.82],
  [1, 0.6],
  [0.6, 0.6],
] as const;

/** Why a file cannot be used as a photo, as it is said to whoever chose it. */
export class NoPhoto extends Error {}

/**
 * A photo as it is kept and sent: its longer edge as `PHOTO_EDGE_PX` says, upright, and without what
 * the camera wrote into it, such as where it was taken.
 *
 * @throws NoPhoto when the file is too large, or no picture that this phone can read
 */
export async function smallerPhoto(file: File): Promise<Blob> {
  if (LARGEST_FILE_MB * 1e6 < file.size) {
    const mb = Math.ceil(file.size / 1e6);
    throw new NoPhoto(
      `“${file.name}” has ${mb} MB. A photo may have up to ${LARGEST_FILE_MB} MB: choose another.`,
    );
  }
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => {
    throw new NoPhoto(`“${file.name}” is no picture that can be read here. Choose a photo.`);
  });
  try {
    for (const [ofEdge, quality] of TRIES) {
      const jpeg = await drawn(picture, PHOTO_EDGE_PX * ofEdge, quality);
      if (jpeg && jpeg.size <= LARGEST_PHOTO_BYTES) return jpeg;
    }
  } finally {
    picture.close();
  }
  throw new NoPhoto(`“${file.name}” could not be made small enough to be sent. Choose another.`);
}

function drawn(picture: ImageBitmap, edgePx: number, quality: number): Promise<Blob | null> {
  const scale = Math.min(1, edgePx / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext('2d')!;
  // What is clear in a drawing would turn black.
  pen.fillStyle = 'white';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
}
