// Codes of another device, by this one's camera or from photos; what they give is added to the record.

import '../../styles/codes.css';
import { readSeries, readSeriesPart, type SeriesPart } from '@shellraise/core';
import { useRef, useState } from 'react';
import { chooseFiles } from '../../files/choose-file.ts';
import { codeIn } from '../../record/code-picture.ts';
import type { RecordSession } from '../../record/record-session.ts';
import { OverSheet } from '../../ui/over-sheet.tsx';
import { useWords } from '../../words/words.ts';
import { pointsOf, useCamera } from './use-camera.ts';

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
    <OverSheet className="codes" title={words.readTitle} close={close}>
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
    </OverSheet>
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

async function textIn(file: File): Promise<string | null> {
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return null;
  const text = await codeIn(pointsOf(picture));
  picture.close();
  return text;
}
