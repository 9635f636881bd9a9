// The Pile sheet.

import { TitleBlock } from '../../ui/title-block.tsx';

/** The Pile sheet. */
export function PileSheet() {
  return (
    <>
      <h1 className="heading">Pile</h1>
      <TitleBlock />
    </>
  );
}
