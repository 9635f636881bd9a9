// Which of two mirror images the shape is, where nobody noted a face, and the look that settles it.

import { type Kind, type PileKinds, type Shape, shapeHandTest } from '@shellraise/core';
import { useMemo } from 'react';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { inOwnLengths } from '../../ui/own-lengths.ts';
import { useWords } from '../../words/words.ts';
import { tellFaces } from './overrule.ts';

/** The note; nothing where the hands are known. */
export function HandsNote({
  shape,
  kinds,
  worked,
}: {
  shape: Shape;
  kinds: readonly Kind[];
  worked: PileKinds | null;
}) {
  const { hands: words, toPile } = useWords().hard;
  const { capital } = useWords().shape;
  const app = useApp();
  const lengths = useLengths();
  const test = useMemo(() => shapeHandTest(shape, kinds), [shape, kinds]);
  if (shape.hands !== 'mirrored') return null;
  const tell = (asShown: boolean): void => {
    if (!test || !worked) return;
    app.change(
      (doc) => {
        tellFaces(doc, test, asShown, worked);
        return undefined;
      },
      { label: words.telling(test.kind) },
    );
  };
  return (
    <div className="odd">
      <p>
        {words.mirrored} {test ? words.settle : words.symmetric}
      </p>
      {test ? <p>{capital(inOwnLengths(test.next.words, lengths))}.</p> : null}
      {test && test.sure < 1 ? <p className="quiet">{words.several}</p> : null}
      <div className="presses screen-only">
        {test && test.sure === 1 && worked ? (
          <>
            <button type="button" onClick={() => tell(true)}>
              {words.asShown}
            </button>
            <button type="button" onClick={() => tell(false)}>
              {words.mirror}
            </button>
          </>
        ) : (
          <button type="button" onClick={() => app.goTo('pile')}>
            {toPile}
          </button>
        )}
      </div>
    </div>
  );
}
