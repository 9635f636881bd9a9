// The camera's picture in a video, and what the codes in it say.

import { type RefObject, useEffect, useRef, useState } from 'react';
import { codeIn, type Points } from '../../record/code-picture.ts';

/** Larger pictures are made smaller before they are read, points on the longer side. */
const LARGEST = 1600;

/** Shows the camera in the video and reads its codes, until what shows it is gone. */
export function useCamera(
  video: RefObject<HTMLVideoElement | null>,
  hear: (text: string) => void,
): 'asked' | 'on' | 'none' {
  const [camera, setCamera] = useState<'asked' | 'on' | 'none'>('asked');
  const told = useRef(hear);
  told.current = hear;
  useEffect(() => {
    let stream: MediaStream | null = null;
    let ended = false;
    const start = async (): Promise<void> => {
      try {
        // Over plain http there are no media devices at all.
        stream = await navigator.mediaDevices.getUserMedia({
          video: { facingMode: 'environment', width: { ideal: 1280 } },
        });
        if (ended || !video.current) throw new Error('closed meanwhile');
        video.current.srcObject = stream;
        await video.current.play();
        setCamera('on');
        while (!ended && video.current) {
          const text = await codeIn(pointsOf(video.current));
          if (text !== null && !ended) told.current(text);
          await new Promise((next) => setTimeout(next, 120));
        }
      } catch {
        if (!ended) setCamera('none');
      } finally {
        if (ended) stopAll(stream);
      }
    };
    void start();
    return () => {
      ended = true;
      stopAll(stream);
    };
  }, [video]);
  return camera;
}

const stopAll = (stream: MediaStream | null): void => {
  for (const track of stream?.getTracks() ?? []) track.stop();
};

/** The points of a picture, made smaller where it is large. */
export function pointsOf(source: HTMLVideoElement | ImageBitmap): Points {
  const [w, h] =
    source instanceof HTMLVideoElement
      ? [source.videoWidth, source.videoHeight]
      : [source.width, source.height];
  const scale = Math.min(1, LARGEST / Math.max(w, h, 1));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(w * scale));
  canvas.height = Math.max(1, Math.round(h * scale));
  const drawn = canvas.getContext('2d', { willReadFrequently: true });
  if (!drawn) throw new Error('this browser draws no pictures');
  drawn.drawImage(source, 0, 0, canvas.width, canvas.height);
  return drawn.getImageData(0, 0, canvas.width, canvas.height);
}
