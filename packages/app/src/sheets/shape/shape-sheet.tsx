// The Shape sheet: what the pile closes into.

import { kindFills } from '@shellraise/core';
import { useMemo, useState } from 'react';
import { ShellView } from '../../drawing/shell-view/shell-view.tsx';
import { useDerived, useEngine } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';

/** The Shape sheet. */
export function ShapeSheet() {
  const engine = useEngine();
  const shapes = useDerived((derived) => derived.shapes);
  const work = useDerived((derived) => derived.work.value);
  const chosen = useDerived((derived) => derived.shape);
  const [picked, setPicked] = useState<number | null>(null);
  const fills = useMemo(() => kindFills(work?.question.kinds ?? []), [work]);
  const shape = shapes.value?.shapes[chosen];
  return (
    <div className="shape-sheet">
      <button type="button" className="go" onClick={() => engine.askShapes()}>
        Close the shell
      </button>
      {shape ? (
        <ShellView
          shell={shape.shell}
          fills={fills}
          selected={picked}
          onPick={setPicked}
          label="The shell"
          bearings={bearings}
        />
      ) : null}
      <TitleBlock />
    </div>
  );
}

const bearings = [
  { label: 'datum', azimuth: 0, main: true },
  { label: 'north', azimuth: 2 },
];
