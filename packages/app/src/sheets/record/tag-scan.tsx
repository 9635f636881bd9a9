// Reads a panel's code by the camera, where the browser can; else it says plainly that it can't.

import { useEffect, useRef, useState } from 'react';
import { useWords } from '../../words/words.ts';

interface Found {
  readonly rawValue: string;
}
interface Detector {
  readonly detect: (source: HTMLVideoElement) => Promise<readonly Found[]>;
}

const detectorOf = (): (new () => Detector) | null => {
  const found = (globalThis as { BarcodeDetector?: new () => Detector }).BarcodeDetector;
  return found && navigator.mediaDevices !== undefined ? found : null;
};

/** How often the picture is looked at, milliseconds. */
const OFTEN = 250;

/** The button, and the camera's picture while it looks. */
export function TagScan({ onFound }: { onFound: (text: string) => void }) {
  const words = useWords().recording.scan;
  const [looking, setLooking] = useState(false);
  const [fault, setFault] = useState(false);
  const Detector = detectorOf();
  if (Detector === null || fault)
    return <p className="quiet">{fault ? words.refused : words.none}</p>;
  return looking ? (
    <div className="record-scan">
      <Camera
        Detector={Detector}
        onFound={(text) => {
          setLooking(false);
          onFound(text);
        }}
        onFault={() => setFault(true)}
      />
      <button type="button" onClick={() => setLooking(false)}>
        {words.stop}
      </button>
    </div>
  ) : (
    <button type="button" onClick={() => setLooking(true)}>
      {words.start}
    </button>
  );
}

function Camera({
  Detector,
  onFound,
  onFault,
}: {
  Detector: new () => Detector;
  onFound: (text: string) => void;
  onFault: () => void;
}) {
  const words = useWords().recording.scan;
  const video = useRef<HTMLVideoElement>(null);
  const told = useRef({ onFound, onFault });
  told.current = { onFound, onFault };
  useEffect(() => {
    let gone = false;
    let stream: MediaStream | null = null;
    const look = async (): Promise<void> => {
      const detector = new Detector();
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
      const picture = video.current;
      if (gone || !picture) return;
      picture.srcObject = stream;
      await picture.play();
      while (!gone) {
        const [found] = await detector.detect(picture);
        if (found && !gone) return told.current.onFound(found.rawValue);
        await new Promise((later) => setTimeout(later, OFTEN));
      }
    };
    const end = (): void => {
      for (const track of stream?.getTracks() ?? []) track.stop();
    };
    look()
      .catch(() => {
        if (!gone) told.current.onFault();
      })
      .finally(() => {
        if (gone) end();
      });
    return () => {
      gone = true;
      end();
    };
  }, [Detector]);
  return <video ref={video} muted playsInline aria-label={words.picture} />;
}
