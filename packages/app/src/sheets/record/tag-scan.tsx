// Reads a panel's code by the camera; where the browser gives none, it says so plainly.

import { useRef, useState } from 'react';
import { useWords } from '../../words/words.ts';
import { useCamera } from './use-camera.ts';

/** The button, and the camera's picture while it looks. */
export function TagScan({ onFound }: { onFound: (text: string) => void }) {
  const words = useWords().recording.scan;
  const [looking, setLooking] = useState(false);
  // Over plain http there are no media devices at all.
  if ((navigator.mediaDevices as MediaDevices | undefined) === undefined)
    return <p className="quiet">{words.none}</p>;
  return looking ? (
    <div className="record-scan">
      <Camera
        onFound={(text) => {
          setLooking(false);
          onFound(text);
        }}
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

function Camera({ onFound }: { onFound: (text: string) => void }) {
  const words = useWords().recording.scan;
  const video = useRef<HTMLVideoElement>(null);
  const camera = useCamera(video, onFound);
  return camera === 'none' ? (
    <p className="quiet">{words.refused}</p>
  ) : (
    <video ref={video} muted playsInline aria-label={words.picture} />
  );
}
