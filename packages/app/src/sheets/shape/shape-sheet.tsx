// The Shape sheet.

import { TitleBlock } from '../../ui/title-block.tsx';

/** The Shape sheet. */
export function ShapeSheet() {
  return (
    <>
      <h1 className="heading">Shape</h1>
      <TitleBlock />
    </>
  );
}
