// Pictures of a model, one at a time: the sheets or beds as they are saved, or the solid seen from the side.

import type { NamedFile } from '@shellraise/core';
import { useEffect, useMemo, useState } from 'react';
import { Pager } from '../../ui/pager.tsx';
import { useWords } from '../../words/words.ts';

/** The pictures among the files. */
export function ModelPicture({ files }: { files: readonly NamedFile[] }) {
  const words = useWords().patterns;
  const pictures = useMemo(() => files.filter(({ name }) => name.endsWith('.svg')), [files]);
  const [at, setAt] = useState(0);
  const page = Math.min(at, pictures.length - 1);
  const file = pictures[page];
  const address = useAddress(file);
  if (!file) return null;
  return (
    <section className="ground-drawing" aria-label={words.picture}>
      <div className="ground-drawing-head screen-only">
        <h2>{file.name}</h2>
        <Pager words={words} page={page} count={pictures.length} onPage={setAt} />
      </div>
      <div className="ground-paper model-paper" {...reachable}>
        {address === null ? null : <img src={address} alt={file.name} />}
      </div>
    </section>
  );
}

/** A box that scrolls must be reachable by keyboard. */
const reachable = { tabIndex: 0 };

/** An address for a file, given back when another is shown. */
function useAddress(file: NamedFile | undefined): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (!file) return;
    const url = URL.createObjectURL(new Blob([file.text as BlobPart], { type: 'image/svg+xml' }));
    setAddress(url);
    return () => URL.revokeObjectURL(url);
  }, [file]);
  return address;
}
