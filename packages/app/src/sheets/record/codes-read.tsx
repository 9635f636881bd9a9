// Codes of another device, by this one's camera or from photos; what they give is added to the record.

import { readSeries, readSeriesPart, type SeriesPart } from '@shellraise/core';
import { type RefObject, useEffect, useRef, useState } from 'react';
import { chooseFiles } from '../../files/choose-file.ts';
import { codeIn, type Points } from '../../record/code-picture.ts';
import type { RecordSession } from '../../record/record-session.ts';
import { useWords } from '../../words/words.ts';
import { CodesDialog } from './codes-dialog.tsx';

/** Larger pictures are made smaller before they are read, points on the longer side. */
const LARGEST = 1600;

/** The reader. */
export function CodesRead({ session, close }: { session: RecordSession; close: () => void }) {
  const words = useWords().codes;
  const parts = useRef<SeriesPart[]>([]);
  // Its codes go on round the other screen: they say nothing more.
  const whole = useRef<string | null>(null);
  const [told, setTold] = useState<string>(words.waiting);
  const hear = (text: string): void => {
    const part = readSeriesPart(text);
    if (!part || part.series === whole.current) return;
    const [first] = parts.current;
    // Codes of another series: the reading begins anew.
    if (first && (first.series !== part.series || first.of !== part.of)) parts.current = [];
    if (!parts.current.some((one) => one.part === part.part)) parts.current.push(part);
    setTold(progress(parts.current, words));
    if (parts.current.length < part.of) return;
    const file = readSeries(parts.current);
    parts.current = [];
    if (file) whole.current = part.series;
    setTold(file ? words.brought(session.bring(file.entries)) : words.broken);
  };
  const video = useRef<HTMLVideoElement>(null);
  const camera = useCamera(video, hear);
  const choose = async (): Promise<void> => {
    let unread = 0;
    const files = await chooseFiles('image/*');
    // Photos are chosen on purpose: those of a series that was read are read again.
    whole.current = null;
    for (const file of files) {
      const text = await textIn(file);
      if (text === null) unread++;
      else hear(text);
    }
    if (unread > 0) setTold((before) => `${words.unread(unread)} ${before}`);
  };
  return (
    <CodesDialog title={words.readTitle} close={close}>
      <video ref={video} muted playsInline hidden={camera !== 'on'} />
      <p role="status" className="codes-part">
        {told}
      </p>
      <p className="quiet">{camera === 'none' ? words.noCamera : words.readHow}</p>
      <p className="buttons">
        <button type="button" onClick={() => void choose()}>
          {words.choose}
        </button>
      </p>
    </CodesDialog>
  );
}

function progress(
  parts: readonly SeriesPart[],
  words: ReturnType<typeof useWords>['codes'],
): string {
  const of = parts[0]?.of ?? 0;
  const have = new Set(parts.map(({ part }) => part));
  const missing = Array.from({ length: of }, (_, i) => i + 1).filter((part) => !have.has(part));
  const few = missing.length > 0 && missing.length <= 12;
  return `${words.have(have.size, of)}${few ? ` ${words.missing(missing.join(', '))}` : ''}`;
}

/** Shows the camera in the video and reads its codes, until the page over the sheet is closed. */
function useCamera(
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
          if (text !== null) told.current(text);
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

async function textIn(file: File): Promise<string | null> {
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return null;
  const text = await codeIn(pointsOf(picture));
  picture.close();
  return text;
}

function pointsOf(source: HTMLVideoElement | ImageBitmap): Points {
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
