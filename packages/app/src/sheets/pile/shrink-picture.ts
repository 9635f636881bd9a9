// A phone's picture made small enough to keep hundreds of: damage and marks can still be seen.

/** Longest side that is kept, pixels. */
const LONGEST = 1280;
const QUALITY = 0.8;

/** The picture as a JPEG of at most 1280 pixels. Throws where the file is no picture. */
export async function shrinkPicture(file: Blob): Promise<Blob> {
  const bitmap = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(bitmap.width * scale);
  canvas.height = Math.round(bitmap.height * scale);
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('the picture could not be drawn'))),
      'image/jpeg',
      QUALITY,
    );
  });
}
