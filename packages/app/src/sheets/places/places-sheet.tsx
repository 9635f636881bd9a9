// The Places sheet.

import { TitleBlock } from '../../ui/title-block.tsx';

/** The Places sheet. */
export function PlacesSheet() {
  return (
    <>
      <h1 className="heading">Places</h1>
      <TitleBlock />
    </>
  );
}
